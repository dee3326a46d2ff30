#include "sheet/plan_picture.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

#include "base/maths.hpp"
#include "base/workshop.hpp"
#include "draw/label_placer.hpp"
#include "draw/marks.hpp"
#include "draw/measures.hpp"
#include "sheet/back_plan.hpp"
#include "sheet/plan_pieces.hpp"
#include "sheet/shown_subjects.hpp"
#include "sheet/texts.hpp"

namespace swathe {
namespace {

using sheet_texts::say;

constexpr double kAround = 25.0;      ///< room beside the bumpers for their dimensions
constexpr double kAroundNamed = 8.0;  ///< where there are none
constexpr double kRow = 8.5;          ///< from the bumpers to their boards' lengths
constexpr double kOverall = 18.0;     ///< and to the dimensions over all
constexpr double kInside = 9.0;       ///< from the frame to the lengths of its sides
constexpr double kShare = 0.8;        ///< of a side that words along it may take
constexpr double kLevel = 1e-6;       ///< of a direction's share up the sheet
constexpr double kPlate = 1.2;        ///< a bracket's thickness, to be seen
constexpr double kName = 5.0;         ///< height of a bumper's name
constexpr double kFlatness = 0.05;

class Plan {
 public:
  Plan(const Made& made, const Font& labels, double width, double most_height, PlanDetail detail)
      : made_(made),
        labels_(labels),
        units_(made.job.units),
        detail_(detail),
        reach_(reach_in_plan(made)) {
    for (const FrameSide& side : made.frame.sides()) reach_.cover(side.from);
    const double around = detail == PlanDetail::Measured ? kAround : kAroundNamed;
    scale_ = std::min((width - 2 * around) / reach_.width(),
                      (most_height - 2 * around) / reach_.height());
    const double height = scale_ * reach_.height() + 2 * around;
    picture_.box = {{0, 0}, {width, height}};
    move_ = picture_.box.middle() - scale_ * reach_.middle();
  }

  Picture drawn() && {
    frame();
    pieces();
    brackets();
    name_bumpers();
    if (detail_ == PlanDetail::Named) name_sides();
    if (detail_ == PlanDetail::Measured) {
      side_lengths();
      board_lengths();
      over_all();
      gaps();
    }
    std::ranges::copy(names_, std::back_inserter(notes_));
    draw_measures(picture_.drawing, labels_, picture_.box, measures_, notes_);
    picture_.drawing.add(tints_, {});  // words keep off lines, but not off tints
    return std::move(picture_);
  }

 private:
  FlatPoint on(FlatPoint p) const { return scale_ * p + move_; }
  plane::Path on(const plane::Path& path) const {
    plane::Path placed = path;
    for (plane::Vertex& v : placed.vertices) v.at = on(v.at);
    return placed;
  }
  std::string fig(double length_mm) const { return dimension(mm(length_mm), units_); }
  const FrameSide& side(int number) const {
    return made_.frame.sides()[static_cast<std::size_t>(number)];
  }
  /// A place along a side, so far out from the frame, on the sheet.
  static FlatPoint along(const FrameSide& side, double x, double out) {
    return side.from + x * side.along + out * side.outward;
  }

  void frame() {
    const Showing all(picture_.drawing, Subject::frame());
    plane::Polygon outline;
    const FrameKeys& keys = made_.job.frame;
    for (const FlatPoint p : keys.corners) outline.push_back(on(p));
    picture_.drawing.line(LineKind::Outline, closed_path(outline));
  }

  void side_lengths() {
    const FrameKeys& keys = made_.job.frame;
    for (std::size_t k = 0; k < keys.corners.size(); ++k) {
      const FlatPoint a = keys.corners[k], b = keys.corners[(k + 1) % keys.corners.size()];
      const FlatPoint inwards = left_of(unit(b - a));
      measures_.push_back({on(a) + kInside * inwards, on(b) + kInside * inwards,
                           fmt::format("{} {}", keys.sides[k], fig(apart(a, b))), kTextHeight,
                           Subject::side(keys.sides[k])});
    }
  }

  /// Along each side, inside the frame: its name and length, small or its name alone where it is
  /// short.
  void name_sides() {
    LabelPlacer placer(picture_.drawing, labels_, picture_.box);
    for (const FrameSide& side : made_.frame.sides()) {
      const Showing one(picture_.drawing, Subject::side(side.name));
      const FlatPoint middle = on(side.at(side.own_from + 0.5 * side.own_length, 0));
      FlatPoint way = side.along;
      if (way.x < -kLevel || (way.x < kLevel && way.y < 0))
        way = -1.0 * way;  // to be read from below
      const std::string measured = side.name + " " + fig(side.own_length);
      std::vector<TextMark> candidates;
      for (const auto& [words, height] :
           {std::pair(measured, kTextHeight), std::pair(measured, kTableHeight),
            std::pair(side.name, kTableHeight)}) {
        if (labels_.text_width_mm(words, height) > kShare * scale_ * side.own_length) continue;
        for (double inset = 0.5 * height; inset < 3 * height; inset += 0.25 * height)
          candidates.push_back(
              {middle - (inset + 0.5 * height) * side.outward - 0.5 * height * left_of(way), words,
               height, draw::Anchor::Middle, maths::atan2(way.y, way.x)});
      }
      if (!placer.first_free(candidates))
        notes_.push_back({middle, measured, kTextHeight, Subject::side(side.name)});
    }
  }

  void pieces() {
    std::vector<plane::Path> wood;
    for (const bumper::Piece& board : made_.boards) wood.push_back(on(board_in_plan(made_, board)));
    {
      const Showing all(tints_, Subject::boards());  // in one fill: else seams would show
      tints_.fill(LineKind::Outline, kWood, wood);
    }
    for (std::size_t k = 0; k < wood.size(); ++k) {
      const bumper::Piece& board = made_.boards[k];
      const Showing one(picture_.drawing, Subject::board(board.bumper, board.side));
      picture_.drawing.line(LineKind::Thin, wood[k]);
    }
    for (const bumper::Piece& piece : made_.padding) {
      const Showing one(picture_.drawing, padding_subjects(made_, piece));
      plane::Path path = open_path(flatten(on(padding_in_plan(made_, piece)), kFlatness));
      path.closed = true;
      picture_.drawing.line(LineKind::Thin, std::move(path));
    }
  }

  void brackets() {
    const double thick = kPlate / scale_;
    for (std::size_t b = 0; b < made_.wraps.size(); ++b)
      for (const BracketOnBoard& bracket : brackets_on(made_, b)) {
        const Showing one(tints_, Subject::bracket(bracket.number));
        const FrameSide& on_side = side(made_.wraps[b].run().sides[bracket.leg].side);
        const double from = bracket.box.lo.x, to = bracket.box.hi.x;
        const auto inside = [&](double x) { return on(along(on_side, x, -thick)); };
        tints_.fill(LineKind::Outline, kBlack,
                    {plane::closed_path({inside(from), inside(to), on(along(on_side, to, 0)),
                                         on(along(on_side, from, 0))})});
        if (detail_ == PlanDetail::Named) continue;
        notes_.push_back({inside(0.5 * (from + to)),
                          say("plan.bracket", {{"number", std::to_string(bracket.number)}}),
                          kTextHeight, Subject::bracket(bracket.number)});
      }
  }

  void name_bumpers() {
    const double middle = made_.section.thickness_mm() + 0.5 * made_.section.padding_depth_mm();
    LabelPlacer placer(picture_.drawing, labels_, picture_.box);
    for (const Wrap& wrap : made_.wraps) {
      std::vector<FlatPoint> unnamed;
      for (const RunSide& leg : wrap.run().sides) {
        const Showing one(picture_.drawing, Subject::bumper(wrap.run().name));
        const FlatPoint at = on(along(side(leg.side), 0.5 * (leg.from_x + leg.to_x), middle));
        const std::string& name = wrap.run().name;
        const auto centered = [&](double height) {
          return TextMark{at - FlatPoint{0, 0.5 * height}, name, height, draw::Anchor::Middle};
        };
        if (!placer.first_free({centered(kName), centered(kTextHeight)})) unnamed.push_back(at);
      }
      // To find one's way it is enough that each is named once.
      if (detail_ == PlanDetail::Named && !unnamed.empty())
        unnamed.resize(unnamed.size() < wrap.run().sides.size() ? 0 : 1);
      for (const FlatPoint at : unnamed)
        names_.push_back({at, wrap.run().name, kTextHeight, Subject::bumper(wrap.run().name)});
    }
  }

  void board_lengths() {
    const double out = made_.section.thickness_mm() + made_.section.padding_depth_mm();
    for (const bumper::Piece& board : made_.boards) {
      const FrameSide& on_side = side(made_.frame.side(board.side).value_or(0));
      const FlatPoint off = kRow * on_side.outward;
      measures_.push_back({on(along(on_side, board.from_x, out)) + off,
                           on(along(on_side, board.to_x, out)) + off,
                           say("plan.board", {{"length", sawn(mm(board.length_mm), units_)}}),
                           kTextHeight, Subject::board(board.bumper, board.side)});
    }
  }

  void over_all() {
    const double cloth = made_.section.cloth_thickness_mm();
    const FlatPoint lo = on(reach_.lo), hi = on(reach_.hi);
    const double below = lo.y - kOverall, beside = hi.x + kOverall;
    measures_.push_back({{lo.x, below},
                         {hi.x, below},
                         say("plan.over-all", {{"length", fig(reach_.width() + 2 * cloth)}}),
                         kTextHeight,
                         Subject::bumpers()});
    measures_.push_back({{beside, lo.y},
                         {beside, hi.y},
                         say("plan.over-all", {{"length", fig(reach_.height() + 2 * cloth)}}),
                         kTextHeight,
                         Subject::bumpers()});
  }

  void gaps() {
    const double middle = made_.section.thickness_mm() + 0.5 * made_.section.padding_depth_mm();
    for (std::size_t k = 0; k < made_.bare_gaps.size(); ++k) {
      const RunSide& before = made_.wraps[k].run().sides.back();
      const RunSide& after = made_.wraps[(k + 1) % made_.wraps.size()].run().sides.front();
      FlatPoint at = on(along(side(before.side), before.to_x, middle));
      if (before.side == after.side)
        at = 0.5 * (at + on(along(side(after.side), after.from_x, middle)));
      notes_.push_back({at, say("plan.gap", {{"length", fig(made_.bare_gaps[k])}}), kTextHeight,
                        gap_subjects(made_, k)});
    }
  }

  const Made& made_;
  const Font& labels_;
  Units units_;
  PlanDetail detail_;
  plane::Box reach_;
  double scale_ = 1;
  FlatPoint move_;
  Picture picture_;
  Drawing tints_;
  std::vector<Dimension> measures_;
  std::vector<Note> notes_, names_;  ///< names find a place last
};

}  // namespace

Picture plan_picture(const Made& made, const Font& labels, double width_mm, double most_height_mm,
                     PlanDetail detail) {
  return Plan(made, labels, width_mm, most_height_mm, detail).drawn();
}

}  // namespace swathe
