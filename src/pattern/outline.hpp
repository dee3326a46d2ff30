#pragma once

#include <vector>

#include "swathe/pattern.hpp"

namespace swathe {

/// Lengths that makers use without a rule behind them. Common practice, no source.
inline constexpr double kSnipShort = 3.0;  ///< snips stop this far before the end face's fold
inline constexpr double kTongueLeastLean =
    0.5236;  ///< how far round a single noodle its tongue goes, radians
inline constexpr double kFlapShort = 3.0;  ///< of a tongue that needs the bare board

/// Half the tongue's width: the front flat, or part of the round where there is no flat to speak
/// of.
double tongue_half_width(const Section& section);
EndOnPattern end_of(const Wrap& wrap, const ClothKeys& cloth, bool start);
/// How far inside an end face the flaps on the board begin: at its end, where it is stapled.
/// Staples go through a tongue and the flaps under it. A tongue's hook-and-loop holds on bare board
/// alone, and on a flap it would be twice as thick.
double flaps_begin(const Wrap& wrap, const ClothKeys& cloth, bool start);

/// The cloth cut away at a corner of one flap.
struct Notch {
  double s = 0;           ///< of the corner line
  double half_width = 0;  ///< behind the back edge
  double back_edge = 0;   ///< u
  double cloth_edge = 0;  ///< u
  /// Half of its edge: x how far off the corner line, y the u there; from the apex to the back
  /// edge.
  std::vector<FlatPoint> side;
  bool sewn = false;  ///< `side` is sewn to its mirror image

  double apex() const { return side.front().y; }
  plane::Polygon outline() const;
  /// u of the cloth's edge at s as far as this notch goes, the cloth edge elsewhere.
  double edge_at(double s) const;
  /// How far off the corner line its edge is at u: zero before its apex.
  double half_at(double u) const;
  /// u behind the back edge, where no seam closes it.
  bool on_flap(double u) const { return (cloth_edge > 0) == (u > back_edge) && u != back_edge; }
};
/// One a corner. Folded: straight from the back edge to an apex over the board's top. Sewn: along
/// the dart's edge less the seam allowance, up to where the allowances would cross; where they do
/// so as far as the back edge, only the flap is cut.
std::vector<Notch> notches(const Wrap& wrap, const ClothKeys& cloth, bool top);

/// Where flaps lie on boards: stretches of s between notches and the flaps' ends.
struct Span {
  double from = 0, to = 0;
  double length() const { return to - from; }
};
std::vector<Span> flap_spans(const Wrap& wrap, const ClothKeys& cloth,
                             const std::vector<Notch>& notches);

/// The cut outline, counter-clockwise from the start's lower flap corner.
plane::Polygon cut_outline(const Wrap& wrap, const ClothKeys& cloth);
/// The slits that part tongue and ears, those across the rounds of the ears, and those in the flaps
/// where padding runs on past its board.
std::vector<plane::Path> end_snips(const Wrap& wrap, const ClothKeys& cloth);

}  // namespace swathe
