#pragma once

#include <string>
#include <vector>

#include "swathe/job.hpp"

namespace swathe {

/// A frame from above as lines of text, with the name and the length of each side beside it; the
/// machine's front is up. For comments in a job file.
///
/// Requires: a frame as it is read, a name for each side.
/// Holds (frame_drawing_test.cpp): (1) every corner is a "+"; (2) every side's words stand there
///   once and cover nothing; (3) no line is longer than kDrawingColumns or ends with a space, so
///   long as names are as short as those of a rectangle
std::vector<std::string> frame_drawing(const FrameKeys& frame, Units units);

inline constexpr std::size_t kDrawingColumns = 78;

}  // namespace swathe
