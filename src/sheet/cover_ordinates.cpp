#include "sheet/cover_ordinates.hpp"

#include <algorithm>
#include <cmath>

#include "sheet/cover_ends.hpp"
#include "sheet/pattern_drawing.hpp"
#include "sheet/texts.hpp"

namespace swathe {
namespace {

using sheet_texts::say;

constexpr double kSame = 0.02;  ///< mm; figures this near each other are one place

/// A figure before it goes into its list: edges that share it are named once.
struct Found {
  double at = 0;
  std::string what;
  bool cut = false;
  enum class Edge { None, Top, Bottom, Both } edge = Edge::None;
};

/// Collects figures from one datum.
class Finder {
 public:
  void add(double at, std::string what, bool cut, Found::Edge edge = Found::Edge::None) {
    for (Found& found : found_)
      if (found.what == what && std::abs(found.at - at) < kSame) {
        if (found.edge != edge) found.edge = Found::Edge::Both;
        return;
      }
    found_.push_back({at, std::move(what), cut, edge});
  }

  std::vector<Running> sorted() const {
    std::vector<Running> list;
    for (const Found& found : found_) {
      list.push_back({found.at, words_of(found), found.cut});
    }
    std::ranges::stable_sort(list, [](const Running& a, const Running& b) {
      return std::round(a.at_mm / kSame) < std::round(b.at_mm / kSame);
    });
    return list;
  }

 private:
  static std::string words_of(const Found& found) {
    if (found.edge == Found::Edge::Top) return say("place.top-only", {{"place", found.what}});
    if (found.edge == Found::Edge::Bottom) return say("place.bottom-only", {{"place", found.what}});
    return found.what;
  }

  std::vector<Found> found_;
};

/// The pattern on the sheet, its cloth's box at the origin, and what can be asked of it there.
struct OnSheet {
  const Made& made;
  const Pattern& pattern;
  plane::Placement place;

  double x(double s) const { return place({s, 0}).x; }
  double y(double u) const { return place({0, u}).y; }
  plane::Box box(const plane::Path& path) const { return bounds(place(path)); }
};

void find_ends(Finder& along, const OnSheet& on, std::size_t bumper) {
  for (const EndOnPattern& end : on.pattern.ends) {
    const double face = end.start ? 0.0 : on.pattern.length, way = end.start ? -1.0 : 1.0;
    const std::string name = cover_end_words(on.made, bumper, end.start);
    along.add(on.x(face + way * end.tongue), say("place.tongue", {{"end", name}}), true);
    along.add(on.x(face + way * end.ears), say("place.ears", {{"end", name}}), true);
    along.add(on.x(face), say(end.flaps > 0 ? "place.end-alone" : "place.end", {{"end", name}}),
              true);
    if (end.past_board > 0)
      along.add(on.x(face - way * end.past_board), say("place.board-end", {{"end", name}}), true);
    if (end.flaps > 0)
      along.add(on.x(face - way * end.flaps), say("place.flaps", {{"end", name}}), true);
  }
}

/// What a corner's points are called at the top or the bottom: sewn corners and folds differ.
std::string points_words(const Pattern& pattern, bool top) {
  if (!pattern.corners.empty() && pattern.corners.front().sewn)
    return say(top ? "place.sewn-top" : "place.sewn-bottom");
  return say(top ? "place.folds-top" : "place.folds-bottom");
}

/// Where the folds of a filled corner begin, and where its notch has its full width. At other
/// corners these are the front flat's and the board's edges, which have figures already.
void find_square_front(Finder& across, const OnSheet& on, const PatternCorner& corner, bool top) {
  double point = top ? 1e300 : -1e300, full = on.pattern.cloth_width;
  for (const DartPoint& p : corner.dart)
    if ((p.u > 0) == top) point = top ? std::min(point, p.u) : std::max(point, p.u);
  across.add(on.y(point), points_words(on.pattern, top), false);
  const plane::Polygon& notch = top ? corner.notch_top : corner.notch_bottom;
  const plane::Box box = bounds(notch);
  for (const FlatPoint p : notch)  // the upright sides' inner ends
    if (std::abs(p.x - box.lo.x) < kSame) full = std::min(full, std::abs(p.y));
  across.add(on.y(top ? full : -full), say(top ? "place.wide-top" : "place.wide-bottom"), true);
}

void find_corners(Finder& along, Finder& across, const OnSheet& on) {
  for (const PatternCorner& corner : on.pattern.corners) {
    const std::string name = corner_words(on.pattern.corners, corner.s);
    const double middle = on.x(corner.s);
    along.add(middle, say("place.corner-line", {{"corner", name}}), true);
    for (const bool top : {true, false}) {
      const plane::Box notch = on.box(closed_path(top ? corner.notch_top : corner.notch_bottom));
      const auto edge = top ? Found::Edge::Top : Found::Edge::Bottom;
      for (const double x : {notch.lo.x, notch.hi.x}) {
        const bool before = (x < middle) != on.place.mirrored;
        along.add(
            x,
            say("place.notch-edge",
                {{"corner", name}, {"side", before ? corner.side_before : corner.side_after}}),
            true, edge);
      }
      across.add(top ? notch.lo.y : notch.hi.y,
                 say(top ? "place.notches-top" : "place.notches-bottom"), true);
      if (corner.filled) find_square_front(across, on, corner, top);
    }
  }
}

void find_lines(Finder& across, const OnSheet& on) {
  using What = NamedLine::What;
  const plane::Box cloth = on.box(closed_path(on.pattern.outline));
  const bool has_round_corner =
      std::ranges::any_of(on.pattern.corners, [](const PatternCorner& c) { return !c.filled; });
  across.add(cloth.lo.y, say("place.cloth-bottom"), true);
  across.add(cloth.hi.y, say("place.cloth-top"), true);
  const bool ears_at_board = std::ranges::any_of(
      on.pattern.ends, [](const EndOnPattern& end) { return end.past_board == 0; });
  for (const NamedLine& line : on.pattern.lines) {
    const double y = on.y(line.from.y);
    const bool top = line.from.y > 0;
    if (line.what == What::BackEdge && line.level() && ears_at_board)
      across.add(y, say(top ? "place.board-top" : "place.board-bottom"), true);
    if (line.what == What::BackEdge && line.level() && !ears_at_board)
      across.add(y, say(top ? "place.board-top-alone" : "place.board-bottom-alone"), false);
    if (line.what == What::PaddingEdge)
      across.add(y, say(top ? "place.padding-top" : "place.padding-bottom"), true);
    if (line.what == What::StapleLine && line.level())
      across.add(y, say(top ? "place.staples-top" : "place.staples-bottom"), false);
    if (line.what == What::FrontFlat && has_round_corner)
      across.add(y, points_words(on.pattern, top), false);
  }
  for (const plane::Path& snip : on.pattern.snips) {
    const FlatPoint from = snip.vertices.front().at, to = snip.vertices.back().at;
    if (from.x == to.x) {  // a slit, not across an ear
      const bool top = from.y > 0;
      across.add(on.y(from.y), say(top ? "place.slit-flap-top" : "place.slit-flap-bottom"), true);
      across.add(on.y(to.y), say(top ? "place.slits-top" : "place.slits-bottom"), true);
      continue;
    }
    const double u = from.y;
    across.add(on.y(u), say(u > 0 ? "place.snips-top" : "place.snips-bottom"), true);
  }
}

/// Hems, whose folds are level, and seams from piece to piece, which are upright.
void find_hems_and_seams(Finder& along, Finder& across, const OnSheet& on, std::size_t bumper) {
  for (const HemFold& hem : on.pattern.hems)
    across.add(on.y(hem.from.y), say(hem.top ? "place.hem-top" : "place.hem-bottom"), false);
  for (const ClothJoin& join : on.made.joins[bumper])
    along.add(on.x(join.s),
              say("place.seam", {{"length", dimension(mm(join.allowance), on.made.job.units)}}),
              false);
}

void find_tongues(Finder& across, const OnSheet& on) {
  // The tongue is what the outline holds beyond the ears.
  for (const EndOnPattern& end : on.pattern.ends) {
    const double face = end.start ? 0.0 : on.pattern.length, way = end.start ? -1.0 : 1.0;
    const double tip = face + way * end.tongue;
    for (const FlatPoint p : on.pattern.outline)
      if (std::abs(p.x - tip) < kSame)
        across.add(on.y(p.y), say(p.y > 0 ? "place.tongues-top" : "place.tongues-bottom"), true);
  }
}

void find_numerals(Finder& along, Finder& across, const OnSheet& on, std::size_t bumper) {
  for (const PlacedNumeral& number : on.made.numerals_on_patterns()) {
    if (number.bumper != static_cast<int>(bumper) || number.digits.empty()) continue;
    along.add(on.x(number.center_s), say("place.numeral-center", {{"side", number.side}}), false);
    across.add(on.y(number.digits.front().origin.y), say("place.numerals-base"), false);
  }
}

void find_brackets(Finder& along, Finder& across, const OnSheet& on) {
  for (const BracketOnPattern& bracket : on.pattern.brackets) {
    const bool window = bracket.cloth == BracketCloth::Window;
    const std::string name = window ? window_words(bracket) : bracket_words(bracket);
    for (const plane::Path& path : window ? bracket.windows : bracket.footprints) {
      const plane::Box box = on.box(path);
      for (const double x : {box.lo.x, box.hi.x})
        along.add(
            x, say(x < box.middle().x ? "place.first-edge" : "place.second-edge", {{"part", name}}),
            false);
      for (const double y : {box.lo.y, box.hi.y})
        across.add(
            y, say(y > box.middle().y ? "place.top-edge" : "place.bottom-edge", {{"part", name}}),
            false);
    }
    for (const Punch& hole : bracket.holes) {
      const FlatPoint p = on.place(hole.at);
      along.add(p.x,
                say("place.hole-across",
                    {{"part", name}, {"length", dimension(mm(p.y), on.made.job.units)}}),
                false);
      across.add(p.y, say("place.hole", {{"part", name}}), false);
    }
  }
}

}  // namespace

RunningDimensions running_dimensions(const Made& made, std::size_t bumper) {
  const OnSheet on{made, made.patterns[bumper], pattern_placement(made, bumper, {0, 0})};
  RunningDimensions all;
  Finder along, across;
  find_ends(along, on, bumper);
  find_corners(along, across, on);
  find_lines(across, on);
  find_hems_and_seams(along, across, on, bumper);
  find_tongues(across, on);
  find_numerals(along, across, on, bumper);
  find_brackets(along, across, on);
  for (std::size_t k = 0; k < on.pattern.marks.size(); ++k) {
    const MatchMark& mark = on.pattern.marks[k];
    along.add(on.x(mark.at.x), say("place.match-mark", {{"mark", made.mark_names[bumper][k]}}),
              false, mark.top ? Found::Edge::Top : Found::Edge::Bottom);
  }
  all.along = along.sorted();
  all.across = across.sorted();
  return all;
}

std::vector<Running> by_figure(const std::vector<Running>& list, Units units) {
  std::vector<Running> rows;
  std::string last;
  for (const Running& running : list) {
    const std::string told = dimension(mm(running.at_mm), units);
    if (rows.empty() || told != last) {
      rows.push_back(running);
    } else {
      rows.back().what += "; " + running.what;
      rows.back().cut |= running.cut;
    }
    last = told;
  }
  return rows;
}

}  // namespace swathe
