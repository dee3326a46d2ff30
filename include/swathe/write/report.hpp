#pragma once

#include <string>
#include <vector>

#include "swathe/draw/drawing.hpp"
#include "swathe/make/made.hpp"

namespace swathe {

/// The report as JSON, schema 1: lengths in mm, angles in degrees, four decimals.
/// Holds: same job, same bytes, in any locale; what is not built is absent.
std::string report_json(const Made& made, const std::vector<Sheet>& sheets);

}  // namespace swathe
