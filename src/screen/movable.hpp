#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "swathe/screen.hpp"

namespace swathe::screen {

/// Something of the job that stands at a place along a side of the frame, and could stand elsewhere
/// along it.
struct Movable {
  Handle handle;                      ///< but for where it lies on the picture
  int side = 0;                       ///< number in the frame
  double x = 0;                       ///< of its middle, as FrameSide has it
  bool grows = true;                  ///< its distance grows with x
  std::optional<std::size_t> bumper;  ///< whose cover it is on, if any
};

/// Brackets, ends of bumpers that are told by a place, openings, and numbers. Two ends told at one
/// place are one gap.
///
/// Holds (movable_test.cpp): (1) each one's distance is what the job's key says, where it says a
///   distance; (2) given another, its key moves it by as much.
std::vector<Movable> movables_of(const Made& made);

}  // namespace swathe::screen
