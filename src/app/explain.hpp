#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace swathe::app {

/// Every key of the job file, then every check.
std::vector<std::string> explained_names();

/// What a key or a check means, in two lines; what a table such as "cloth" has in it; of a name
/// without its table, such as "flap", every key so called; of an everyday word, such as "noodle",
/// all that is about it. Empty where there is none.
std::string explanation(std::string_view name);

/// What somebody who wrote a name that nobody knows may have meant, in a sentence: first what has
/// that word in its own words, then what is spelled like it.
std::string meant_by(std::string_view name);

}  // namespace swathe::app
