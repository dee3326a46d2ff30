#pragma once

#include <optional>
#include <string>
#include <vector>

#include "swathe/bumper/frame.hpp"
#include "swathe/bumper/section.hpp"

namespace swathe {

/// The stretch of one side that a bumper covers. x runs along the frame side from its first corner,
/// mm; s is the cloth's own measure: s = x + s_minus_x.
struct RunSide {
  int side = 0;  ///< number in the frame
  double from_x = 0,
         to_x =
             0;  ///< of what stands on this side: a frame corner (0, side's length) or a free end
  double s_minus_x = 0;
  bool starts_at_corner = false, ends_at_corner = false;  ///< the bumper turns there
};

/// A corner that a bumper turns.
struct RunCorner : Corner {
  int before = 0, after = 0;  ///< sides, numbers in the frame
  double s = 0;               ///< the corner line on the front
  double past = 0;            ///< E: the front line runs past the frame corner by this, each side
};

/// A bumper's way along the frame, counter-clockwise, and how its cloth is measured along it.
struct Run {
  std::string name;
  std::vector<RunSide> sides;      ///< in order, the first holds s = 0
  std::vector<RunCorner> corners;  ///< between neighbors of `sides`
  double length = 0;               ///< s of the far end face
  double end_clearance = 0;
  int keys = 0;  ///< which [[bumper]] of the job
};

/// Refuses: UnknownName (side), OutOfRange (beyond the side), ReflexCorner, DoesNotFit (a corner
/// turned with less than its own depth left), each at its key.
Outcome<Run> make_run(const Frame& frame, const Section& section, const PaddingKeys& padding,
                      const BumperKeys& keys, int number, const Places& places,
                      Units units = Units::Inches);

/// The bare gap from each bumper's far end to the next bumper, counter-clockwise, mm along the
/// frame's sides (through a corner: the distance between the two end faces). Refuses bumpers that
/// overlap.
Outcome<std::vector<double>> gaps_between(const Frame& frame, const Section& section,
                                          const std::vector<Run>& runs, const Places& places,
                                          Units units = Units::Inches);

}  // namespace swathe
