#pragma once

#include <optional>
#include <string>
#include <string_view>

// Names for folders that are fine on every disk: a folder may be copied to one where case does not
// count, where a dot at the end is dropped, or where "con" is a device.
namespace swathe::app {

/// Why no folder should be called that, to follow "it": "begins with a dot"; nothing where it may.
/// Source: POSIX, "Filename"; Microsoft, "Naming Files, Paths, and Namespaces".
std::optional<std::string> folder_name_fault(std::string_view name);

/// The same text for names that some disk takes for one: with case and the Unicode form left out of
/// account. Bytes that are no UTF-8 stand for themselves.
/// Source: The Unicode Standard, chapter 3.13, canonical caseless matching (D145), one character to
/// one.
std::u32string folder_name_key(std::string_view name);

}  // namespace swathe::app
