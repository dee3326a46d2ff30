#pragma once

#include <string>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/make.hpp"

// A pattern told in figures for a tape measure. Every figure of a direction is taken from one
// datum, so that no error of one adds to the next.
namespace swathe {

/// One place to mark, and how far it is from the datum.
struct Running {
  double at_mm = 0;
  std::string what;
  bool cut = false;  ///< scissors go by it; else a pencil
};

struct RunningDimensions {
  std::vector<Running> along;   ///< from the cloth's left end as it lies on the sheet, rising
  std::vector<Running> across;  ///< from its lower edge, rising
};

/// The face the job asks for lies up, TOP away from the maker. Of two edges with nothing
/// beside them to name them by, the first is the nearer one to the edge that the tape measure is
/// hooked on.
///
/// Holds (cover_ordinates_test.cpp): (1) each figure as printed is within half the unit's step of
///   the model, whatever stands before it; (2) every corner, dart's point, notch, end, ear, tongue,
///   hem, seam, match mark, numeral, window and hole of the pattern has its figure.
RunningDimensions running_dimensions(const Made& made, std::size_t bumper);

/// Rows of a list: places with one figure are one row that names them all.
std::vector<Running> by_figure(const std::vector<Running>& list, Units units);

}  // namespace swathe
