#pragma once

#include <string>
#include <vector>

#include "swathe/base/subject.hpp"
#include "swathe/job/job.hpp"

namespace swathe {

/// The keys that say a part of the model, as set_value() takes them: "bumper.2.from". Where the job
/// leaves them out they are those that an edit of the part would add: of a number that is placed by
/// rule, a place by hand. None where the job has no such part.
///
/// Holds (keys_of_test.cpp): each is a key that set_value() takes.
std::vector<std::string> keys_of(const Subject& subject, const Job& job);

}  // namespace swathe
