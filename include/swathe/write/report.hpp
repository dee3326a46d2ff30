#pragma once

#include <string>
#include <vector>

#include "swathe/make/made.hpp"
#include "swathe/write/sheets.hpp"

namespace swathe {

/// The report as JSON, schema 1: lengths in mm, angles in degrees, four decimals.
/// Holds: same job, same bytes, in any locale; what is not built is absent.
std::string report_json(const Made& made, const std::vector<ToldSheet>& sheets);

}  // namespace swathe
