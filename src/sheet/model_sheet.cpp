#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

#include "draw/label_placer.hpp"
#include "draw/marks.hpp"
#include "draw/page_head.hpp"
#include "sheet/file_names.hpp"
#include "sheet/pattern_drawing.hpp"
#include "sheet/shown_subjects.hpp"
#include "sheet/texts.hpp"
#include "swathe/base.hpp"
#include "swathe/job.hpp"
#include "swathe/sheet.hpp"

namespace swathe {
namespace {

using sheet_texts::say;

constexpr double kHalfTriangle = 1.3, kTriangle = 2.4;  ///< of a match mark, on the card
constexpr double kLeastHole = 0.8;                      ///< least radius that can still be seen
constexpr double kUnderArrow = 5.0;                     ///< length of a pleat's arrow
constexpr double kFineStep = 0.5;                       ///< from one place tried to the next
constexpr double kFromEnd = 3.0;                        ///< a line's name from its end

/// The cover at scale, lower left corner of its box at the origin.
class Model {
 public:
  Model(const Made& made, std::size_t bumper, double scale)
      : made_(made),
        bumper_(bumper),
        pattern_(made.patterns[bumper]),
        shown_(made, bumper),
        scale_(scale) {
    place_.move = FlatPoint{} - bounds(pattern_.outline).lo;
  }

  FlatPoint size() const { return scale_ * FlatPoint{pattern_.cloth_length, pattern_.cloth_width}; }

  /// Every line of it; the numbers first, under them.
  Drawing lines() const {
    Drawing drawing;
    draw_lines(drawing);
    return drawing;
  }

  /// Its words on a drawing that has its lines; `corner` is where its box begins there.
  void name(Drawing& onto, const Font& labels, FlatPoint corner) const {
    const Showing cover(onto, shown_.bumper());
    LabelPlacer placer(onto, labels, {corner, corner + size()});
    const auto there = [&](FlatPoint p) { return corner + on(p); };
    name_sides(onto, placer, labels, corner);
    for (std::size_t k = 0; k < pattern_.marks.size(); ++k) {
      const MatchMark& mark = pattern_.marks[k];
      placer.near(there(mark.at) + FlatPoint{0, mark.top ? -kTriangle : kTriangle},
                  made_.mark_names[bumper_][k], kTableHeight, 8.0);
    }
    for (const NamedLine& line : pattern_.lines)
      if (line.what == NamedLine::What::CornerLine)
        placer.beside(
            there(line.from), there(line.to),
            say("cover.corner", {{"corner", corner_words(pattern_.corners, line.from.x)}}),
            kTableHeight, kFromEnd);
      else if (line.what == NamedLine::What::BackEdge && line.level())
        placer.beside(there(line.from), there(line.to), say("line.board-edge"), kTableHeight,
                      kFromEnd);
    for (const BracketOnPattern& bracket : pattern_.brackets)
      for (const plane::Path& path :
           bracket.cloth == BracketCloth::Window ? bracket.windows : bracket.footprints) {
        const plane::Box box = bounds(on(path));
        placer.near(corner + FlatPoint{box.middle().x, box.lo.y}, bracket_words(bracket),
                    kTableHeight, 40.0);
      }
  }

 private:
  FlatPoint on(FlatPoint p) const { return scale_ * place_(p); }
  plane::Path on(plane::Path path) const {
    path = place_(path);
    for (plane::Vertex& vertex : path.vertices) vertex.at = scale_ * vertex.at;
    return path;
  }

  void draw_lines(Drawing& drawing) const {
    const Showing cover(drawing, shown_.bumper());
    draw_numbers(drawing);
    drawing.line(LineKind::Cut, on(closed_path(pattern_.outline)));
    for (const plane::Path& snip : pattern_.snips) drawing.line(LineKind::Cut, on(snip));
    for (const PleatLine& pleat : pattern_.pleats) {
      const Showing corner(drawing, shown_.pleat(pleat));
      draw_fold(drawing, pleat.path, pleat.under);
    }
    for (const HemFold& hem : pattern_.hems) draw_fold(drawing, hem.path(), hem.under());
    for (const plane::Path& stitch : pattern_.stitches) {
      const Showing corner(drawing, shown_.corner(bounds(stitch).middle().x));
      drawing.line(LineKind::Stitch, on(stitch));
    }
    for (const NamedLine& line : pattern_.lines) {  // where cloth goes round, card is bent
      const Showing part(drawing, shown_.line(line));
      if (line.what != NamedLine::What::StapleLine)
        drawing.line(LineKind::Corner, on(line.from), on(line.to));
    }
    for (const BracketOnPattern& bracket : pattern_.brackets) draw_bracket(drawing, bracket);
    for (const MatchMark& mark : pattern_.marks) {
      const double rise = mark.top ? -kTriangle : kTriangle;
      const FlatPoint at = on(mark.at), tip = at + FlatPoint{0, rise};
      const FlatPoint half{mark.top ? -kHalfTriangle : kHalfTriangle, 0};  // counter-clockwise
      drawing.fill(LineKind::Match, kBlack, {plane::closed_path({at - half, at + half, tip})});
    }
  }

  void draw_fold(Drawing& onto, const plane::Path& path, FlatPoint under) const {
    const plane::Path fold = on(path);
    const OnPath middle = along_path(fold, 0.6);
    onto.line(LineKind::Fold, fold);
    onto.fill(LineKind::Fold, kBlack,
              {closed_path(arrow(middle.at, middle.at + kUnderArrow * under))});
  }

  void draw_numbers(Drawing& onto) const {
    for (const PlacedNumeral& number : made_.numerals_on_patterns()) {
      if (number.bumper != static_cast<int>(bumper_)) continue;
      const Showing one(onto, subject_of(number));
      for (const PlacedDigit& placed : number.digits) {
        plane::Region outline = made_.numerals->outline_of(placed);
        for (plane::Polygon& contour : outline)
          for (FlatPoint& p : contour) p = on(p);
        draw_numeral(onto, outline);
      }
    }
  }

  void draw_bracket(Drawing& onto, const BracketOnPattern& bracket) const {
    const Showing one(onto, shown_.bracket(bracket));
    const bool window = bracket.cloth == BracketCloth::Window;
    for (const plane::Path& path : window ? bracket.windows : bracket.footprints)
      onto.line(window ? LineKind::Cut : LineKind::Thin, on(path));
    for (const Punch& hole : bracket.holes)
      onto.line(LineKind::Punch, circle(on(hole.at), std::max(kLeastHole, scale_ * hole.radius)));
  }

  /// Words in the little room that lines leave between them; none where they leave no room.
  static void name_side(Drawing& onto, LabelPlacer& placer, const Font& labels,
                        const std::string& words, const plane::Box& side) {
    for (const double height : {kTextHeight, kTableHeight}) {
      const double width = labels.text_width_mm(words, height);
      const auto spot = placer.claim(width, 1.4 * height, side, side.middle(), kFineStep);
      if (!spot) continue;
      onto.text({spot->lo.x, spot->lo.y + 0.3 * height}, words, height);
      return;
    }
  }

  void name_sides(Drawing& onto, LabelPlacer& placer, const Font& labels, FlatPoint corner) const {
    const std::vector<Panel> panels = panels_of(made_, bumper_, place_);
    const auto longest = std::ranges::max_element(
        panels, {}, [](const Panel& panel) { return std::round(panel.box.width()); });
    for (auto panel = panels.begin(); panel != panels.end(); ++panel) {
      const plane::Box box{corner + scale_ * panel->box.lo, corner + scale_ * panel->box.hi};
      TextBlock words{{{say("cover.side", {{"side", panel->side}}), kTextHeight},
                       {say("face.top"), kTextHeight}}};
      if (panel == longest)
        words.lines.insert(words.lines.begin(),
                           {say("cover.bumper", {{"bumper", pattern_.bumper}}), kTitleHeight});
      if (placer.block(words, box, box.middle())) continue;
      for (const TextBlock::Line& line : words.lines)
        name_side(onto, placer, labels, line.text, box);
    }
  }

  const Made& made_;
  std::size_t bumper_;
  const Pattern& pattern_;
  ShownOnCover shown_;
  double scale_;
  plane::Placement place_;
};

/// The paper asked for first, then those of its series, the smallest first.
std::vector<Paper> cards(const PaperKeys& paper, Units units) {
  const auto is_metric = [](const std::string& name) { return name.size() == 2 && name[0] == 'a'; };
  const bool named = find_paper(paper.sheet).has_value();
  const bool metric = named ? is_metric(paper.sheet) : units == Units::Millimeters;
  std::vector<Paper> all;
  for (Paper& card : papers())
    if (is_metric(card.name) == metric) all.push_back(std::move(card));
  std::ranges::stable_sort(all, {}, [](const Paper& p) { return p.width.mm() * p.height.mm(); });
  if (paper.sheet != kRoll) all.insert(all.begin(), {paper.sheet, paper.width, paper.height});
  return all;
}

}  // namespace

std::string scale_words(double scale) {
  const double parts = std::round(1 / scale);
  if (std::abs(parts * scale - 1) < 1e-9) return fmt::format("1/{}", plain_number(parts, 0));
  return plain_number(scale, 3);
}

Sheet model_sheet(const Made& made, std::size_t bumper, double scale, const PaperKeys& asked,
                  const Font& labels) {
  const Model model(made, bumper, scale);
  const Drawing lines = model.lines();
  PageHead head;
  head.title = {
      made.job.title,
      say("title.model", {{"bumper", made.patterns[bumper].bumper}, {"scale", scale_words(scale)}}),
      "",
      {say("model.card")}};
  const Pattern& pattern = made.patterns[bumper];
  head.how = {say(!pattern.pleats.empty() || !pattern.hems.empty() ? "model.how-folded"
                  : !pattern.stitches.empty()                      ? "model.how-sewn"
                                                                   : "model.how-plain")};
  head.key = kinds_to_explain(lines);

  Sheet sheet;
  sheet.stem = stem_of(made, bumper, "model");
  sheet.title = head.title.subject;
  sheet.kind = SheetKind::Model;
  for (const Paper& card : cards(asked, made.job.units))
    for (const bool wide : {true, false}) {
      PaperKeys paper = asked;
      paper.sheet = card.name;
      paper.width = card.width;
      paper.height = card.height;
      Page page = empty_page(paper, wide);
      const plane::Box room = draw_page_head(page.drawing, labels, printable(page, paper), head);
      const FlatPoint size = model.size();
      if (size.x > room.width() || size.y > room.height()) continue;
      const FlatPoint corner{room.middle().x - 0.5 * size.x, room.hi.y - size.y};
      Drawing drawing;
      drawing.add(lines, {false, 0, corner});
      model.name(drawing, labels, corner);
      page.drawing.add(drawing, {});
      page.name = head.title.subject;
      sheet.paper = card.name;
      sheet.pages.push_back(std::move(page));
      return sheet;
    }
  return sheet;
}

}  // namespace swathe
