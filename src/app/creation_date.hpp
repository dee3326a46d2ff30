#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

namespace swathe::app {

/// The date that stands in PDF files, ISO 8601: that of `epoch` (whole seconds since 1970, as
/// SOURCE_DATE_EPOCH has it), or a fixed one where it is empty, so that the same job gives the same
/// bytes. Nothing where it is no such number.
/// Source: Reproducible Builds, "SOURCE_DATE_EPOCH specification".
std::optional<std::string> creation_date(std::string_view epoch);

/// The same of the environment's SOURCE_DATE_EPOCH. The error is a sentence.
tl::expected<std::string, std::string> creation_date_asked_for();

}  // namespace swathe::app
