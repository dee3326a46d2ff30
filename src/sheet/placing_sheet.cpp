#include "sheet/placing_sheet.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "draw/flow.hpp"
#include "draw/furniture.hpp"
#include "draw/marks.hpp"
#include "sheet/placing.hpp"
#include "sheet/shown_subjects.hpp"
#include "sheet/texts.hpp"
#include "tile/correction.hpp"
#include "tile/tile_on_paper.hpp"

namespace swathe {
namespace {

using sheet_texts::say;

constexpr double kEnd = 9.0;       ///< of the strip past the base line's ends
constexpr double kBelow = 24.0;    ///< of the strip under the base line, its words not counted
constexpr double kTick = 9.0;      ///< how far a digit's edges are drawn down
constexpr double kDigit = 5.0;     ///< height of its name
constexpr double kPin = 1.6;       ///< radius of a circle that a pin goes through
constexpr double kBetween = 10.0;  ///< strips
constexpr double kMargin = 3.0;
constexpr double kMostWords = 150.0;  ///< across a tile
constexpr double kNone = 0.05;        ///< mm
constexpr double kNearCenter = 30.0;  ///< as far as the center line's words reach

/// "5 1/4 left", "5 1/4 right", "0".
std::string from_center(double at, Units units) {
  const std::string length = dimension(mm(std::abs(at)), units);
  if (std::abs(at) < kNone || length == "0") return length;
  return say(at < 0 ? "placing.left" : "placing.right", {{"length", length}});
}

/// "front of A, back of B".
std::string places_words(const Made& made, const Placing& placing) {
  std::string words;
  for (const PlacedNumeral& number : placing.places)
    words += (words.empty() ? "" : ", ") +
             say("placing.side-of",
                 {{"side", number.side},
                  {"bumper", made.patterns[static_cast<std::size_t>(number.bumper)].bumper}});
  return words;
}

/// "20486", or "20486, strip 2" where another strip has the same digits.
std::string strip_name(const std::vector<Placing>& all, std::size_t k) {
  const auto alike = std::ranges::count(all, all[k].text, &Placing::text);
  if (alike == 1) return all[k].text;
  return say("placing.strip-of", {{"digits", all[k].text}, {"strip", std::to_string(k + 1)}});
}

Table lines_table(const Made& made, const std::vector<Placing>& all) {
  const Units units = made.job.units;
  Table table;
  table.columns = {{say("placing.column-number")},
                   {say("placing.column-where")},
                   {say("placing.column-base"), draw::Anchor::Right},
                   {say("placing.column-center"), draw::Anchor::Right}};
  for (std::size_t k = 0; k < all.size(); ++k)
    for (const PlacedNumeral& number : all[k].places)
      table.rows.push_back(
          {strip_name(all, k),
           say("placing.side-of",
               {{"side", number.side},
                {"bumper", made.patterns[static_cast<std::size_t>(number.bumper)].bumper}}),
           dimension(mm(base_above_edge(made, number)), units),
           dimension(mm(center_from_edge(made, number)), units)});
  return table;
}

Table digits_table(const Placing& placing, Units units) {
  Table table;
  table.columns = {{say("placing.column-digit")},
                   {say("placing.column-left"), draw::Anchor::Right},
                   {say("placing.column-middle"), draw::Anchor::Right},
                   {say("placing.column-right"), draw::Anchor::Right}};
  for (const DigitPlace& digit : placing.digits)
    table.rows.push_back({std::string(1, digit.digit), from_center(digit.left, units),
                          from_center(digit.middle(), units), from_center(digit.right, units)});
  return table;
}

/// How the method's pieces are laid on the lines, an id of a text.
const char* how_id(const NumeralKeys& keys) {
  if (is_one_sheet(keys)) return "placing.how-one-sheet";
  return keys.method == NumeralMethod::Stencil ? "placing.how-stencils" : "placing.how-pieces";
}

std::vector<Page> table_pages(const Made& made, const std::vector<Placing>& all,
                              const PaperKeys& paper, const Font& labels,
                              const std::string& title) {
  const Units units = made.job.units;
  PageHead head;
  head.title = {made.job.title,
                title,
                "",
                {say("placing.head"),
                 say(units == Units::Inches ? "placing.in-inches" : "placing.in-millimeters")}};
  Flow flow(paper, labels, head);
  const bool strips = !is_one_sheet(made.job.numerals);
  flow.words(say("placing.how-lines"));
  if (strips) flow.words(say("placing.how-strip"));
  flow.words(say(how_id(made.job.numerals)));
  flow.heading(say("placing.heading-lines"));
  flow.table(lines_table(made, all));
  for (std::size_t k = 0; k < all.size(); ++k) {
    flow.heading(say("placing.heading-digits", {{"digits", strip_name(all, k)}}));
    flow.table(digits_table(all[k], units));
  }
  std::vector<Page> pages = flow.pages();
  for (Page& page : pages) page.name = title;
  return pages;
}

/// A place where a pin goes through, at the end of a line.
void draw_pin(Drawing& onto, FlatPoint at) { onto.line(LineKind::Thin, circle(at, kPin)); }

/// One strip, its words below its marks; the number's base line and center line meet at the origin.
/// How high it is.
double draw_strip(Drawing& onto, const Font& labels, const Made& made,
                  const std::vector<Placing>& all, std::size_t k) {
  const Placing& placing = all[k];
  std::vector<Subject> shows;
  for (const PlacedNumeral& number : placing.places) shows.push_back(subject_of(number));
  const Showing numbers(onto, Subjects(std::move(shows)));

  bool narrow_at_center = false;
  for (const DigitPlace& digit : placing.digits) {
    onto.line(
        LineKind::Thin,
        plane::open_path(
            {{digit.left, 0}, {digit.left, -kTick}, {digit.right, -kTick}, {digit.right, 0}}));
    onto.line(LineKind::Thin, {digit.middle(), 0}, {digit.middle(), -0.5 * kTick});
    // Its name stands in the half that has no center line in it; below a narrow one.
    const std::string name(1, digit.digit);
    const double wide = labels.text_width_mm(name, kDigit);
    const bool left = digit.middle() <= kNone;
    const bool narrow = digit.right - digit.middle() < wide + 3.0;
    const double clear = std::max(std::abs(digit.middle()), 0.5 * wide + 1.5);
    narrow_at_center = narrow_at_center || (narrow && std::abs(digit.middle()) < kNearCenter);
    if (narrow)
      onto.text({left ? -clear : clear, -kTick - 1.5 - kDigit}, name, kDigit, draw::Anchor::Middle);
    else
      onto.text({left ? digit.left + 2.0 : digit.right - 2.0, -kTick + 2.0}, name, kDigit,
                left ? draw::Anchor::Left : draw::Anchor::Right);
  }
  const double reach_left = placing.left - kNumeralRunOut,
               reach_right = placing.right + kNumeralRunOut, low = placing.low - kNumeralRunOut;
  draw_pin(onto, {reach_left, -kPin});
  draw_pin(onto, {reach_right, -kPin});
  onto.line(LineKind::Corner, {0, 0}, {0, low});
  draw_pin(onto, {0, low});
  // Names of narrow digits stand where its words would.
  const double words_at =
      narrow_at_center ? std::min(low - 1.5, -kTick - 3.0 - kDigit - 1.1 * kTextHeight) : low - 1.5;
  onto.text({2 * kPin + 1.0, words_at}, say("numeral.center-line"), kTextHeight);
  onto.text({reach_left - kPin, -2 * kPin - 2.0 - kTableHeight}, say("placing.pin"), kTableHeight);

  const double left = reach_left - kEnd, right = reach_right + kEnd;
  const std::string words = say("placing.strip-words", {{"digits", strip_name(all, k)},
                                                        {"places", places_words(made, placing)}});
  const plane::Box box = draw_text_block(onto, labels, {left + kMargin, -kBelow},
                                         std::min(right - left - 2 * kMargin, kMostWords), words);
  const double bottom = box.lo.y - kMargin;
  onto.line(LineKind::Cut, plane::rectangle({left, bottom}, {right, 0}));
  return -bottom;
}

/// All strips one below the other.
Page strips_page(const Made& made, const std::vector<Placing>& all, const Font& labels) {
  double width = 0, height = 0;
  std::vector<std::pair<Drawing, double>> strips;
  for (std::size_t k = 0; k < all.size(); ++k) {
    Drawing strip;
    const double high = draw_strip(strip, labels, made, all, k);
    strips.emplace_back(std::move(strip), high);
    width = std::max(width, all[k].right - all[k].left + 2 * (kNumeralRunOut + kEnd));
    height += high + kBetween;
  }
  Page page{width + 2 * kMargin, height + kMargin, {}, say("placing.strips")};
  double top = page.height_mm - kMargin;
  for (std::size_t k = 0; k < all.size(); ++k) {
    const double left = all[k].left - kNumeralRunOut - kEnd;
    page.drawing.add(strips[k].first, {false, 0, {kMargin - left, top}});
    top -= strips[k].second + kBetween;
  }
  return page;
}

}  // namespace

std::optional<SheetName> placing_name(const Made& made, const PaperKeys& paper) {
  if (!made.numerals || made.numerals->placed.empty()) return {};
  return SheetName{"placing", say("title.placing", {{"number", made.job.number}}),
                   SheetKind::Placing, paper.sheet};
}

Sheet placing_sheet(const Made& made, const PaperKeys& paper, const Font& labels, PageFill fill) {
  auto name = placing_name(made, paper);
  if (!name) return {};
  const std::vector<Placing> all = placings(made);
  Sheet sheet{std::move(*name), {}};
  sheet.pages = table_pages(made, all, paper, labels, sheet.title);
  if (is_one_sheet(made.job.numerals)) return sheet;
  Sheet strips = tile_on_paper(
      strips_page(made, all, labels), paper, labels,
      {sheet.stem, made.job.title, "", say("face.outside-up"), say("placing.for-all")}, fill);
  for (Page& page : strips.pages) sheet.pages.push_back(std::move(page));
  return sheet;
}

}  // namespace swathe
