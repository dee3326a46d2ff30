#pragma once

// The cover laid flat, and as a mesh in place.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/bumper.hpp"
#include "swathe/job.hpp"
#include "swathe/plane.hpp"

namespace swathe {

// The cover laid flat before it is pulled, outside up: x is s and y is u as ClothMap tells them. No
// numerals here.

struct DartPoint {
  double u = 0, half_width = 0;
};

/// A corner on the pattern: surplus folded under as a pleat, and the notches cut in both flaps.
struct PatternCorner {
  std::string side_before, side_after;
  double s = 0, turn_deg = 0, past = 0;
  std::vector<DartPoint>
      dart;  ///< from the bottom back edge to the top one; 33 or more above and below
  plane::Polygon notch_top,
      notch_bottom;   ///< cloth cut away: ends at the cloth edge, apex towards the front
  bool sewn = false;  ///< the cut in front of the back edge is closed again by a seam
  /// Cloth used up at top and at bottom: on the butting side; on both where the corner is filled.
  double square_end_allowance = 0;
  bool filled = false;  ///< hollows filled: dart, pleats and notches are for a square front
  bool fold_towards_before = false;  ///< the pleat goes under towards side_before (else side_after)
};

/// A line that is not cut: where it is and what is written on it.
struct NamedLine {
  enum class What {
    FrontFlat,
    TopTangent,
    BackEdge,
    PaddingEdge,
    EndFace,
    BoardEnd,
    CornerLine,
    InsideCorner,
    StapleLine
  };
  What what = What::FrontFlat;
  std::string name;
  FlatPoint from, to;

  bool level() const { return from.y == to.y; }
};

/// A folded corner's line with the way its surplus goes under.
struct PleatLine {
  plane::Path path;
  FlatPoint under;  ///< unit: the way the cloth goes under
};

/// Where the edge of a hook-and-loop cover's flap is folded under, level.
struct HemFold {
  FlatPoint from, to;
  bool top = true;  ///< on the top flap

  plane::Path path() const { return line(from, to); }
  FlatPoint under() const { return {0, top ? -1.0 : 1.0}; }  ///< as of a pleat
};

struct Punch {
  FlatPoint at;
  double radius = 0;
  std::string bracket;
};

struct BracketOnPattern {
  int keys = 0;  ///< which [[bracket]] of the job
  int leg = 0;   ///< which of the run's sides its board is on
  std::string side;
  double s = 0,
         u = 0;  ///< the footprint's left edge and, on the top flap if it reaches it, its top edge
  double width = 0, height = 0;
  BracketCloth cloth = BracketCloth::Under;
  bool open_to_edge = false;
  std::vector<plane::Path> footprints;  ///< on each flap it reaches
  std::vector<plane::Path> windows;     ///< on each flap it reaches; cut last, on the bumper
  std::vector<Punch> holes;
};

struct Staple {
  enum class On {
    Flap,    ///< through a flap into the board's back
    Ear,     ///< through an ear into the board's end, where the tongue goes over it
    Tongue,  ///< through a tongue into the board's back
  };
  FlatPoint at;
  bool upright = false;  ///< crown along y (tongues), else along x
  int order = 0;         ///< from 1
  On on = On::Flap;
  int corners = 0;  ///< on the way from the flap's first staple: to be folded before this one
};

/// A triangle on the flap's edge (where it has a hem, on the hem's fold), and the pencil mark on
/// the board that it meets.
struct MatchMark {
  std::string name;  ///< "M1", "M2" from the left
  FlatPoint at;
  bool top = true;          ///< on the top flap, pointing down into the cloth
  std::string side;         ///< whose board is marked
  double from_left_mm = 0;  ///< on the board's inside face, from its left end seen from outside
};

/// A stretch of a side's front on which a numeral of the asked height may lie, on the cover in
/// place.
struct ClearStretch {
  std::string side;
  double from_s = 0, to_s = 0;
};

struct EndOnPattern {
  bool start = true;
  int layers = kEndLayers;
  double past_board = 0;  ///< how far padding runs on past its board
  double tongue = 0, ears = 0;
  double flaps = 0;  ///< how far inside the end face they begin
};

/// A seam across the cover, where one piece of cloth is too short for it.
struct ClothJoin {
  double s = 0;
  bool under_pleat = false;  ///< on a corner line, where the fold hides it
  double allowance = 0;      ///< each piece is cut this far past the seam
  FlatPoint from, to;        ///< across the cloth, from its lower edge to its upper one
};

struct Pattern {
  std::string bumper;
  plane::Polygon outline;             ///< the cut outline, counter-clockwise
  std::vector<plane::Path> snips;     ///< cuts that end inside the cloth
  std::vector<plane::Polygon> holes;  ///< windows not open to the edge
  std::vector<PatternCorner> corners;
  std::vector<PleatLine> pleats;        ///< folded corners
  std::vector<HemFold> hems;            ///< of a hook-and-loop cover
  std::vector<plane::Path> stitches;    ///< sewn corners: the two edges of each dart
  std::vector<plane::Path> seam_marks;  ///< ticks across stitch lines that meet when sewn
  std::vector<NamedLine> lines;
  std::vector<BracketOnPattern> brackets;
  std::vector<Staple> staples;      ///< none on a hook-and-loop cover
  std::vector<plane::Path> strips;  ///< hook-and-loop of a hook-and-loop cover, sewn to its inside
  std::vector<MatchMark> marks;
  std::vector<EndOnPattern> ends;
  double length = 0;                         ///< end face to end face
  double cloth_length = 0, cloth_width = 0;  ///< tongues and flaps in
  double cloth_area = 0,
         surface_area = 0;  ///< mm2; the latter between back edges and end faces, darts out
};

/// With the brackets that stand on its boards, whether or not the job names the bumper.
/// Refuses: DoesNotFit (a bracket that the job puts on this bumper and that lies beyond its boards,
/// flaps that lose the staple line to the square-end allowance), each at its key.
Outcome<Pattern> make_pattern(const Wrap& wrap, const Job& job);

/// Refuses: DoesNotFit (a bracket that names no bumper and lies on no board of these), at its key.
Refusals faults_of_brackets(const std::vector<Wrap>& wraps, const Job& job);

/// Extra cloth that the square front of filled corners takes at s, above and below: the board's
/// edge there, and all that is measured from it, lies that much further round the cloth.
double taken_at_corners(const Wrap& wrap, const ClothKeys& cloth, double s);

/// Stretches of each side on which the band |u| <= half_height is free of darts, reliefs and ends,
/// and does not leave the padding where that runs past its board.
std::vector<ClearStretch> clear_stretches(const Wrap& wrap, double half_height_mm);

/// From the cover in place to its pattern, and back: how far the cloth is pulled is known here and
/// nowhere else.
///
/// The cover in place is the bumper's own: checks and sight look at it, and numbers are placed on
/// it. The pattern is the same cloth laid flat before it is pulled: it is printed, and the report
/// tells places on it. Both measure from the same two lines, the start's end face and the middle of
/// the front flat, so that a length along either of them is mapped like a place.
/// Holds (cloth_map_test.cpp): (1) to_cover(to_pattern(p)) is p; (2) cloth that is not pulled is
///   its own pattern, to the last bit.
class ClothMap {
 public:
  ClothMap() = default;  ///< of cloth that is not pulled
  explicit ClothMap(const ClothKeys& cloth);

  FlatPoint to_pattern(ClothPoint in_place) const {
    return {along_ * in_place.s, around_ * in_place.u};
  }
  ClothPoint to_cover(FlatPoint on_pattern) const {
    return {on_pattern.x / along_, on_pattern.y / around_};
  }
  bool pulls() const { return along_ != 1.0 || around_ != 1.0; }

 private:
  double along_ = 1.0, around_ = 1.0;  ///< length on the pattern over length in place
};

/// A cover in space as triangles; every corner of a triangle knows its place on the cloth.
struct Mesh {
  std::string name;
  std::vector<SpacePoint> points;
  std::vector<ClothPoint> cloth;              ///< one for each point
  std::vector<std::array<int, 3>> triangles;  ///< counter-clockwise seen from outside
  std::vector<int> panel;                     ///< of each triangle: side of the run, or its bend
};

struct MeshOptions {
  int round_steps = 12;  ///< chords on each round of the section
  double along_mm = 60;  ///< longest step along the bumper
};

/// The cover on its bumper, from flap to flap and end face to end face; tongues and ears are folded
/// away and left out, windows not yet cut. One panel a side; a bent corner has one of its own.
/// Where a board ends before its padding does, the cover steps down in front of the slits.
///
/// Pleats and seams are shut, so that points on the two edges of a dart coincide in space and not
/// on the cloth; the pattern's notches are open.
/// Holds (mesh_test.cpp): (1) every point is at() its cloth place; (2) the edge lies on the
/// pattern's cut lines, the edges of its darts and its end faces, off them by no more than chords
/// of the dart's curve are; at a filled corner the darts are those of the round; (3) the edges of a
/// sewn dart are one curve from back edge to back edge.
Mesh make_mesh(const Wrap& wrap, const ClothKeys& cloth, const MeshOptions& options = {});

}  // namespace swathe
