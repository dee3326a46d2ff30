#pragma once

#include "swathe/screen.hpp"

namespace swathe {

/// How near to the machine's center an eye may come, whatever its bearing.
Length nearest_eye(const Made& made);

/// Where an observer's eye is. Requires: kept().
SpacePoint eye_of(const Made& made, const Observer& observer);

}  // namespace swathe
