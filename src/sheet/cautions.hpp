#pragma once

#include <string>

namespace swathe {

/// A caution of the sheets' texts by its name: "saw", "blade", "iron", "shears",
/// "needle", "spray", "staples", "drill".
std::string caution(const std::string& name);

}  // namespace swathe
