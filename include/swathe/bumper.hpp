#pragma once

// Frame and section, runs of bumpers round the frame, and the cloth that is wrapped round them.

#include <limits>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/job.hpp"
#include "swathe/plane.hpp"

namespace swathe {

/// An outside corner of the frame: where the line at each depth bends or ends there. A depth is
/// measured outward from the frame's line; along a line, places are told from the frame's corner
/// on, mm.
///
/// Lines bend at a point, in the plane that halves the corner. Where padding bends, those outside
/// the boards take an arc instead, about the point where the boards' own outer edge bends.
/// Holds (corner_test.cpp): (1) the lines of both sides meet in the halving plane; (2) they are as
/// long up to there as `to_middle` tells, and by `surplus` longer further out; (3) `crossing` lies
/// on both sides' lines.
struct Corner {
  double turn = 0;  ///< radians; negative where the frame turns inwards, and no line goes round
  /// The deepest line that bends at a point.
  double sharp_to = std::numeric_limits<double>::max();

  bool rounded() const { return sharp_to < std::numeric_limits<double>::max(); }

  /// Length of its straight part, from the frame's corner on.
  double straight(double depth) const;
  double radius(double depth) const;    ///< of its arc; zero where it bends at a point
  double half_arc(double depth) const;  ///< the length of half its arc, up to the halving plane
  /// Its length up to the halving plane.
  double to_middle(double depth) const { return straight(depth) + half_arc(depth); }
  /// How much longer a line gets up to there when it moves outward by `sharp` mm among lines that
  /// bend at a point and by `round` mm among lines that take arcs.
  double longer(double sharp, double round) const;
  /// By how much a line is longer than one further in: half the cloth that is too much there.
  double surplus(double inner, double outer) const;
  /// The place on its arc where it has turned by `turned` radians, at most half the corner: x along
  /// the side it comes from, y outward.
  FlatPoint on_arc(double depth, double turned) const;

  /// Where it crosses the neighbor's line of another depth: there a strip ends that laps over the
  /// neighbor's (at that one's outer face) or butts against it (at its inner face).
  double crossing(double depth, double neighbor) const;
  /// Where a bumper's padding and its board end, both square, so that they leave no gap at the
  /// corner. Where it laps, the padding is level with the neighbor's outer face and the board with
  /// the front of the neighbor's board; else each stops at the back of the neighbor's own.
  struct SquareEnd {
    double padding = 0, board = 0;
  };
  SquareEnd square_end(double thickness, double depth, bool laps) const;
};

/// One straight side of the frame, from above; seen from outside it runs from left to right.
struct FrameSide {
  std::string name;
  FlatPoint from, to;
  FlatPoint along;    ///< unit, counter-clockwise round the frame
  FlatPoint outward;  ///< unit
  double length_mm = 0;
  /// The frame's own side, without the play, lies from here on and is so long.
  double own_from = 0, own_length = 0;

  /// The place `x` along it and `depth` outward.
  FlatPoint at(double x, double depth) const { return from + x * along + depth * outward; }
};

/// The frame's outline in plan, grown by the fit: all that is built hangs on this line.
class Frame {
 public:
  /// Refuses: DoesNotFit (corners cross, clockwise, an edge of no length), each at its key.
  static Outcome<Frame> make(const FrameKeys& keys, const Places& places,
                             Units units = Units::Inches);

  const std::vector<FrameSide>& sides() const { return sides_; }
  /// Number of the side of that name.
  std::optional<int> side(std::string_view name) const;
  int next(int side) const { return (side + 1) % static_cast<int>(sides_.size()); }
  int previous(int side) const {
    return (side + static_cast<int>(sides_.size()) - 1) % static_cast<int>(sides_.size());
  }
  /// x of a place along a side, which is told on the frame itself.
  /// Requires: that a place from a corner names a neighbor of the side.
  double along(int side, const SidePlace& place) const;
  /// Whether a side's corner with that neighbor is the one it begins at.
  bool begins_at(int side, std::string_view neighbor) const;
  /// The same place again, told from the corner with that neighbor; on the frame itself.
  Length from_corner(int side, double x, std::string_view neighbor) const;
  /// How far the outline turns at the end of a side; negative at an inside corner.
  Angle turn_after(int side) const;
  /// The corner there, where every line bends at a point.
  Corner corner_after(int side) const;
  Length fit() const { return fit_; }
  Length floor_gap() const { return floor_gap_; }
  /// Middle of the box round the frame: the machine's center for an observer.
  FlatPoint center() const;

 private:
  Frame() = default;  // private: a frame without sides would have no next side and no center
  std::vector<FrameSide> sides_;
  Length fit_, floor_gap_;
};

/// A stretch along a side of the frame: x, as FrameSide has it.
struct AlongSide {
  double from = 0, to = 0;
};

/// Between the edges of a bracket on that side.
AlongSide stretch_of(const Frame& frame, int side, const BracketKeys& bracket);
/// Between the finished covers either side of an opening.
AlongSide stretch_of(const Frame& frame, int side, const OpeningKeys& opening);

/// The most layers of cloth anywhere on an end face: the tongue, over two lapping tabs of an ear
/// whose round is snipped.
inline constexpr int kEndLayers = 3;

/// Where the cloth lies in the section: d outward from the board's back, z up from its underside,
/// mm.
struct SectionPoint {
  double d = 0, z = 0;
  double tilt = 0;  ///< radians the cloth leans from upright: 0 on the front flat, pi/2 on a flat
                    ///< top, negative below
};

namespace bumper {

/// A named place on the girth.
struct Station {
  std::string name;
  double u_mm = 0, d_mm = 0, z_mm = 0;
};

}  // namespace bumper

/// The shape the cloth is pulled over, square to a side, and the taut cloth's middle surface round
/// it.
///
/// The girth coordinate u runs along the cloth from the middle of the front flat, upwards.
/// Holds (section_test.cpp): (1) at(u) moves at unit speed in u; (2) the girth equals the belt
/// round the same discs; (3) cloth of thickness tau adds pi tau to the closed girth. Source: hull
/// of discs; Steiner's formula for the thickness.
class Section {
 public:
  /// Refuses: DoesNotFit (flaps that meet on the back, no room to cut behind the padding, a staple
  /// line off the flap), OutOfRange, each at its key.
  static Outcome<Section> make(const BoardKeys& boards, const PaddingKeys& padding,
                               const ClothKeys& cloth, const Places& places,
                               Units units = Units::Inches);

  double thickness_mm() const { return thickness_; }  ///< of the board
  double height_mm() const { return height_; }        ///< of the board
  double padding_depth_mm() const { return padding_depth_; }
  double padding_top_mm() const { return padding_top_; }  ///< z
  double padding_bottom_mm() const { return padding_bottom_; }
  double cloth_thickness_mm() const { return tau_; }
  double depth_mm() const { return depth_; }  ///< d of the front line
  double closed_girth_mm() const { return closed_girth_; }

  double front_flat_top() const {
    return front_top_;
  }  ///< u; zero where a single noodle has no flat
  double front_flat_bottom() const { return -front_top_; }
  double top_tangent() const { return top_tangent_; }  ///< u
  double bottom_tangent() const { return bottom_tangent_; }
  double back_edge_top() const {
    return back_top_;
  }  ///< u_b: the end of the small arc at the board's edge
  double back_edge_bottom() const { return back_bottom_; }
  double cloth_edge_top() const { return back_top_ + flap_; }
  double cloth_edge_bottom() const { return back_bottom_ - flap_; }
  double flap_mm() const { return flap_; }

  /// Requires: u between the cloth edges.
  SectionPoint at(double u) const;

  /// Past a board's end the cloth goes round the padding alone. On the front, and up to the
  /// tangents, it lies there as everywhere; behind them it follows the round to the padding's back.
  /// Requires: u within half the girth there.
  SectionPoint bare_at(double u) const;
  /// Up to the middle of the padding's back.
  double bare_half_girth() const { return bare_half_girth_; }
  /// u where the flat of the padding's back begins for the cloth; a single noodle has no flat.
  double bare_back_edge() const { return bare_back_edge_; }
  /// u where the cloth is `d` deep, above (or below) the front line. Nothing past all cloth.
  std::optional<double> u_at_depth(double d, bool above) const;
  /// Nearest u for a point of the section, and how far off the cloth it is.
  struct Foot {
    double u = 0, off_mm = 0;
  };
  Foot nearest(double d, double z) const;
  Foot bare_nearest(double d, double z) const;

  /// u of both ends of every arc of the section.
  std::vector<double> bends() const;
  /// Rising heights from one to the other with chords between them that follow the cloth: no chord
  /// spans the end of an arc, nor more of an arc than turns by `most_turn` radians.
  /// Requires: from < to, on the cloth.
  std::vector<double> heights(double from, double to, double most_turn) const;
  /// The same once round the padding alone, from the middle of its back to there again.
  std::vector<double> bare_heights(double most_turn) const;
  /// How far the cloth between the back edges lies behind depth `d`, summed over its girth; mm2.
  double short_of_depth(double d) const;

  const std::vector<bumper::Station>& stations() const { return stations_; }
  /// Extra cloth that a butting side needs at the top, and at the bottom, to go round its
  /// neighbor's square padding end: by so much is the way round square_front() longer.
  double square_end_allowance_mm() const { return square_end_; }
  /// The same bumper where the padding's hollows are filled: its padding is square.
  const Section& square_front() const { return square_ ? *square_ : *this; }
  /// The closed outline the cloth's middle surface follows.
  const std::vector<plane::HullPiece>& hull() const { return hull_; }

 private:
  Section() = default;  // private: only make() gives a section its shape
  double thickness_ = 0, height_ = 0, padding_depth_ = 0, padding_top_ = 0, padding_bottom_ = 0;
  double tau_ = 0, depth_ = 0, closed_girth_ = 0, flap_ = 0;
  double front_top_ = 0, top_tangent_ = 0, bottom_tangent_ = 0, back_top_ = 0, back_bottom_ = 0;
  double square_end_ = 0;
  std::shared_ptr<const Section> square_;  ///< never changed; none where it is square itself
  std::vector<bumper::Station> stations_;
  std::vector<plane::HullPiece> hull_;
  struct Stretch {  ///< a hull piece and the u it starts at
    plane::HullPiece piece;
    double u_from = 0;
  };
  void follow(const std::vector<plane::Disc>& padding, const std::vector<plane::Disc>& behind = {});
  static SectionPoint on_stretch(const std::vector<Stretch>& chain, double u);
  static double foot_on(const Stretch& stretch, FlatPoint p);
  void name_stations(const std::vector<plane::HullPiece>& chain);
  void lay_bare(const PaddingKeys& padding);
  std::vector<Stretch> chain_;  ///< from the bottom back edge to the top one, by u
  std::vector<Stretch> bare_;   ///< past a board's end: from the front's middle to the back's, over
                                ///< the top; below it is the same upside down
  double bare_half_girth_ = 0, bare_back_edge_ = 0;
};

/// The stretch of one side that a bumper covers. x runs along the frame side from its first corner,
/// mm; s is the cloth's own measure: s = x + s_minus_x.
struct RunSide {
  int side = 0;  ///< number in the frame
  double from_x = 0,
         to_x =
             0;  ///< of what stands on this side: a frame corner (0, side's length) or a free end
  double s_minus_x = 0;
  bool starts_at_corner = false, ends_at_corner = false;  ///< the bumper turns there
  /// How far padding runs on past the board, at a free end.
  double bare_start = 0, bare_end = 0;

  double board_from() const { return from_x + bare_start; }  ///< on its inside
  double board_to() const { return to_x - bare_end; }
};

/// A corner that a bumper turns.
struct RunCorner : Corner {
  int before = 0, after = 0;  ///< sides, numbers in the frame
  double s = 0;               ///< the corner line on the front
  double past = 0;            ///< how far the front line runs past the frame corner, on each side
  bool filled = false;        ///< hollows of butted noodles: both sides have a square front there
};

/// A bumper's way along the frame, counter-clockwise, and how its cloth is measured along it.
struct Run {
  std::string name;
  std::vector<RunSide> sides;      ///< in order, the first holds s = 0
  std::vector<RunCorner> corners;  ///< between neighbors of `sides`
  double length = 0;               ///< s of the far end face
  double end_clearance = 0;
  int keys = 0;  ///< which [[bumper]] of the job

  /// How far padding runs on past the board at the start, or at the end.
  double bare(bool start) const { return start ? sides.front().bare_start : sides.back().bare_end; }
};

/// Refuses: UnknownName (side), OutOfRange (beyond the side), ReflexCorner, DoesNotFit (a corner
/// turned with less than its own depth left, padding that would run too far past its board), each
/// at its key.
Outcome<Run> make_run(const Frame& frame, const Section& section, const PaddingKeys& padding,
                      const BumperKeys& keys, int number, const Places& places,
                      Units units = Units::Inches, const std::vector<OpeningKeys>& openings = {});

/// Refuses: DoesNotFit (an opening that reaches past its side, a bumper that lies across one), each
/// at its key.
Refusals faults_of_openings(const Frame& frame, const std::vector<Run>& runs,
                            const std::vector<OpeningKeys>& openings, const Places& places,
                            Units units = Units::Inches);

/// The bare gap from each bumper's far end to the next bumper, counter-clockwise, mm along the
/// frame's sides (through a corner: the distance between the two end faces). Refuses bumpers that
/// overlap.
Outcome<std::vector<double>> gaps_between(const Frame& frame, const Section& section,
                                          const std::vector<Run>& runs, const Places& places,
                                          Units units = Units::Inches);

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
/// Where a board ends before its padding does, the cloth behind the tangents steps down from the
/// board on to the padding: (1) holds on either side of that step, not across it.
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
  /// Where the cloth goes round the padding alone, because the board has ended.
  bool past_board(double s) const;
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

/// How one end of a board or of padding is cut.
struct EndCut {
  enum class Kind { Free, Laps, Butts, Mitred, Bent };
  Kind kind = Kind::Free;
  double angle_deg = 0;  ///< off square; 0 for a square cut
  double inner_short = 0,
         outer_short = 0;  ///< where its edges end before the longest, mm; the inner is the board's
};

namespace bumper {

/// A board, or one noodle or block of padding, of one side of one bumper.
struct Piece {
  std::string bumper;
  std::string side;
  double length_mm = 0;            ///< the longest edge, as cut
  double from_x = 0, to_x = 0;     ///< along the frame side
  EndCut start, end;               ///< left and right, seen from outside
  int count = 1;                   ///< noodles of a stack are cut alike
  std::vector<double> bends = {};  ///< where bent padding turns its corners, mm from its start
  /// The side that it lies next to, where its bumper has two on its side; else "".
  std::string next_to = {};
};

}  // namespace bumper

/// "A front"; "A front by left" where the bumper has two on that side.
std::string piece_name(const bumper::Piece& piece);

/// Refuses: DoesNotFit where at a corner both sides lap, or neither (at boards.lapping), or where
/// lapped ends would be cut more than 60 deg off square (at boards.joint).
Outcome<std::vector<bumper::Piece>> board_pieces(const Frame& frame, const Section& section,
                                                 const Run& run, const BoardKeys& boards,
                                                 const Places& places);
/// The same for padding (at padding.lapping, padding.corner). Bent padding is one piece for the
/// whole run, measured along its middle; its side is named "front + left".
Outcome<std::vector<bumper::Piece>> padding_pieces(const Frame& frame, const Section& section,
                                                   const Run& run, const PaddingKeys& padding,
                                                   const Places& places);

/// Room at a corner that the padding's pieces leave open, to be filled with padding of the same
/// kind.
struct CornerVoid {
  std::string bumper;
  std::string side_before, side_after;
  int strips = 0;           ///< grooves to fill, each as long as `length`
  double length = 0;        ///< mm
  double section_area = 0;  ///< of one groove, mm2
  /// A strip for a groove is a right triangle across. Both its short sides are so long, mm: then
  /// its long one touches the round.
  double leg = 0;
};

/// Grooves between round noodles and their square box where butted padding meets: on the lapping
/// noodles, as far as they go past the board line of the butting side. Blocks and mitred or bent
/// noodles leave none, nor do noodles that the job leaves unfilled (`padding.filled`).
std::vector<CornerVoid> corner_voids(const Frame& frame, const Section& section, const Run& run,
                                     const PaddingKeys& padding);

/// Padding that reaches past the end of its own board, where nothing holds it from behind.
struct Overhang {
  std::string bumper, side;
  double at_start = 0,
         at_end =
             0;  ///< mm, left and right seen from outside; zero where the board reaches further
};
std::vector<Overhang> overhangs(const std::vector<bumper::Piece>& boards,
                                const std::vector<bumper::Piece>& padding);

}  // namespace swathe
