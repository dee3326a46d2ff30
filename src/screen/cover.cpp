#include <algorithm>
#include <cassert>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "screen/canvas.hpp"
#include "screen/movable.hpp"
#include "screen/texts.hpp"
#include "sheet/cover_ends.hpp"
#include "sheet/pattern_drawing.hpp"
#include "sheet/shown_subjects.hpp"

namespace swathe {
namespace {

using screen_texts::say;
using What = NamedLine::What;

constexpr double kEdge = 2.5;       ///< CSS mm round the model
constexpr double kRoomyPx = 200;    ///< of a picture's height, that has dimensions round the cover
constexpr double kEndsPx = 300;     ///< and whose ends are named
constexpr double kMarksFrom = 0.6;  ///< pixels a millimeter: match marks and inner lines are seen
constexpr double kStaplesFrom = 0.9;  ///< and staples
constexpr double kNamesFrom = 0.9;    ///< and names of marks

class CoverPicture {
 public:
  CoverPicture(const Made& made, std::size_t bumper, const Font& labels,
               const ScreenOptions& options, CoverShown shown)
      : made_(made),
        bumper_(bumper),
        pattern_(made.patterns[bumper]),
        numbers_(made.numerals_on_patterns()),
        parts_(made, bumper),
        mirrored_(shown == CoverShown::AsPrinted && made.job.paper.face == PaperFace::Inside),
        roomy_(options.height_px >= kRoomyPx),
        row_(1.1 * options.text_px / screen::kPxPerMm),
        over_(pattern_.brackets.empty() ? 1.0 : 2.4),
        canvas_(labels, options, bounds(pattern_.outline), around(roomy_, row_, over_), mirrored_) {
    std::erase_if(numbers_,
                  [&](const PlacedNumeral& one) { return one.bumper != static_cast<int>(bumper); });
  }

  ScreenPicture drawn() && {
    cloth();
    digits();
    lines();
    brackets();
    marks();
    words();
    handles();
    return std::move(canvas_).drawn(
        "cover",
        say(mirrored_ ? "cover.title-inside" : "cover.title", {{"bumper", pattern_.bumper}}),
        description());
  }

 private:
  static screen::Around around(bool roomy, double row, double over) {
    if (!roomy) return {kEdge, kEdge, kEdge, kEdge};
    return {kEdge, kEdge + 2.4 * row, kEdge + 2.4 * row, kEdge + (over + 1.5) * row};
  }
  std::string fig(double length_mm) const {
    return dimension_with_unit(mm(length_mm), made_.job.units);
  }

  void cloth() {
    Drawing& onto = canvas_.layer("cloth", {0.07, 1});
    const Showing cover(onto, parts_.bumper());
    const plane::Path outline = closed_path(pattern_.outline);
    canvas_.area(onto, {outline});
    canvas_.line(onto, LineKind::Cut, outline);
    for (const plane::Path& snip : pattern_.snips) canvas_.line(onto, LineKind::Cut, snip);
    for (const plane::Polygon& hole : pattern_.holes)
      canvas_.line(onto, LineKind::CutLast, closed_path(hole));
  }

  void digits() {
    if (numbers_.empty()) return;
    Drawing& onto = canvas_.layer("numeral", {0.5, 1});
    for (const PlacedNumeral& number : numbers_) {
      const Showing one(onto, subject_of(number));
      for (const PlacedDigit& placed : number.digits) {
        std::vector<plane::Path> outlines;
        for (const plane::Polygon& contour : made_.numerals->outline_of(placed))
          outlines.push_back(closed_path(contour));
        canvas_.area(onto, outlines);
      }
    }
  }

  static LineKind kind_of(What what) {
    return what == What::StapleLine                             ? LineKind::StapleLine
           : what == What::CornerLine || what == What::BackEdge ? LineKind::Corner
                                                                : LineKind::Thin;
  }
  bool is_plain(What what) const {
    if (canvas_.px() >= kMarksFrom) return true;
    return what == What::BackEdge || what == What::CornerLine || what == What::EndFace ||
           what == What::PaddingEdge || what == What::BoardEnd;
  }

  void lines() {
    Drawing& onto = canvas_.layer("lines", {0.2, 0.6});
    const Showing cover(onto, parts_.bumper());
    for (const NamedLine& named : pattern_.lines) {
      if (!is_plain(named.what)) continue;
      const Showing part(onto, parts_.line(named));
      canvas_.line(onto, kind_of(named.what), named.from, named.to);
    }
    for (const HemFold& hem : pattern_.hems) canvas_.line(onto, LineKind::Fold, hem.path());
    for (const plane::Path& strip : pattern_.strips) canvas_.line(onto, LineKind::Stitch, strip);
    for (const PleatLine& pleat : pattern_.pleats) {
      const Showing corner(onto, parts_.pleat(pleat));
      canvas_.line(onto, LineKind::Fold, pleat.path);
    }
    for (const plane::Path& stitch : pattern_.stitches) {
      const Showing corner(onto, parts_.corner(bounds(stitch).middle().x));
      canvas_.line(onto, LineKind::Stitch, stitch);
    }
    for (const ClothJoin& join : made_.joins[bumper_])
      canvas_.line(onto, LineKind::Stitch, join.from, join.to);
    if (canvas_.px() < kMarksFrom) return;
    for (const plane::Path& mark : pattern_.seam_marks) canvas_.line(onto, LineKind::Thin, mark);
  }

  void brackets() {
    Drawing& onto = canvas_.layer("bracket", {0.16, 1});
    for (const BracketOnPattern& bracket : pattern_.brackets) {
      const Showing it(onto, parts_.bracket(bracket));
      const bool window = bracket.cloth == BracketCloth::Window;
      canvas_.area(onto, window ? bracket.windows : bracket.footprints);
      for (const plane::Path& one : window ? bracket.windows : bracket.footprints)
        canvas_.line(onto, window ? LineKind::CutLast : LineKind::Outline, one);
      for (const Punch& hole : bracket.holes)
        canvas_.line(onto, LineKind::Punch, circle(hole.at, hole.radius));
    }
  }

  void marks() {
    if (canvas_.px() >= kMarksFrom) {
      Drawing& onto = canvas_.layer("match", {1, 1});
      const Showing cover(onto, parts_.bumper());
      for (const MatchMark& mark : pattern_.marks) {
        const FlatPoint half{4, 0}, rise{0, mark.top ? -7.0 : 7.0};  // as they are printed
        canvas_.area(onto, {plane::closed_path({mark.at - half, mark.at + half, mark.at + rise})});
      }
    }
    if (canvas_.px() < kStaplesFrom) return;
    Drawing& onto = canvas_.layer("staple", {0.2, 0.8});
    const Showing cover(onto, parts_.bumper());
    for (const Staple& staple : pattern_.staples) {
      const FlatPoint half = staple.upright ? FlatPoint{0, 5} : FlatPoint{5, 0};
      canvas_.line(onto, LineKind::Staple, staple.at - half, staple.at + half);
    }
  }

  // Words, the more important ones first.

  void words() {
    canvas_.words({"numeral", "match"});
    const std::vector<Panel> panels = panels_of(made_, bumper_, {});
    const std::vector<bool> named = name_sides(panels);
    if (roomy_) over_all(panels, named);
    for (const BracketOnPattern& bracket : pattern_.brackets) {
      plane::Box box;
      for (const auto* paths : {&bracket.footprints, &bracket.windows})
        for (const plane::Path& path : *paths) box.cover(bounds(path));
      if (!box.empty())
        canvas_.note(canvas_.on(box.middle()),
                     say("cover.bracket", {{"number", std::to_string(bracket.keys + 1)}}),
                     parts_.bracket(bracket), 14);
    }
    if (canvas_.height_px() >= kEndsPx) name_ends();
    if (canvas_.px() < kNamesFrom) return;
    for (std::size_t k = 0; k < pattern_.marks.size(); ++k)
      canvas_.note(canvas_.on(pattern_.marks[k].at), made_.mark_names[bumper_][k], parts_.bumper(),
                   8);
  }

  /// Below the number, or in the middle where there is none; with its length where there is no
  /// room for lengths round the cover, and it fits on the side.
  std::vector<bool> name_sides(const std::vector<Panel>& panels) {
    std::vector<bool> named;
    for (const Panel& panel : panels) {
      LabelPlacer& placer = canvas_.words();
      const Showing part(placer.drawing(), parts_.side(panel.side));
      const FlatPoint lo = canvas_.on({panel.box.middle().x, panel.box.lo.y});
      const FlatPoint hi = canvas_.on({panel.box.middle().x, panel.box.hi.y});
      const auto name = [&](const std::string& text) {
        std::vector<TextMark> places;
        for (const double share : {0.26, 0.2, 0.32, 0.5, 0.14, 0.74, 0.08, 0.86})
          places.push_back({lo + share * (hi - lo) - FlatPoint{0, 0.5 * canvas_.text_height()},
                            text, canvas_.text_height(), draw::Anchor::Middle});
        return placer.first_free(places);
      };
      const std::string both = side_with_length(panel);
      const double wide = std::abs(canvas_.on(panel.box.hi).x - canvas_.on(panel.box.lo).x);
      named.push_back((!roomy_ && canvas_.text_width(both) <= wide && name(both)) ||
                      name(panel.side));
    }
    return named;
  }

  std::string side_with_length(const Panel& panel) const {
    return say("cover.side", {{"side", panel.side}, {"length", fig(panel.box.width())}});
  }

  void over_all(const std::vector<Panel>& panels, const std::vector<bool>& named) {
    const plane::Box box = bounds(pattern_.outline);
    const double off = 1.0 * row_;
    const FlatPoint a = canvas_.on(box.lo), b = canvas_.on(box.hi);
    const double left = std::min(a.x, b.x), right = std::max(a.x, b.x);
    canvas_.dimension({left, a.y - off}, {right, a.y - off},
                      say("cover.length", {{"length", fig(box.width())}}), parts_.bumper());
    canvas_.dimension({right + off, a.y}, {right + off, b.y}, fig(box.height()), parts_.bumper());
    for (std::size_t k = 0; k < panels.size(); ++k) {
      const Panel& panel = panels[k];
      const double from = canvas_.on(panel.box.lo).x, to = canvas_.on(panel.box.hi).x;
      const double at = b.y + over_ * row_;
      const FlatPoint low{std::min(from, to), at}, high{std::max(from, to), at};
      const std::string length = fig(panel.box.width());
      const std::string both = side_with_length(panel);
      for (const std::string& text :
           named[k] ? std::vector{length} : std::vector{both, panel.side, length})
        if (canvas_.dimension(low, high, text, parts_.side(panel.side))) break;
    }
  }

  void name_ends() {
    for (const EndOnPattern& end : pattern_.ends) {
      const FlatPoint at =
          canvas_.on({end.start ? -0.5 * end.tongue : pattern_.length + 0.5 * end.tongue, 0});
      canvas_.note(at, cover_end_words(made_, bumper_, end.start), parts_.end(end.start), 12);
    }
  }

  void handles() {
    const ClothMap map = made_.cloth_map();
    for (screen::Movable& one : screen::movables_of(made_)) {
      if (one.bumper != bumper_) continue;
      const auto on = place_of(one, map);
      if (!on) continue;
      // Cloth that is pulled is shorter on its pattern than on the bumper.
      one.handle.mm_per_px = map.to_cover({1 / canvas_.px(), 0}).s;
      canvas_.handle(std::move(one.handle), *on, {one.grows ? 1.0 : -1.0, 0});
    }
  }

  std::optional<FlatPoint> place_of(const screen::Movable& one, const ClothMap& map) const {
    const Run& run = made_.wraps[bumper_].run();
    if (one.handle.kind == screen::Handle::Kind::Numeral) {
      for (const PlacedNumeral& number : numbers_)
        if (one.handle.shows == Subjects(subject_of(number)))
          return FlatPoint{number.center_s, number.center_u};
      return std::nullopt;
    }
    if (one.handle.kind == screen::Handle::Kind::Bracket) {
      for (const BracketOnPattern& bracket : pattern_.brackets)
        if (one.handle.shows == Subjects(Subject::bracket(bracket.keys + 1)) &&
            !bracket.footprints.empty())
          return plane::bounds(bracket.footprints.front()).middle();
      return std::nullopt;
    }
    const bool start = one.handle.shows == Subjects(Subject::end(run.name, true));
    return map.to_pattern({start ? 0.0 : run.length, 0});
  }

  std::string description() const {
    std::vector<std::string> sides;
    for (const RunSide& leg : made_.wraps[bumper_].run().sides)
      sides.push_back(made_.frame.sides()[static_cast<std::size_t>(leg.side)].name);
    std::string words = say(mirrored_ ? "cover.words-inside" : "cover.words",
                            {{"bumper", pattern_.bumper},
                             {"length", fig(pattern_.cloth_length)},
                             {"width", fig(pattern_.cloth_width)},
                             {"sides", screen_texts::listed(sides)}});
    for (const PlacedNumeral& number : numbers_)
      words += " " + say("cover.words-number", {{"number", number.text}, {"side", number.side}});
    for (const BracketOnPattern& bracket : pattern_.brackets)
      words += " " + say(bracket.cloth == BracketCloth::Window ? "cover.words-window"
                                                               : "cover.words-bracket",
                         {{"number", std::to_string(bracket.keys + 1)}, {"side", bracket.side}});
    return words;
  }

  const Made& made_;
  std::size_t bumper_;
  const Pattern& pattern_;
  std::vector<PlacedNumeral> numbers_;  ///< of this cover, on the pattern
  ShownOnCover parts_;
  bool mirrored_, roomy_;
  double row_;   ///< from line to line of words, CSS mm
  double over_;  ///< rows from the cover to the lengths above it: brackets are named between
  screen::Canvas canvas_;
};

}  // namespace

ScreenPicture screen_cover(const Made& made, std::size_t bumper, const Font& labels,
                           const ScreenOptions& options, CoverShown shown) {
  assert(bumper < made.patterns.size());
  return CoverPicture(made, bumper, labels, screen::within_limits(options), shown).drawn();
}

}  // namespace swathe
