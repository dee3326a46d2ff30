#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace swathe::app {

/// Every key of the job file, then every check.
std::vector<std::string> explained_names();

/// What a key or a check means, in two lines; of a name without its table, such as "flap", every
/// key so called. Empty where there is none.
std::string explanation(std::string_view name);

}  // namespace swathe::app
