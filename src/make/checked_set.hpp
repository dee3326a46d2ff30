#pragma once

#include "check/check.hpp"
#include "swathe/make.hpp"

namespace swathe {

/// What was made, as the checks look at it. It must outlive the set.
CheckedSet checked_set(const Made& made);

}  // namespace swathe
