#pragma once

#include <string>
#include <vector>

#include "check/check.hpp"

// What of the true frame (without the fit) the bumpers cover.
namespace swathe {

/// Where a side faces: degrees, 0 straight ahead of the machine, counter-clockwise, below 360.
double bearing_of(const Frame& frame, int side);

/// How far the frame's outline, grown by the fit, runs past the true frame's corner after a side.
double past_true_corner(const Frame& frame, int side);

struct CoveredStretch {
  double from = 0, to = 0;
};

/// One side of the true frame, with what bumpers cover of it.
struct CoveredSide {
  std::string name;
  double length = 0;
  std::vector<CoveredStretch> covered;  ///< rising; may reach past the corners
};

std::vector<CoveredSide> covered_sides(const CheckedSet& subject);

/// "front-left corner"
std::string corner_name(const Frame& frame, int side_before);

/// The bumper that follows `bumper` counter-clockwise; itself where there is but one.
std::size_t bumper_after(const CheckedSet& subject, std::size_t bumper);

}  // namespace swathe
