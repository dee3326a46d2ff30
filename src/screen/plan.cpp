#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "base/workshop.hpp"
#include "screen/canvas.hpp"
#include "screen/movable.hpp"
#include "screen/texts.hpp"
#include "sheet/back_plan.hpp"
#include "sheet/plan_pieces.hpp"
#include "sheet/shown_subjects.hpp"

namespace swathe {
namespace {

using screen_texts::say;

constexpr double kLeastPlatePx = 3;  ///< a bracket's thickness, and a number's: to be seen
constexpr double kRoomyPx = 340;     ///< of a picture both ways, that has dimensions round it
constexpr double kSpaciousPx = 460;  ///< and those over all
constexpr double kBoards = 0.8;      ///< rows of words from the bumpers to their boards' lengths
constexpr double kOverAll = 3.2;     ///< and to the lengths over all
constexpr double kEdge = 2.0;        ///< CSS mm round the model

class PlanPicture {
 public:
  PlanPicture(const Made& made, const Font& labels, const ScreenOptions& options)
      : made_(made),
        units_(made.job.units),
        rows_(rows_of(options)),
        row_(1.1 * options.text_px / screen::kPxPerMm),
        canvas_(labels, options, model_of(made), around(rows_, row_)) {}

  ScreenPicture drawn() && {
    floor();
    pieces();
    brackets();
    numbers();
    openings();
    words();
    handles();
    return std::move(canvas_).drawn("plan", say("plan.title"), description());
  }

 private:
  static int rows_of(const ScreenOptions& options) {
    const double least = std::min(options.width_px, options.height_px);
    return least >= kSpaciousPx ? 2 : least >= kRoomyPx ? 1 : 0;
  }
  static screen::Around around(int rows, double row) {
    const double side = kEdge + (rows > 0 ? (kBoards + 1.5) * row : 0.0);
    const double far = rows > 1 ? side + (kOverAll - kBoards) * row : side;
    return {side, far, far, side};
  }
  static plane::Box model_of(const Made& made) {
    plane::Box box = reach_in_plan(made);
    for (const FrameSide& side : made.frame.sides()) box.cover(side.from);
    return box.grown(made.section.cloth_thickness_mm());
  }

  const FrameSide& side(int number) const {
    return made_.frame.sides()[static_cast<std::size_t>(number)];
  }
  double depth() const { return made_.section.thickness_mm() + made_.section.padding_depth_mm(); }
  /// A mark on the picture so thick, in the model's millimeters.
  double thick(double px) const { return px / canvas_.px(); }
  FlatPoint out(const FrameSide& side, double mm) const { return mm * side.outward; }
  std::string fig(double length_mm) const { return dimension_with_unit(mm(length_mm), units_); }

  void floor() {
    Drawing& onto = canvas_.layer("frame", {0.04, 1});
    const Showing all(onto, Subject::frame());
    const plane::Path outline = closed_path(made_.job.frame.corners);
    canvas_.area(onto, {outline});
    const FrameKeys& keys = made_.job.frame;
    for (std::size_t k = 0; k < keys.corners.size(); ++k) {
      const Showing one(onto, Subjects{Subject::side(keys.sides[k]), Subject::frame()});
      canvas_.line(onto, LineKind::Outline, keys.corners[k],
                   keys.corners[(k + 1) % keys.corners.size()]);
    }
  }

  void pieces() {
    Drawing& padding = canvas_.layer("padding", {0.1, 0.75});
    for (const bumper::Piece& piece : made_.padding) {
      const Showing one(padding, padding_subjects(made_, piece));
      const plane::Path outline = padding_in_plan(made_, piece);
      canvas_.area(padding, {outline});
      canvas_.line(padding, LineKind::Outline, outline);
    }
    Drawing& wood = canvas_.layer("wood", {0.3, 0.75});
    for (const bumper::Piece& board : made_.boards) {
      const Showing one(wood, Subject::board(board.bumper, board.side));
      const plane::Path outline = board_in_plan(made_, board);
      canvas_.area(wood, {outline});
      canvas_.line(wood, LineKind::Thin, outline);
    }
  }

  void brackets() {
    Drawing& onto = canvas_.layer("bracket", {1, 1});
    const double thick_mm = thick(kLeastPlatePx);
    for (std::size_t b = 0; b < made_.wraps.size(); ++b)
      for (const BracketOnBoard& bracket : brackets_on(made_, b)) {
        const Showing one(onto, Subject::bracket(bracket.number));
        const FrameSide& on = side(made_.wraps[b].run().sides[bracket.leg].side);
        const double from = bracket.box.lo.x, to = bracket.box.hi.x;
        canvas_.area(onto, {plane::closed_path({on.at(from, -thick_mm), on.at(to, -thick_mm),
                                                on.at(to, 0), on.at(from, 0)})});
      }
  }

  /// The stretch of a side on which a number stands, or a part of one.
  struct NumberOnSide {
    const FrameSide* side = nullptr;
    double from = 0, to = 0;
  };
  NumberOnSide stretch_of_number(const PlacedNumeral& placed) const {
    const Wrap& wrap = made_.wraps[static_cast<std::size_t>(placed.bumper)];
    const RunSide& leg = wrap.run().sides[static_cast<std::size_t>(wrap.side_of(placed.center_s))];
    const double middle = placed.center_s - leg.s_minus_x;
    return {&side(leg.side), middle - 0.5 * placed.width, middle + 0.5 * placed.width};
  }

  void numbers() {
    if (!made_.numerals) return;
    Drawing& onto = canvas_.layer("numeral", {1, 1});
    for (const PlacedNumeral& placed : made_.numerals->placed) {
      const Showing one(onto, subject_of(placed));
      const NumberOnSide at = stretch_of_number(placed);
      const double near = depth(), far = near + thick(kLeastPlatePx);
      canvas_.area(onto, {plane::closed_path({at.side->at(at.from, near), at.side->at(at.from, far),
                                              at.side->at(at.to, far), at.side->at(at.to, near)})});
    }
  }

  void openings() {
    if (made_.job.openings.empty()) return;
    Drawing& onto = canvas_.layer("opening", {0, 0.75});
    for (const OpeningKeys& keys : made_.job.openings) {
      const auto number = made_.frame.side(keys.side);
      if (!number) continue;
      const Showing one(onto, Subject::side(keys.side));
      const AlongSide gap = stretch_of(made_.frame, *number, keys);
      const FrameSide& on = side(*number);
      for (const double deep : {0.0, depth()})
        canvas_.line(onto, LineKind::Stitch, on.at(gap.from, deep), on.at(gap.to, deep));
    }
  }

  // Words, the more important ones first.

  void words() {
    canvas_.words();
    const std::vector<const PlacedNumeral*> unnamed = name_numbers();
    name_bumpers();
    gap_words();
    name_sides();
    note_numbers(unnamed);
    name_openings();
    if (rows_ > 0) board_lengths();
    bracket_words();
    if (rows_ > 1) over_all();
  }

  double middle_of_padding() const {
    return made_.section.thickness_mm() + 0.5 * made_.section.padding_depth_mm();
  }

  /// Words whose middle is there.
  TextMark centered(FlatPoint at, const std::string& text, double turn = 0) const {
    // As much of their box lies above as below: it has room for what hangs below the line.
    const double down = 0.39 * canvas_.text_height();
    return {at - down * left_of(plane::direction(turn)), text, canvas_.text_height(),
            draw::Anchor::Middle, turn};
  }

  /// In the padding of each side; each bumper at least once.
  void name_bumpers() {
    for (const Wrap& wrap : made_.wraps) {
      const std::string& name = wrap.run().name;
      bool named = false;
      for (const RunSide& leg : wrap.run().sides) {
        const Subjects shows = {Subject::bumper(name), Subject::side(side(leg.side).name)};
        std::vector<TextMark> places;
        for (const double share : {0.5, 0.15, 0.85, 0.3, 0.7})
          places.push_back(centered(on_leg(leg, share), name));
        LabelPlacer& placer = canvas_.words();
        const Showing part(placer.drawing(), shows);
        named = placer.first_free(places) || named;
      }
      for (const RunSide& leg : wrap.run().sides)
        named = named || canvas_.note(on_leg(leg, 0.5), name, Subject::bumper(name), 15);
    }
  }
  /// In the middle of a leg's padding.
  FlatPoint on_leg(const RunSide& leg, double share) const {
    return canvas_.on(
        side(leg.side).at(leg.from_x + share * (leg.to_x - leg.from_x), middle_of_padding()));
  }

  /// Inside the frame, level, beside the middle of the side.
  void name_sides() {
    const FrameKeys& keys = made_.job.frame;
    for (std::size_t k = 0; k < keys.corners.size(); ++k) {
      const FlatPoint a = canvas_.on(keys.corners[k]);
      const FlatPoint b = canvas_.on(keys.corners[(k + 1) % keys.corners.size()]);
      const double length = apart(keys.corners[k], keys.corners[(k + 1) % keys.corners.size()]);
      const std::string text = say("plan.side", {{"side", keys.sides[k]}, {"length", fig(length)}});
      beside(a, b, text, Subject::side(keys.sides[k])) ||
          canvas_.note(0.5 * (a + b), text, Subject::side(keys.sides[k]));
    }
  }

  /// Level words that just clear a line, on its left: beside its middle, or a row further off, or
  /// further along.
  bool beside(FlatPoint a, FlatPoint b, const std::string& text, const Subjects& shows) {
    if (apart(a, b) < 1e-6) return false;
    const FlatPoint left = left_of(unit(b - a));
    const double half_width = 0.5 * canvas_.text_width(text), half_height = 0.5 * row_;
    const double off = 1.6 + std::abs(left.x) * half_width + std::abs(left.y) * half_height;
    LabelPlacer& placer = canvas_.words();
    const Showing part(placer.drawing(), shows);
    // Beside a slanted line words further off would seem to be another's.
    const bool slanted = std::min(std::abs(left.x), std::abs(left.y)) > 0.2;
    for (const double share : {0.5, 0.42, 0.58, 0.34, 0.66, 0.25, 0.75})
      for (const double rows : {0.0, 1.4}) {
        if (slanted && (rows > 0 || std::abs(share - 0.5) > 0.1)) continue;
        const FlatPoint at = a + share * (b - a) + (off + rows * std::abs(left.y) * row_) * left;
        if (placer.try_at(centered(at, text))) return true;
      }
    return false;
  }

  /// The box of words, with a row's room before and after them where they are level or upright.
  plane::Box with_ends(const TextMark& words) const {
    plane::Box box = bounds(box_of(words, canvas_.labels()));
    const FlatPoint along = plane::direction(words.turn);
    if (std::abs(along.x * along.y) > 0.01) return box;
    const FlatPoint more = row_ * FlatPoint{std::abs(along.x), std::abs(along.y)};
    return {box.lo - more, box.hi + more};
  }

  /// In the padding behind where it stands, as one reads it from outside, or beside it. Returns
  /// those that found no room there and have to be named all the same: of whole numbers the first,
  /// where none is named, for the others say the same.
  std::vector<const PlacedNumeral*> name_numbers() {
    std::vector<const PlacedNumeral*> unnamed;
    if (!made_.numerals) return unnamed;
    bool named = false;
    for (const PlacedNumeral& placed : made_.numerals->placed) {
      const NumberOnSide at = stretch_of_number(placed);
      const double turn = reading_turn(at.side->along);
      LabelPlacer& placer = canvas_.words();
      const Showing part(placer.drawing(), subject_of(placed));
      const FlatPoint middle =
          canvas_.on(at.side->at(0.5 * (at.from + at.to), middle_of_padding()));
      const TextMark inside = centered(middle, placed.text, turn);
      const bool in_padding = placer.try_at(inside);
      // A bumper's name beside it would be read as part of it.
      if (in_padding) placer.keep_off(with_ends(inside));
      const bool here = in_padding || beside(canvas_.on(at.side->at(at.to, depth())),
                                             canvas_.on(at.side->at(at.from, depth())), placed.text,
                                             subject_of(placed));
      named = named || here;
      if (!here && (unnamed.empty() || !placed.whole)) unnamed.push_back(&placed);
    }
    if (named) std::erase_if(unnamed, [](const PlacedNumeral* placed) { return placed->whole; });
    return unnamed;
  }

  /// Further off: that may be inside the frame, where the sides' names have to find room first.
  void note_numbers(const std::vector<const PlacedNumeral*>& unnamed) {
    for (const PlacedNumeral* placed : unnamed) {
      const NumberOnSide at = stretch_of_number(*placed);
      canvas_.note(canvas_.on(at.side->at(0.5 * (at.from + at.to), depth())), placed->text,
                   subject_of(*placed), 20);
    }
  }

  void name_openings() {
    for (const OpeningKeys& keys : made_.job.openings) {
      const auto number = made_.frame.side(keys.side);
      if (!number) continue;
      const AlongSide gap = stretch_of(made_.frame, *number, keys);
      canvas_.note(canvas_.on(side(*number).at(0.5 * (gap.from + gap.to), 0.5 * depth())),
                   say("plan.opening", {{"length", fig(keys.width.mm())}}),
                   Subject::side(keys.side), 20, true);
    }
  }

  /// Inside the frame, where the gap opens on to it.
  void gap_words() {
    const double wide = 0.25 / canvas_.px();
    for (std::size_t k = 0; k < made_.bare_gaps.size(); ++k) {
      const RunSide& before = made_.wraps[k].run().sides.back();
      const RunSide& after = made_.wraps[(k + 1) % made_.wraps.size()].run().sides.front();
      const FrameSide& on = side(before.side);
      const bool one_side = before.side == after.side;
      if (one_side && is_opening(on.name)) continue;
      const double x = one_side ? 0.5 * (before.to_x + after.from_x) : before.to_x;
      const std::string text = say("plan.gap", {{"length", fig(made_.bare_gaps[k])}});
      (one_side && beside(canvas_.on(on.at(x - wide, 0)), canvas_.on(on.at(x + wide, 0)), text,
                          gap_subjects(made_, k))) ||
          canvas_.note(canvas_.on(on.at(x, 0.6 * depth())), text, gap_subjects(made_, k), 20);
    }
  }
  bool is_opening(const std::string& on) const {
    return std::ranges::count(made_.job.openings, on, &OpeningKeys::side) > 0;
  }

  void bracket_words() {
    for (std::size_t b = 0; b < made_.wraps.size(); ++b)
      for (const BracketOnBoard& bracket : brackets_on(made_, b)) {
        const FrameSide& on = side(made_.wraps[b].run().sides[bracket.leg].side);
        const FlatPoint at =
            canvas_.on(on.at(0.5 * (bracket.box.lo.x + bracket.box.hi.x), -thick(kLeastPlatePx)));
        const std::string text = say("plan.bracket", {{"number", std::to_string(bracket.number)}});
        const FlatPoint half =
            0.4 * (canvas_.on(on.at(bracket.box.hi.x, 0)) - canvas_.on(on.at(bracket.box.lo.x, 0)));
        beside(at - half, at + half, text, Subject::bracket(bracket.number)) ||
            canvas_.note(at, text, Subject::bracket(bracket.number), 15);
      }
  }

  void board_lengths() {
    for (const bumper::Piece& board : made_.boards) {
      const FrameSide& on = side(made_.frame.side(board.side).value_or(0));
      const FlatPoint off = kBoards * row_ * on.outward;
      canvas_.dimension(
          canvas_.on(on.at(board.from_x, depth())) + off,
          canvas_.on(on.at(board.to_x, depth())) + off,
          say("plan.board", {{"length", sawn_with_unit(mm(board.length_mm), units_)}}),
          Subject::board(board.bumper, board.side));
    }
  }

  void over_all() {
    const plane::Box reach = reach_in_plan(made_);
    const double cloth = 2 * made_.section.cloth_thickness_mm();
    const FlatPoint lo = canvas_.on(reach.lo), hi = canvas_.on(reach.hi);
    const double off = kOverAll * row_;
    canvas_.dimension({lo.x, lo.y - off}, {hi.x, lo.y - off},
                      say("plan.over-all", {{"length", fig(reach.width() + cloth)}}),
                      Subject::bumpers());
    canvas_.dimension({hi.x + off, lo.y}, {hi.x + off, hi.y},
                      say("plan.over-all", {{"length", fig(reach.height() + cloth)}}),
                      Subject::bumpers());
  }

  void handles() {
    for (screen::Movable& one : screen::movables_of(made_)) {
      const FrameSide& on = side(one.side);
      const bool on_padding = one.handle.kind == screen::Handle::Kind::End ||
                              one.handle.kind == screen::Handle::Kind::Gap ||
                              one.handle.kind == screen::Handle::Kind::Opening;
      const double deep = one.handle.kind == screen::Handle::Kind::Bracket ? 0.0
                          : on_padding                                     ? 0.5 * depth()
                                                                           : depth();
      one.handle.mm_per_px = 1 / canvas_.px();
      canvas_.handle(std::move(one.handle), on.at(one.x, deep),
                     one.grows ? on.along : -1.0 * on.along);
    }
  }

  std::string description() const {
    std::string words = say("plan.words");
    for (std::size_t k = 0; k < made_.job.frame.corners.size(); ++k) {
      const auto& corners = made_.job.frame.corners;
      words += " " + say("plan.words-side",
                         {{"side", made_.job.frame.sides[k]},
                          {"length", fig(apart(corners[k], corners[(k + 1) % corners.size()]))}});
    }
    for (const Wrap& wrap : made_.wraps) {
      std::vector<std::string> sides;
      for (const RunSide& leg : wrap.run().sides) sides.push_back(side(leg.side).name);
      words += " " + say("plan.words-bumper",
                         {{"bumper", wrap.run().name}, {"sides", screen_texts::listed(sides)}});
    }
    for (const OpeningKeys& keys : made_.job.openings)
      words +=
          " " + say("plan.words-opening", {{"side", keys.side}, {"length", fig(keys.width.mm())}});
    for (std::size_t k = 0; k < made_.job.brackets.size(); ++k)
      words += " " + say("plan.words-bracket",
                         {{"number", std::to_string(k + 1)}, {"side", made_.job.brackets[k].side}});
    if (!made_.numerals) return words;
    std::vector<std::string> sides;
    for (const PlacedNumeral& placed : made_.numerals->placed)
      if (sides.empty() || sides.back() != placed.side) sides.push_back(placed.side);
    if (!sides.empty())
      words += " " + say("plan.words-number", {{"number", made_.numerals->number},
                                               {"sides", screen_texts::listed(sides)}});
    return words;
  }

  const Made& made_;
  Units units_;
  int rows_;
  double row_;  ///< from line to line of words, CSS mm
  screen::Canvas canvas_;
};

}  // namespace

ScreenPicture screen_plan(const Made& made, const Font& labels, const ScreenOptions& options) {
  return PlanPicture(made, labels, screen::within_limits(options)).drawn();
}

}  // namespace swathe
