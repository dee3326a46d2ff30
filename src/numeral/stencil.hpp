#pragma once

#include <optional>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/numeral.hpp"
#include "swathe/plane.hpp"

namespace swathe {

/// A digit made fit to be cut out of one sheet.
struct Stencil {
  int counters = 0;  ///< islands of sheet that would fall out without bridges
  std::vector<Bridge> bridges;
  plane::Region cut;  ///< the outline less the bridges' bars
};

/// Bridges for every island of a digit, each a bar of sheet of one width across one stroke, running
/// from an island to the sheet outside or to another island.
///
/// Of all ways that hold, the one with the shortest bars is taken: upright bars unless a level one
/// is shorter by a quarter and more, or a slanting one by a third; bars that grip an island on
/// opposite sides before bars side by side.
/// Requires: outer outlines counter-clockwise, holes clockwise, no crossings; mm.
/// Refuses: OutOfRange (a width that is not positive), DoesNotFit (no bar of this width fits; says
///   what width would, in `units`), TooLarge (more than four islands).
/// Holds: (1) the sheet left after cutting is one piece, (2) and still is when any one bridge gives
///   way; (3) no bridge is narrower than `width`, its seats in the sheet included; (4) bridges
///   stand at least their own width apart.
Outcome<Stencil> make_stencil(const plane::Region& outline, double width,
                              Units units = Units::Millimeters);

/// The same for those who only try: nothing where make_stencil() refuses, and no other width is
/// looked for.
std::optional<Stencil> try_stencil(const plane::Region& outline, double width);

/// The strokes that stay when bridges cover some of them: the covered pieces keep their length and
/// have no width, so that a share of the length counts them as lost.
type::Stroke less_bridges(const type::Stroke& stroke, const std::vector<Bridge>& bridges);

}  // namespace swathe
