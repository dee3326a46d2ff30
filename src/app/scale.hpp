#pragma once

#include <optional>
#include <string>

namespace swathe::app {

/// A model's scale from the command line: "1/4", "0.25". Nothing if it is not a scale, or one that
/// is too small or too large for a model.
std::optional<double> read_scale(const std::string& words);

}  // namespace swathe::app
