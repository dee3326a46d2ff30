#pragma once

#include <vector>

#include "swathe/make.hpp"

namespace swathe::test {

/// Two C-halves with a bracket of each kind and a hole to punch.
Job demo_job();

/// Everything a job comes to that the sheets are composed from, made without the build room.
Made made_by_hand(Job job);

}  // namespace swathe::test
