#include "sheet/running.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "sheet/pattern_drawing.hpp"

namespace swathe {
namespace {

constexpr double kSame = 0.02;  ///< mm; figures this near each other are one place
constexpr double kSixtyFourth = 25.4 / 64;

/// A figure on the way to its list: edges that have it alike are named once.
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
      const char* edge = found.edge == Found::Edge::Top      ? ", top only"
                         : found.edge == Found::Edge::Bottom ? ", bottom only"
                                                             : "";
      list.push_back({found.at, found.what + edge, found.cut});
    }
    std::ranges::stable_sort(list, [](const Running& a, const Running& b) {
      return std::round(a.at_mm / kSame) < std::round(b.at_mm / kSame);
    });
    return list;
  }

 private:
  std::vector<Found> found_;
};

/// The pattern on the sheet, its cloth's box at the origin, and what can be asked of it there.
struct OnSheet {
  const Made& made;
  const Pattern& pattern;
  Placement place;

  double x(double s) const { return place({s, 0}).x; }
  double y(double u) const { return place({0, u}).y; }
  Box box(const Path& path) const { return bounds(place(path)); }
  /// "near" for the end at the sheet's left.
  const char* end_word(bool start) const { return start != place.mirrored ? "near" : "far"; }
  const char* side_word(double at, double middle) const { return at < middle ? "near" : "far"; }
};

void find_ends(Finder& along, const OnSheet& on) {
  for (const EndOnPattern& end : on.pattern.ends) {
    const double face = end.start ? 0.0 : on.pattern.length, way = end.start ? -1.0 : 1.0;
    const std::string word = on.end_word(end.start);
    along.add(on.x(face + way * end.tongue), word + " tongue ends", true);
    along.add(on.x(face + way * end.ears), word + " ears end", true);
    along.add(on.x(face), word + " end of bumper, flaps end", true);
  }
}

/// What a corner's surplus is taken away by.
const char* dart_word(const Pattern& pattern) {
  return !pattern.corners.empty() && pattern.corners.front().sewn ? "seam" : "fold";
}

void find_corners(Finder& along, Finder& across, const OnSheet& on) {
  for (const PatternCorner& corner : on.pattern.corners) {
    const std::string name = corner_words(on.pattern.corners, corner.s);
    const double middle = on.x(corner.s);
    along.add(middle, "corner line " + name + ", notch deepest", true);
    for (const bool top : {true, false}) {
      const Box notch = on.box(closed_path(top ? corner.notch_top : corner.notch_bottom));
      const auto edge = top ? Found::Edge::Top : Found::Edge::Bottom;
      for (const double x : {notch.lo.x, notch.hi.x})
        along.add(x, fmt::format("notch {}, {} edge", name, on.side_word(x, middle)), true, edge);
      across.add(top ? notch.lo.y : notch.hi.y,
                 top ? "top notches' point" : "bottom notches' point", true);
    }
  }
}

void find_lines(Finder& across, const OnSheet& on) {
  using What = NamedLine::What;
  const Box cloth = on.box(closed_path(on.pattern.outline));
  across.add(cloth.lo.y, "bottom cloth edge", true);
  across.add(cloth.hi.y, "top cloth edge", true);
  for (const NamedLine& line : on.pattern.lines) {
    const double y = on.y(line.from.y);
    const char* half = line.from.y > 0 ? "top" : "bottom";
    if (line.what == What::BackEdge)
      across.add(y, fmt::format("{} board edge, ears' edge", half), true);
    if (line.what == What::StapleLine) across.add(y, fmt::format("{} staple line", half), false);
    if (line.what == What::FrontFlat && !on.pattern.corners.empty())
      across.add(y, fmt::format("{} points of {}s", half, dart_word(on.pattern)), false);
  }
  for (const Path& snip : on.pattern.snips) {
    const double u = snip.vertices.front().at.y;
    across.add(on.y(u), u > 0 ? "snip, top ears" : "snip, bottom ears", true);
  }
}

/// Hems, whose folds are level, and seams from piece to piece, which are upright.
void find_hems_and_seams(Finder& along, Finder& across, const OnSheet& on, std::size_t bumper) {
  for (const HemFold& hem : on.pattern.hems)
    across.add(on.y(hem.from.y), hem.top ? "top hem's fold" : "bottom hem's fold", false);
  for (const ClothJoin& join : on.made.joins[bumper])
    along.add(on.x(join.s),
              fmt::format("seam of two pieces, cut each {} past it",
                          dimension(mm(join.allowance), on.made.job.units)),
              false);
}

void find_tongues(Finder& across, const OnSheet& on) {
  // The tongue is what the outline holds beyond the ears.
  for (const EndOnPattern& end : on.pattern.ends) {
    const double face = end.start ? 0.0 : on.pattern.length, way = end.start ? -1.0 : 1.0;
    const double tip = face + way * end.tongue;
    for (const FlatPoint p : on.pattern.outline)
      if (std::abs(p.x - tip) < kSame)
        across.add(on.y(p.y), p.y > 0 ? "top edge of tongues" : "bottom edge of tongues", true);
  }
}

void find_numerals(Finder& along, Finder& across, const OnSheet& on, std::size_t bumper) {
  for (const PlacedNumeral& number : on.made.numerals_on_patterns()) {
    if (number.bumper != static_cast<int>(bumper) || number.digits.empty()) continue;
    along.add(on.x(number.center_s), fmt::format("numeral {}, center line", number.side), false);
    across.add(on.y(number.digits.front().origin.y), "numerals' base line", false);
  }
}

void find_brackets(Finder& along, Finder& across, const OnSheet& on) {
  for (const BracketOnPattern& bracket : on.pattern.brackets) {
    const bool window = bracket.cloth == BracketCloth::Window;
    const std::string name = bracket.side + (window ? " window" : " bracket");
    for (const Path& path : window ? bracket.windows : bracket.footprints) {
      const Box box = on.box(path);
      for (const double x : {box.lo.x, box.hi.x})
        along.add(x, fmt::format("{}, {} edge", name, on.side_word(x, box.middle().x)), false);
      for (const double y : {box.lo.y, box.hi.y})
        across.add(y, fmt::format("{}, {} edge", name, y > box.middle().y ? "top" : "bottom"),
                   false);
    }
    for (const Punch& hole : bracket.holes) {
      const FlatPoint p = on.place(hole.at);
      along.add(p.x,
                fmt::format("{}, hole at {} across", name, dimension(mm(p.y), on.made.job.units)),
                false);
      across.add(p.y, name + ", hole to punch", false);
    }
  }
}

}  // namespace

RunningDimensions running_dimensions(const Made& made, std::size_t bumper) {
  const OnSheet on{made, made.patterns[bumper], pattern_placement(made, bumper, {0, 0})};
  RunningDimensions all;
  Finder along, across;
  find_ends(along, on);
  find_corners(along, across, on);
  find_lines(across, on);
  find_hems_and_seams(along, across, on, bumper);
  find_tongues(across, on);
  find_numerals(along, across, on, bumper);
  find_brackets(along, across, on);
  for (std::size_t k = 0; k < on.pattern.marks.size(); ++k) {
    const MatchMark& mark = on.pattern.marks[k];
    along.add(on.x(mark.at.x), "match mark " + made.mark_names[bumper][k], false,
              mark.top ? Found::Edge::Top : Found::Edge::Bottom);
  }
  all.along = along.sorted();
  all.across = across.sorted();
  return all;
}

std::string left_over(Length length, Units units) {
  // From what is printed, read again: then nothing can round it another way.
  const auto printed = parse_length(dimension(length, units), units);
  const double left = printed ? (length - *printed).mm() : 0.0;
  if (std::abs(left) <= kSixtyFourth + 1e-6) return "";
  const char* sign = left > 0 ? "+" : "-";
  if (units == Units::Millimeters)
    return fmt::format("{}{}", sign, plain_number(std::abs(left), 1));
  const bool one = std::round(std::abs(left) / kSixtyFourth) < 1.5;
  return fmt::format("{}{}", sign, one ? "1/64" : "1/32");
}

std::vector<Running> by_figure(const std::vector<Running>& list, Units units) {
  std::vector<Running> rows;
  std::string last;
  for (const Running& running : list) {
    const std::string told = figure(mm(running.at_mm), units);
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

std::string figure(Length length, Units units) {
  const std::string left = left_over(length, units);
  return left.empty() ? dimension(length, units)
                      : fmt::format("{} ({})", dimension(length, units), left);
}

}  // namespace swathe
