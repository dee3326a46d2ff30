#pragma once

#include <optional>
#include <string>
#include <vector>

#include "swathe/draw.hpp"
#include "swathe/make.hpp"
#include "swathe/type.hpp"
#include "terminal.hpp"

namespace swathe::app {

/// Models of all covers; nothing if one fits no card: the terminal has been told.
std::optional<std::vector<Sheet>> models_of(Terminal& terminal, const Made& made,
                                            const Font& labels, double scale);

/// If models need larger card than the job's paper: at which scale they do not.
std::string smaller_model_text(const Made& made, const Font& labels, double scale);

}  // namespace swathe::app
