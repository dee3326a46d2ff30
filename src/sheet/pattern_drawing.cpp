#include "sheet/pattern_drawing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "draw/furniture.hpp"
#include "draw/label_placer.hpp"
#include "draw/marks.hpp"
#include "pattern/half_pattern.hpp"
#include "pattern/joins.hpp"
#include "sheet/placing_sheet.hpp"
#include "sheet/same_cover_words.hpp"
#include "sheet/shown_subjects.hpp"
#include "sheet/texts.hpp"

namespace swathe {
namespace {

using sheet_texts::say;

using What = NamedLine::What;

constexpr double kWhiteFlatness = 0.05;  ///< mm, of the outline of a place to lay a piece on
constexpr double kRunOut = kNumeralRunOut;
constexpr double kName = kTextHeight;  ///< heights of lettering
constexpr double kSmall = 3.5;
constexpr double kFromEnd = 6.0;     ///< names stand this far from their line's ends
constexpr double kPastCrowns = 1.8;  ///< a staple line's name stands clear of the staples
constexpr double kGrainLength = 130.0;
constexpr double kDashChord = 0.05;  ///< mm

bool is_drawn(What what) {
  // Nobody cuts, folds or marks at the ends of the front flat and of the rounds.
  return what != What::FrontFlat && what != What::TopTangent;
}

/// Words broken at the space nearest to their middle.
std::vector<std::string> in_two_lines(const std::string& words) {
  std::size_t best = std::string::npos;
  const auto off = [&](std::size_t at) {
    return at > words.size() - at ? 2 * at - words.size() : words.size() - 2 * at;
  };
  for (std::size_t at = words.find(' '); at != std::string::npos; at = words.find(' ', at + 1))
    if (best == std::string::npos || off(at) < off(best)) best = at;
  if (best == std::string::npos) return {words};
  return {words.substr(0, best), words.substr(best + 1)};
}

std::string name_of(const std::vector<PatternCorner>& corners, const NamedLine& line) {
  switch (line.what) {
    case What::CornerLine:
      return say("cover.corner", {{"corner", corner_words(corners, line.from.x)}});
    case What::InsideCorner:
      return say("line.inside-corner", {{"corner", corner_words(corners, line.from.x)}});
    case What::EndFace:
      return say("line.end");
    case What::BackEdge:
      return say("line.board-edge");
    case What::PaddingEdge:
      return say("line.padding-edge");
    case What::BoardEnd:
      return say("line.board-end");
    case What::StapleLine:
      return say("line.staples");
    default:
      return line.name;
  }
}

/// The stretches of a staple line that no window or bracket takes.
std::vector<NamedLine> outside_brackets(const NamedLine& line,
                                        const std::vector<BracketOnPattern>& brackets) {
  std::vector<NamedLine> stretches = {line};
  if (!line.level()) return stretches;  // at a filled corner, where brackets seldom are
  const auto take_out = [&](const plane::Box& box) {
    if (box.lo.y > line.from.y || box.hi.y < line.from.y) return;
    std::vector<NamedLine> left;
    for (const NamedLine& stretch : stretches) {
      if (box.lo.x > stretch.to.x || box.hi.x < stretch.from.x) {
        left.push_back(stretch);
        continue;
      }
      if (box.lo.x > stretch.from.x)
        left.push_back({line.what, line.name, stretch.from, {box.lo.x, line.from.y}});
      if (box.hi.x < stretch.to.x)
        left.push_back({line.what, line.name, {box.hi.x, line.from.y}, stretch.to});
    }
    stretches = std::move(left);
  };
  for (const BracketOnPattern& bracket : brackets) {
    for (const plane::Path& path : bracket.footprints) take_out(bounds(path));
    for (const plane::Path& path : bracket.windows) take_out(bounds(path));
  }
  return stretches;
}

/// A seam, the two cuts beside it, and ticks that meet when it is sewn.
void draw_join(Drawing& onto, const ClothJoin& join, const plane::Placement& place) {
  onto.line(LineKind::Stitch, place(join.from), place(join.to));
  for (const double side : {-1.0, 1.0}) {
    const FlatPoint off{side * join.allowance, 0};
    onto.line(LineKind::Thin, place(join.from + off), place(join.to + off));
  }
  for (const double share : {0.25, 0.5, 0.75}) {
    const FlatPoint at = join.from + share * (join.to - join.from);
    const FlatPoint reach{join.allowance, 0};
    onto.line(LineKind::Stitch, place(at - reach), place(at + reach));
  }
}

std::vector<plane::Path> cuts_of(const Pattern& pattern) {
  std::vector<plane::Path> cuts = {closed_path(pattern.outline)};
  cuts.insert(cuts.end(), pattern.snips.begin(), pattern.snips.end());
  return cuts;
}
const std::vector<plane::Path>& cuts_of(const HalfPattern& half) { return half.cuts; }

/// The lines of a cover, whole or half.
template <class Cover>
void draw_lines(Drawing& onto, const Cover& cover, const std::vector<ClothJoin>& joins,
                const plane::Placement& place, const ShownOnCover& shown) {
  const Showing bumper(onto, shown.bumper());
  for (const plane::Path& cut : cuts_of(cover)) onto.line(LineKind::Cut, place(cut));
  const double flip = place.mirrored ? -1.0 : 1.0;
  const auto fold = [&](const plane::Path& path, FlatPoint under) {
    draw_pleat(onto, place(path), {flip * under.x, under.y});
  };
  for (const PleatLine& pleat : cover.pleats) {
    const Showing corner(onto, shown.pleat(pleat));
    fold(pleat.path, pleat.under);
  }
  for (const HemFold& hem : cover.hems) fold(hem.path(), hem.under());
  for (const auto* sewn : {&cover.stitches, &cover.seam_marks})
    for (const plane::Path& path : *sewn) {
      const Showing corner(onto, shown.corner(bounds(path).middle().x));
      onto.line(LineKind::Stitch, place(path));
    }
  for (const plane::Path& path : cover.strips) onto.line(LineKind::Stitch, place(path));
  for (const ClothJoin& join : joins) draw_join(onto, join, place);
  for (const NamedLine& line : cover.lines) {
    const Showing part(onto, shown.line(line));
    if (line.what == What::StapleLine)
      for (const NamedLine& stretch : outside_brackets(line, cover.brackets))
        onto.line(LineKind::StapleLine, place(stretch.from), place(stretch.to));
    else if (is_drawn(line.what))
      onto.line(LineKind::Corner, place(line.from), place(line.to));
  }
}

/// An outline in dashes: nothing is cut there.
void draw_dashed(Drawing& onto, const plane::Path& outline) {
  constexpr double kOn = 4.0, kOff = 2.5;
  std::vector<FlatPoint> points = flatten(outline, kDashChord);
  if (outline.closed) points.push_back(points.front());
  for (std::size_t k = 0; k + 1 < points.size(); ++k) {
    const FlatPoint from = points[k], way = points[k + 1] - from;
    const double all = norm(way);
    for (double at = 0; at < all; at += kOn + kOff)
      onto.line(LineKind::Thin, from + (at / all) * way,
                from + (std::min(at + kOn, all) / all) * way);
  }
}

/// The single marks of a cover, whole or half.
template <class Cover>
void draw_marks(Drawing& onto, const Cover& cover, const plane::Placement& place,
                const ShownOnCover& shown) {
  const Showing bumper(onto, shown.bumper());
  for (const Staple& staple : cover.staples) draw_staple(onto, place(staple.at), staple.upright);
  for (const BracketOnPattern& bracket : cover.brackets) {
    const Showing one(onto, shown.bracket(bracket));
    for (const plane::Path& window : bracket.windows) draw_window(onto, place(window));
    if (bracket.cloth == BracketCloth::Under)
      for (const plane::Path& footprint : bracket.footprints) draw_dashed(onto, place(footprint));
    for (const Punch& hole : bracket.holes) draw_punch(onto, place(hole.at), hole.radius);
  }
  for (const MatchMark& mark : cover.marks) draw_match(onto, place(mark.at), mark.top);
}

/// Digits with base line and center line; the box of their ink on the sheet.
plane::Box draw_number(Drawing& onto, const Numerals& numerals, const PlacedNumeral& number,
                       const plane::Placement& place) {
  const Showing one(onto, subject_of(number));
  plane::Box ink;
  double base = 0;
  for (const PlacedDigit& placed : number.digits) {
    const Digit& digit = numerals.shape(placed.digit);
    plane::Region outline = numerals.outline_of(placed);
    for (plane::Polygon& contour : outline) contour = place(contour);
    ink.cover(bounds(outline));
    base = place(placed.origin).y;
    draw_numeral(onto, outline);
    if (!digit.white) continue;
    for (const plane::Polygon& contour : digit.white->outline) {
      plane::Polygon white = thinned(contour, kWhiteFlatness);
      for (FlatPoint& p : white) p = p + placed.origin;
      white = place(white);
      ink.cover(bounds(white));
      onto.line(LineKind::Numeral, closed_path(white));
    }
  }
  if (ink.empty()) return ink;
  const double middle = place({number.center_s, 0}).x;
  onto.line(LineKind::Thin, {ink.lo.x - kRunOut, base}, {ink.hi.x + kRunOut, base});
  onto.line(LineKind::Thin, {middle, ink.lo.y - kRunOut}, {middle, ink.hi.y + kRunOut});
  return ink;
}

void name_number(LabelPlacer& labels, const PlacedNumeral& number, const plane::Box& ink,
                 bool mirrored) {
  const Showing one(labels.drawing(), subject_of(number));
  TextBlock words{
      {{say("numeral.place", {{"number", number.text}, {"side", number.side}}), kName}}};
  if (!number.whole)
    words.lines.push_back(
        {say(number.from == 0 ? "numeral.first-digits" : "numeral.last-digits"), kSmall});
  if (mirrored) words.lines.push_back({say("numeral.other-side"), kSmall});
  labels.block(words, ink.grown(60), {ink.middle().x + 45, ink.lo.y - 14});
  labels.near({ink.hi.x + kRunOut, ink.lo.y}, say("numeral.base-line"), kSmall, 20);
  labels.near({ink.middle().x, ink.hi.y + kRunOut}, say("numeral.center-line"), kSmall, 20);
}

/// Where a numeral is to lie, drawn without its digits.
struct NumeralPlace {
  std::string number, sides;  ///< "front", or "front, back" of one and its mirror image
  plane::Box box;             ///< on the sheet
  Subjects shows;

  std::string words() const { return say("numeral.place", {{"number", number}, {"side", sides}}); }
};

/// The places on a half, each with its base line; one on the fold is cut by it.
std::vector<NumeralPlace> draw_places(Drawing& onto, const Made& made, std::size_t bumper,
                                      const HalfPattern& half, const plane::Placement& place,
                                      const ShownOnCover& shown) {
  std::vector<NumeralPlace> places;
  for (const PlacedNumeral& number : made.numerals_on_patterns()) {
    if (number.bumper != static_cast<int>(bumper) || number.digits.empty()) continue;
    const FlatPoint reach{0.5 * number.width, 0.5 * number.height};
    const FlatPoint lo = FlatPoint{number.center_s, number.center_u} - reach;
    if (lo.x >= half.fold) {  // beyond it: its mirror image's place is named for its side, too
      for (NumeralPlace& other : places)
        if (std::abs(other.box.middle().x - place({2 * half.fold - number.center_s, 0}).x) < 1)
          other.sides += ", " + number.side;
      continue;
    }
    const FlatPoint hi{std::min(number.center_s + reach.x, half.fold), number.center_u + reach.y};
    NumeralPlace on{number.text, number.side, {}, shown.numeral(number)};
    const Showing one(onto, on.shows);
    on.box.cover(place(lo));
    on.box.cover(place(hi));
    const plane::Path outline = rectangle(on.box.lo, on.box.hi);
    onto.line(LineKind::Numeral, outline);
    const double base = place(number.digits.front().origin).y;
    const double past = hi.x < half.fold ? kRunOut : 0.0;
    const double left = on.box.lo.x - (place.mirrored ? past : kRunOut);
    const double right = on.box.hi.x + (place.mirrored ? kRunOut : past);
    onto.line(LineKind::Thin, {left, base}, {right, base});
    if (past > 0) {
      const double middle = place({number.center_s, 0}).x;
      onto.line(LineKind::Thin, {middle, on.box.hi.y}, {middle, on.box.hi.y + kRunOut});
      onto.line(LineKind::Thin, {middle, on.box.lo.y}, {middle, on.box.lo.y - kRunOut});
    }
    places.push_back(on);
  }
  return places;
}

/// Arrows on to the fold, joined by a line, and what they ask for; above and below the middle.
/// `into` is the way from the fold into the half, 1 or -1.
void mark_fold(Drawing& onto, LabelPlacer& labels, FlatPoint low, FlatPoint high, double into) {
  constexpr double kLong = 72.0, kFrom = 12.0, kRoom = 20.0, kWords = 4.0;
  const std::string words = say("fold.place");
  plane::Box strip;
  strip.cover(low + FlatPoint{into, 0});
  strip.cover(high + FlatPoint{into * (kRoom + 4.0), 0});
  bool marked = false;
  for (const double share : {0.72, 0.28}) {
    const FlatPoint aim = low + share * (high - low) + FlatPoint{into * (0.5 * kRoom + 1), 0};
    const auto spot = labels.claim(kRoom, kLong, strip, aim, 2.0);
    if (!spot) continue;
    const double x = low.x + into * kFrom;
    const double from = spot->lo.y + 4, to = spot->hi.y - 4;
    onto.line(LineKind::Fold, {x, from}, {x, to});
    for (const double y : {from, to})
      onto.fill(LineKind::Fold, kBlack, {closed_path(arrow({x, y}, {low.x + into, y}))});
    onto.text({x + (into > 0 ? 2.0 + kWords : -2.0), 0.5 * (from + to)}, words, kWords,
              draw::Anchor::Middle, 0.5 * std::numbers::pi);
    marked = true;
  }
  if (!marked && !labels.beside(low, high, words, 5.0, kFromEnd))
    labels.beside(low, high, words, kSmall, 1.0);
}

void name_lines(LabelPlacer& labels, const std::vector<NamedLine>& lines,
                const std::vector<PatternCorner>& corners, const plane::Placement& place,
                const ShownOnCover& shown) {
  for (const NamedLine& line : lines) {
    if (!is_drawn(line.what)) continue;
    const bool runs_along = line.what == What::BackEdge || line.what == What::StapleLine;
    if (runs_along && !line.level()) continue;  // at a corner: named where it is level
    const Showing part(labels.drawing(), shown.line(line));
    const std::string name = name_of(corners, line);
    const FlatPoint a = place(line.from), b = place(line.to);
    const double off = line.what == What::StapleLine ? kPastCrowns : 0.3;
    const bool first = labels.beside(a, b, name, kName, kFromEnd, off);
    const bool second = labels.beside(b, a, name, kName, kFromEnd, off);
    // On a half it names two corners, and may be longer than its line.
    if (!first && !second && line.what == What::CornerLine)
      labels.near(a + 0.2 * (b - a), name, kSmall, 90);
  }
}

void name_brackets(LabelPlacer& labels, const std::vector<BracketOnPattern>& brackets,
                   const plane::Placement& place, const ShownOnCover& shown) {
  for (const BracketOnPattern& bracket : brackets) {
    const Showing one(labels.drawing(), shown.bracket(bracket));
    const bool window = bracket.cloth == BracketCloth::Window;
    for (const plane::Path& path : window ? bracket.windows : bracket.footprints) {
      const plane::Box box = bounds(place(path));
      const std::string name = bracket_words(bracket);
      TextBlock words{{{name, kSmall}}};
      for (const std::string& line :
           in_two_lines(say(window ? "bracket.cut-last" : "bracket.passes-under")))
        words.lines.push_back({line, kSmall});
      if (!labels.block(words, box, box.middle()))
        labels.near({box.middle().x, box.lo.y},
                    say(window ? "bracket.cut-last-in-line" : "bracket.passes-under-in-line",
                        {{"bracket", name}}),
                    kSmall, 120);
      labels.keep_off(box);
    }
  }
}

/// Hook-and-loop: what it is, and on which face.
void name_strips(LabelPlacer& labels, const std::vector<plane::Path>& strips,
                 const plane::Placement& place) {
  for (const plane::Path& strip : strips) {
    const plane::Box box = bounds(place(strip));
    if (!labels.block({{{say("strip.inside"), kSmall}}}, box, box.middle()))
      labels.near(box.middle(), say("strip.inside"), kSmall, 60);
  }
}

void name_joins(LabelPlacer& labels, const std::vector<ClothJoin>& joins,
                const plane::Placement& place, Units units) {
  for (const ClothJoin& join : joins)
    labels.near(place(join.from + 0.4 * (join.to - join.from)),
                say(join.under_pleat ? "seam.allowance-under-pleat" : "seam.allowance",
                    {{"length", dimension_with_unit(mm(join.allowance), units)}}),
                kSmall, 120);
}

/// Which piece of a joined cover lies on each side of a seam.
void name_parts(LabelPlacer& labels, const Pattern& pattern, const std::vector<ClothJoin>& joins,
                const plane::Placement& place) {
  constexpr double kBeside = 60.0;
  const std::vector<ClothPart> parts = cloth_parts(pattern, joins);
  for (std::size_t k = 0; k < joins.size(); ++k) {
    const ClothJoin& join = joins[k];
    for (const bool before : {true, false}) {
      const double inner = (before ? -1.0 : 1.0) * (join.allowance + 1.0);
      const double outer = (before ? -1.0 : 1.0) * (join.allowance + kBeside);
      plane::Box beside;
      beside.cover(place(join.from + FlatPoint{inner, 0}));
      beside.cover(place(join.to + FlatPoint{outer, 0}));
      const FlatPoint aim =
          place(join.from + 0.25 * (join.to - join.from) + FlatPoint{0.5 * (inner + outer), 0});
      labels.block({{{say("seam.piece", {{"piece", parts[before ? k : k + 1].name}}), 5.0}}},
                   beside, aim);
    }
  }
}

void name_hems(LabelPlacer& labels, const std::vector<HemFold>& hems,
               const plane::Placement& place) {
  for (const HemFold& hem : hems) {
    const FlatPoint a = place(hem.from), b = place(hem.to);
    if (!labels.beside(a, b, say("hem.fold-under"), kName, 3 * kFromEnd))
      labels.beside(a, b, say("hem.short"), kName, kFromEnd);
  }
}

void name_staples(LabelPlacer& labels, const Pattern& pattern, const plane::Placement& place) {
  for (const Staple& staple : pattern.staples) {
    if (staple.order % 5 != 0) continue;
    labels.near(place(staple.at), fmt::format("{}", staple.order), kSmall, 14);
  }
}

void name_marks(LabelPlacer& labels, const std::vector<MatchMark>& marks,
                const std::vector<std::string>& names, const plane::Placement& place) {
  for (std::size_t k = 0; k < marks.size(); ++k) {
    const MatchMark& mark = marks[k];
    const FlatPoint at = place(mark.at);
    const double y = mark.top ? at.y - 6.0 : at.y + 2.2;
    const std::string& name = names[k];
    labels.first_free(
        {{{at.x + 5.5, y}, name, kName, draw::Anchor::Left},
         {{at.x - 5.5, y}, name, kName, draw::Anchor::Right},
         {{at.x + 7.5, y}, name, kName, draw::Anchor::Left},
         {{at.x - 7.5, y}, name, kName, draw::Anchor::Right},
         {{at.x + 5.5, y + (mark.top ? -4.0 : 4.0)}, name, kName, draw::Anchor::Left},
         {{at.x - 5.5, y + (mark.top ? -4.0 : 4.0)}, name, kName, draw::Anchor::Right}});
  }
}

void name_ends(LabelPlacer& labels, const Made& made, std::size_t bumper,
               const std::vector<EndOnPattern>& ends, const plane::Placement& place,
               const ShownOnCover& shown) {
  const Section& section = made.section;
  const ClothMap map = made.cloth_map();
  const auto within = [&](double s0, double s1, double u0, double u1) {
    plane::Box box;
    box.cover(place({s0, map.to_pattern({0, u0}).y}));
    box.cover(place({s1, map.to_pattern({0, u1}).y}));
    return box;
  };
  for (const EndOnPattern& end : ends) {
    const Showing part(labels.drawing(), shown.end(end.start));
    const double way = end.start ? -1.0 : 1.0,
                 face = end.start ? 0.0 : made.patterns[bumper].length;
    const double flat = section.front_flat_top();
    const plane::Box tongue = within(face, face + way * end.tongue, -flat, flat);
    TextBlock words{{{say("tongue.name"), 5.0}}};
    for (const std::string& line : in_two_lines(say("tongue.how")))
      words.lines.push_back({line, kSmall});
    if (!labels.block(words, tongue, tongue.middle()))
      labels.block({{{say("tongue.name"), kName}}}, tongue, tongue.middle());
    for (const double sign : {1.0, -1.0}) {
      const double back = end.past_board > 0 ? sign * section.bare_back_edge()
                          : sign > 0         ? section.back_edge_top()
                                             : section.back_edge_bottom();
      const plane::Box ear = within(face, face + way * end.ears, sign * flat, back);
      labels.block({{{say("ear.name"), 5.0}, {say("ear.how"), kSmall}}}, ear, ear.middle());
    }
  }
}

std::vector<std::string> sentences_of(std::string words) {
  std::vector<std::string> sentences;
  for (std::size_t at = words.find(". "); at != std::string::npos; at = words.find(". ")) {
    sentences.push_back(words.substr(0, at));
    words.erase(0, at + 2);
  }
  sentences.push_back(std::move(words));
  return sentences;
}

/// What the piece is, large, on its longest side; a shorter word on the others.
void name_piece(Drawing& onto, LabelPlacer& labels, const Made& made, std::size_t bumper,
                const std::vector<Panel>& panels) {
  const ShownOnCover shown(made, bumper);
  const std::string name = say("cover.bumper", {{"bumper", made.patterns[bumper].bumper}});
  const auto longest = std::ranges::max_element(
      panels, {}, [](const Panel& panel) { return std::round(panel.box.width()); });
  for (auto panel = panels.begin(); panel != panels.end(); ++panel) {
    const Showing side(onto, shown.side(panel->side));
    const plane::Box& box = panel->box;
    const FlatPoint top{box.middle().x, box.hi.y - 12};
    if (const auto spot = labels.claim(36, 11, box, top)) {
      onto.text({spot->middle().x, spot->lo.y + 1.5}, say("face.top"), 8.0, draw::Anchor::Middle);
    }
    const FlatPoint aim{box.lo.x + 0.25 * box.width(), box.middle().y};
    TextBlock words;
    if (panel == longest) {
      words.lines = {{name, 12.0},
                     {made.job.title, 5.0},
                     {face_words(made), 8.0},
                     {cut_words(made), kTitleHeight}};
      // A line each: longer ones would be wider than a tile.
      for (const std::string& sentence : sentences_of(same_words(made, bumper)))
        words.lines.push_back({sentence, kName});
    } else {
      words.lines = {{name, kTitleHeight},
                     {say("cover.side", {{"side", panel->side}}), 5.0},
                     {face_words(made), 5.0}};
    }
    std::erase_if(words.lines, [](const TextBlock::Line& line) { return line.text.empty(); });
    if (!labels.block(words, box, aim)) {
      for (TextBlock::Line& line : words.lines) line.height_mm = kName;
      labels.block(words, box, aim);
    }
  }
  const plane::Box& box = longest->box;
  const std::string grain = say("face.grain");
  const double length = std::max(std::min(kGrainLength, 0.6 * box.width()),
                                 labels.font().text_width_mm(grain, 5.0) + 2.0);
  const FlatPoint low{box.middle().x, box.lo.y + 12};
  if (const auto spot = labels.claim(length, 12, box, low)) {
    draw_long_grain(onto, {spot->lo.x, spot->lo.y + 2.5}, {spot->hi.x, spot->lo.y + 2.5});
    onto.text({spot->middle().x, spot->lo.y + 6}, grain, 5.0, draw::Anchor::Middle);
  }
}

}  // namespace

std::vector<Panel> panels_of(const Made& made, std::size_t bumper, const plane::Placement& place) {
  const Pattern& pattern = made.patterns[bumper];
  const Wrap& wrap = made.wraps[bumper];
  double top = 0, bottom = 0;
  for (const NamedLine& line : pattern.lines)
    if (line.what == What::BackEdge && line.level()) {
      top = std::max(top, line.from.y);
      bottom = std::min(bottom, line.from.y);
    }
  std::vector<Panel> panels;
  double from = 0;
  for (std::size_t k = 0; k < wrap.run().sides.size(); ++k) {
    const double to = k < pattern.corners.size() ? pattern.corners[k].s : pattern.length;
    const auto side = static_cast<std::size_t>(wrap.run().sides[k].side);
    Panel panel{made.frame.sides()[side].name, {}};
    panel.box.cover(place({from, bottom}));
    panel.box.cover(place({to, top}));
    panels.push_back(std::move(panel));
    from = to;
  }
  return panels;
}

plane::Placement pattern_placement(const Made& made, std::size_t bumper, FlatPoint corner) {
  plane::Placement place;
  place.mirrored = made.job.paper.face == PaperFace::Inside;
  const plane::Box box = bounds(made.patterns[bumper].outline);
  place.move = corner - FlatPoint{place.mirrored ? -box.hi.x : box.lo.x, box.lo.y};
  return place;
}

std::string face_words(const Made& made) {
  return say(made.job.paper.face == PaperFace::Inside ? "face.inside-up" : "face.outside-up");
}

std::string cut_words(const Made& made) {
  std::string pieces;
  for (const ClothColor& color : made.job.cloth.colors)
    pieces += (pieces.empty() ? "" : ", ") + say("cut.piece", {{"color", color.name}});
  return say("cut.pieces", {{"pieces", pieces}});
}

std::string bracket_words(const BracketOnPattern& bracket) {
  return say("cover.bracket",
             {{"number", std::to_string(bracket.keys + 1)}, {"side", bracket.side}});
}

std::string window_words(const BracketOnPattern& bracket) {
  return say("cover.window",
             {{"number", std::to_string(bracket.keys + 1)}, {"side", bracket.side}});
}

std::string corner_words(const std::vector<PatternCorner>& corners, double s) {
  const auto nearest = std::ranges::min_element(
      corners, {}, [&](const PatternCorner& corner) { return std::abs(corner.s - s); });
  if (nearest == corners.end()) return "";
  return fmt::format("{} / {}", nearest->side_before, nearest->side_after);
}

Drawing draw_pattern(const Made& made, std::size_t bumper, const Font& font, FlatPoint corner) {
  const Pattern& pattern = made.patterns[bumper];
  const std::vector<ClothJoin>& joins = made.joins[bumper];
  const plane::Placement place = pattern_placement(made, bumper, corner);
  const ShownOnCover shown(made, bumper);
  Drawing drawing;
  std::vector<std::pair<PlacedNumeral, plane::Box>> numbers;
  for (PlacedNumeral& number : made.numerals_on_patterns()) {
    if (number.bumper != static_cast<int>(bumper)) continue;
    const plane::Box ink = draw_number(drawing, *made.numerals, number, place);
    numbers.emplace_back(std::move(number), ink);
  }
  draw_lines(drawing, pattern, joins, place, shown);
  draw_marks(drawing, pattern, place, shown);

  const FlatPoint size{pattern.cloth_length, pattern.cloth_width};
  LabelPlacer labels(drawing, font, plane::Box{corner, corner + size});
  // The large words first: the small ones find room between them.
  name_piece(drawing, labels, made, bumper, panels_of(made, bumper, place));
  for (const auto& [number, ink] : numbers)
    if (!ink.empty()) name_number(labels, number, ink, place.mirrored);
  name_marks(labels, pattern.marks, made.mark_names[bumper], place);
  name_ends(labels, made, bumper, pattern.ends, place, shown);
  name_brackets(labels, pattern.brackets, place, shown);
  name_strips(labels, pattern.strips, place);
  name_joins(labels, joins, place, made.job.units);
  name_parts(labels, pattern, joins, place);
  name_hems(labels, pattern.hems, place);
  name_staples(labels, pattern, place);
  name_lines(labels, pattern.lines, pattern.corners, place, shown);
  return drawing;
}

Drawing draw_half_pattern(const Made& made, std::size_t bumper, const Font& font,
                          FlatPoint corner) {
  const HalfPattern half = first_half(made.patterns[bumper], made.mark_names[bumper]);
  plane::Placement place;
  place.mirrored = made.job.paper.face == PaperFace::Inside;
  place.move = corner - FlatPoint{place.mirrored ? -half.box.hi.x : half.box.lo.x, half.box.lo.y};
  Drawing drawing;
  std::vector<NumeralPlace> numbers;
  const ShownOnCover shown(made, bumper, half.fold);
  if (made.numerals) numbers = draw_places(drawing, made, bumper, half, place, shown);
  draw_lines(drawing, half, {}, place, shown);
  draw_marks(drawing, half, place, shown);
  const FlatPoint fold_low = place({half.fold, half.box.lo.y});
  const FlatPoint fold_high = place({half.fold, half.box.hi.y});
  drawing.line(LineKind::Fold, fold_low, fold_high);

  const FlatPoint size{half.box.width(), half.box.height()};
  LabelPlacer labels(drawing, font, plane::Box{corner, corner + size});
  mark_fold(drawing, labels, fold_low, fold_high, place.mirrored ? 1.0 : -1.0);
  std::vector<Panel> panels = panels_of(made, bumper, place);
  const plane::Box on_half{corner, corner + size};
  std::erase_if(panels, [&](const Panel& p) { return !on_half.grown(-1).meets(p.box); });
  for (Panel& panel : panels) {
    panel.box.lo.x = std::max(panel.box.lo.x, on_half.lo.x);
    panel.box.hi.x = std::min(panel.box.hi.x, on_half.hi.x);
  }
  for (const NumeralPlace& number : numbers) {
    const Showing one(drawing, number.shows);
    const TextBlock words{{{number.words(), kName}, {say("numeral.on-one-layer"), kSmall}}};
    if (!labels.block(words, number.box, number.box.middle()))
      labels.near(number.box.middle(), number.words(), kSmall, 120);
    labels.keep_off(number.box);
  }
  name_piece(drawing, labels, made, bumper, panels);
  name_marks(labels, half.marks, half.mark_names, place);
  name_ends(labels, made, bumper, half.ends, place, shown);
  name_brackets(labels, half.brackets, place, shown);
  name_strips(labels, half.strips, place);
  name_hems(labels, half.hems, place);
  name_lines(labels, half.lines, half.corners, place, shown);
  return drawing;
}

}  // namespace swathe
