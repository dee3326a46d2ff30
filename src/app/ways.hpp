#pragma once

#include <string>
#include <vector>

#include "swathe/make.hpp"
#include "swathe/write.hpp"

namespace swathe::app {

/// How much paper each way of printing a cover takes, side by side; and if there is no half on the
/// fold, why not.
std::string ways_text(const Made& made, const std::vector<ToldSheet>& sheets);

}  // namespace swathe::app
