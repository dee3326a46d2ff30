#pragma once

#include <string>
#include <vector>

#include "swathe/bumper.hpp"
#include "swathe/job.hpp"

namespace swathe::test {

/// A rectangular frame in plan, sides as a job file's width and depth make them.
FrameKeys rectangle_frame(double width_mm, double depth_mm);

/// So far along a side of a rectangle, from the corner at which it begins, counter-clockwise.
FromCorner from_start(const std::string& side, Length distance);

/// The same from the corner at which it ends.
FromCorner from_end(const std::string& side, Length distance);

BumperKeys half(const char* name, const char* from, const char* to);

/// Two C-halves split mid-front and mid-back, everything else at its default.
Job c_halves(double width_mm, double depth_mm);

/// The section of the worked figures: 3/4 in board, 5 in high, two noodles, no fit, no cloth
/// thickness.
Job worked_job(double noodle_inches = 2.5, double board_height_inches = 5.0);

Section section_of(const Job& job);

std::vector<Wrap> wraps_of(const Job& job);

}  // namespace swathe::test
