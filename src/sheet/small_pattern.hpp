#pragma once

#include "swathe/draw.hpp"
#include "swathe/make.hpp"

namespace swathe {

/// A cover drawn small, to be looked at and not cut from.
struct SmallPattern {
  Drawing drawing;
  double scale = 1;  ///< sheet over cloth
  plane::Box cloth;  ///< its box on the sheet
};

/// The cover as large as fits `area`, in its middle, with the job's face up: outline, board edges,
/// corner lines, numerals, windows, brackets, holes and match marks.
SmallPattern small_pattern(const Made& made, std::size_t bumper, const plane::Box& area);

}  // namespace swathe
