#pragma once

#include <string>

#include "swathe/base/outcome.hpp"

namespace swathe {

/// A key of a job that has no effect. It is not a fault: everything is made as if it were not
/// there.
struct Notice {
  std::string key;       ///< as in `swathe explain`: "padding.depth"
  std::string sentence;  ///< the place is not in it: "has no effect: ..."
  Place place;
};

/// "FILE:LINE:COL: sentence", the one form in which notices are printed.
std::string to_text(const Notice& notice);

}  // namespace swathe
