#pragma once

#include <vector>

#include "swathe/plane.hpp"

namespace swathe {

/// The parts of a path that lie in a box, arcs as chords within `tolerance`; the whole path, still
/// closed, where all of it does.
///
/// Holds (path_clip_test.cpp): (1) the parts inside a box and those inside the boxes round it are
///   together as long as the path.
std::vector<plane::Path> clipped(const plane::Path& path, const plane::Box& box,
                                 double tolerance = 0.01);

}  // namespace swathe
