#pragma once

#include <optional>
#include <string>

namespace swathe::app {

/// A proof model's scale as it stands on the command line: "1/4", "0.25". Nothing where it is none,
/// or smaller or larger than a model may be.
std::optional<double> read_scale(const std::string& words);

}  // namespace swathe::app
