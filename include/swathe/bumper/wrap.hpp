#pragma once

#include <optional>
#include <vector>

#include "swathe/bumper/frame.hpp"
#include "swathe/bumper/run.hpp"
#include "swathe/bumper/section.hpp"
#include "swathe/plane/space.hpp"

namespace swathe {

/// A point of the cover: s along the front line from the start's end face, to the right seen from
/// outside; u round the section from the middle of the front flat, upwards. Millimeters.
struct ClothPoint {
  double s = 0, u = 0;
};

/// The stretch of a level line that lies on one side of a run: between darts, corners' or its ends.
struct LevelLine {
  double from = 0, to = 0;               ///< s
  double arc_before = 0, arc_after = 0;  ///< of it, on the bends of rounded corners
};

/// How exactly the map keeps lengths on flats and along rulings.
inline constexpr Length kWrapError = Length::from_mm(1e-6);

/// The cover in place: where in space each point of the cloth lies.
///
/// Holds, each within kWrapError (wrap_test.cpp checks it under the same number):
///   (1) on one side, at({s + a, u}) is a away from at({s, u}): s is measured in cloth
///   (2) within one flat of the section, at({s, u + a}) is a away from at({s, u}): so is u
///   (3) the two edges of a mitred dart map to the same curve
///   (4) cloth_at(at(p)) is p
/// A bent corner is doubly curved and has no isometry: there only level lines keep their length.
/// Source: a cylinder unrolls without stretch; do Carmo, Differential Geometry of Curves and
///   Surfaces, section 4-2.
class Wrap {
 public:
  Wrap(Frame frame, Section section, Run run);

  const Frame& frame() const { return frame_; }
  const Section& section() const { return section_; }
  const Run& run() const { return run_; }

  /// Half width of the dart at a corner, either side of its line: surplus cloth at girth u.
  double dart(const RunCorner& corner, double u) const;
  /// The level line at girth u on one of the run's sides.
  LevelLine level(std::size_t leg, double u) const;
  /// Nothing inside a dart, past an end face or off the cloth.
  std::optional<SpacePoint> at(ClothPoint p) const;
  /// Outward normal of the cloth there; unit.
  std::optional<SpacePoint> normal_at(ClothPoint p) const;
  /// Nothing further than `reach_mm` from the cloth.
  std::optional<ClothPoint> cloth_at(SpacePoint p, double reach_mm = 0.01) const;
  /// Which of the run's sides a front-line place belongs to.
  int side_of(double s) const;
  /// True area of the cloth between the back edges, darts left out, mm2.
  double surface_area() const;

 private:
  /// A cloth point put on its side: where in the section and in plan, and how far round a bend.
  struct Foot {
    std::size_t leg = 0;
    SectionPoint at;
    FlatPoint plan;     ///< x along the side, y outward
    double turned = 0;  ///< radians towards the side's end; negative towards its start
  };
  std::optional<Foot> foot(ClothPoint p) const;
  const FrameSide& side(std::size_t leg) const;

  Frame frame_;
  Section section_;
  Run run_;
};

}  // namespace swathe
