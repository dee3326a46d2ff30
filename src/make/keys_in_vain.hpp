#pragma once

#include <vector>

#include "swathe/make.hpp"

namespace swathe {

/// The keys that a job gives and that change nothing in what is made of it, whatever their value:
/// they are for something else than this job has. By place.
/// Holds (keys_test.cpp): (1) every key of the job file changes an output in some job; (2) one told
///   of here changes none.
std::vector<Notice> keys_in_vain(const Made& made);

}  // namespace swathe
