#pragma once

#include <optional>
#include <string>
#include <vector>

#include "swathe/draw/drawing.hpp"
#include "swathe/make/made.hpp"
#include "swathe/type/font.hpp"
#include "terminal.hpp"

namespace swathe::app {

/// Models of all covers; nothing where one fits no card, which has been said.
std::optional<std::vector<Sheet>> models_of(Terminal& terminal, const Made& made,
                                            const Font& labels, double scale);

/// Where models ask for larger card than the job's paper: at what scale they would not.
std::string smaller_model_text(const Made& made, const Font& labels, double scale);

}  // namespace swathe::app
