#pragma once

#include <string>

#include "swathe/base/outcome.hpp"

namespace swathe {

/// Something that a job says in vain. No fault: everything is made as if it were not there.
struct Notice {
  std::string key;       ///< as `swathe explain` tells it: "padding.depth"
  std::string sentence;  ///< without the place: "has no effect: ..."
  Place place;
};

/// "FILE:LINE:COL: sentence", the one form in which notices are printed.
std::string to_text(const Notice& notice);

}  // namespace swathe
