#pragma once

#include <string>
#include <vector>

namespace swathe::app {

/// Every key that `swathe set` takes, of the first where there may be many: "bumper.1.from".
std::vector<std::string> settable_names();

}  // namespace swathe::app
