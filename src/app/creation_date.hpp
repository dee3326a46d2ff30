#pragma once

#include <string>
#include <string_view>

namespace swathe::app {

/// The date that stands in PDF files, ISO 8601: that of `epoch` (whole seconds since 1970, as
/// SOURCE_DATE_EPOCH has it), or a fixed one where it is empty or no such number, so that the same
/// job gives the same bytes.
std::string creation_date(std::string_view epoch);

}  // namespace swathe::app
