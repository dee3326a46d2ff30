#pragma once

// The one way in which toml++ comes into the house, so that every source sees the same parser.

// No file of ours nests deeper; the parser's recursion, and that of what it builds, stays small.
#define TOML_MAX_NESTED_VALUES 32
// toml++ 3.3 asserts that a table's header begins with a key, and would abort on "[.a]". Left to go
// on, it reports that fault with its place.
#define TOML_ASSERT(expression) static_cast<void>(0)

#include <toml++/toml.h>
