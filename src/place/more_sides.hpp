#pragma once

#include <string>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/job.hpp"

namespace swathe {

/// Where one more number is to stand.
struct OneMore {
  std::string side, bumper;  ///< their names
};

/// The job's keys that put the number there too: a place by hand each where the job has places by
/// hand, else the list of sides; `now` are the sides that the program has chosen where it has none.
std::vector<KeyChange> put_there_too(const std::vector<OneMore>& more,
                                     const std::vector<std::string>& now, const Job& job);

}  // namespace swathe
