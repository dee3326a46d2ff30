#pragma once

#include <string>

namespace swathe {

/// A caution of the sheets' texts by its name: "saw", "blade", "iron", "shears",
/// "needle", "spray", "staples".
std::string caution(const std::string& name);

}  // namespace swathe
