#pragma once

#include <string>
#include <vector>

#include "swathe/draw.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// Places at least `pitch` apart in the order of the targets, their squared distances from the
/// targets as small as can be, all within [lo, hi]; evenly spaced where they are too many for that.
///
/// Requires: rising targets; lo < hi.
/// Source: isotonic regression by pooling adjacent violators; Barlow, Bartholomew, Bremner and
///   Brunk, Statistical Inference under Order Restrictions, section 1.2.
std::vector<double> spread(const std::vector<double>& targets, double pitch, double lo, double hi);

/// A figure to stand by a place of a drawing.
struct Ordinate {
  double at = 0;  ///< of the place, on the sheet
  std::string figure;
};

/// From figure to figure, of the lettering's height.
inline constexpr double kFigurePitch = 1.55;

/// Which edge of a drawing figures stand along.
enum class OrdinateEdge { Above, Below, Left, Right };

/// How far out from the edge a figure reaches.
double ordinate_reach(const Font& labels, const std::string& figure, double height_mm);

/// Figures in a row along an edge, each with a leader to its place; upright figures at the sides,
/// turned ones above and below. Returns the box the row takes.
///
/// `edge_at` is the drawing's edge, `lo` and `hi` bound the row.
plane::Box draw_ordinates(Drawing& onto, const Font& labels, std::vector<Ordinate> ordinates,
                          OrdinateEdge edge, double edge_at, double lo, double hi,
                          double height_mm);

}  // namespace swathe
