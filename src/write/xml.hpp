#pragma once

#include <string>
#include <string_view>

#include "swathe/base.hpp"

namespace swathe {

/// Words as they stand in XML, in text and between quotes; characters that XML 1.0 (section 2.2)
/// has no place for are left out.
std::string xml_escaped(std::string_view words);

/// What a mark shows, as an attribute; nothing where it shows nothing.
std::string shown_in(const Subjects& shows);

}  // namespace swathe
