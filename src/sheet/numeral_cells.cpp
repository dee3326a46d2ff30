#include "sheet/numeral_cells.hpp"

#include <algorithm>
#include <utility>

#include "draw/furniture.hpp"
#include "draw/marks.hpp"
#include "sheet/placing.hpp"
#include "sheet/shown_subjects.hpp"
#include "sheet/texts.hpp"
#include "swathe/base.hpp"

namespace swathe {
namespace {

using sheet_texts::say;

constexpr double kRoom = 5.0;  ///< round what is cut out and kept
constexpr double kFromInk =
    1.5;  ///< base and center lines keep off: through it, they look like cuts
constexpr double kFromFrame = 3.0;
constexpr double kCaptionText = 5.0;
constexpr double kCaption = 10.0;  ///< height of the words under a digit
constexpr double kNote = 4.5;      ///< of the small ones under those
constexpr double kBesideWords = 2.0;

/// Whether the method leaves a sheet with holes, rather than pieces.
bool is_sheet(NumeralMethod method) {
  return method == NumeralMethod::Stencil || method == NumeralMethod::PaintMask;
}

struct Words {
  std::string caption;
  std::string note;  ///< may be empty
};

/// Lines in a frame, words under them. `base` is the level of the base line; `center` that of the
/// center line, where it has one.
NumeralCell framed(const DigitLines& lines, bool sheet, double base, const double* center,
                   const Words& words, const Subjects& shows, const Font& labels) {
  plane::Box ink = bounds(lines.cut);
  ink.cover(bounds(lines.stitch));
  const double around = sheet ? kStencilMargin : kRoom;
  const double below = kCaption + (words.note.empty() ? 0.0 : kNote);
  Drawing alone;
  {
    const Showing pieces(alone, shows);
    std::vector<plane::Path> gray;
    for (const plane::Polygon& contour : lines.cut) gray.push_back(closed_path(contour));
    alone.fill(LineKind::Cut, kTint, std::move(gray));
    for (const plane::Polygon& contour : lines.cut) alone.line(LineKind::Cut, closed_path(contour));
    for (const plane::Polygon& contour : lines.stitch)
      alone.line(LineKind::Stitch, closed_path(contour));
  }
  const double out = around - kFromFrame;
  if (sheet)
    for (const auto& [from, to] : {std::pair{ink.lo.x - out, ink.lo.x - kFromInk},
                                   std::pair{ink.hi.x + kFromInk, ink.hi.x + out}})
      alone.line(LineKind::Numeral, {from, base}, {to, base});
  if (center)
    for (const auto& [from, to] : {std::pair{ink.lo.y - out, ink.lo.y - kFromInk},
                                   std::pair{ink.hi.y + kFromInk, ink.hi.y + out}})
      alone.line(LineKind::Numeral, {*center, from}, {*center, to});

  NumeralCell cell;
  const double worded = std::max(labels.text_width_mm(words.caption, kCaptionText),
                                 labels.text_width_mm(words.note, kTableHeight));
  cell.size = {std::max(ink.width() + 2 * around, worded + 2 * kBesideWords),
               ink.height() + 2 * around + below};
  const FlatPoint corner{0.5 * (cell.size.x - ink.width()), around + below};
  cell.drawing.add(alone, {false, 0, corner - ink.lo});
  cell.drawing.line(LineKind::Thin, rectangle({0, 0}, cell.size));
  const double middle = 0.5 * cell.size.x;
  const double caption = words.note.empty() ? 4.0 : 4.0 + kNote;
  cell.drawing.text({middle, caption}, words.caption, kCaptionText, draw::Anchor::Middle);
  if (!words.note.empty())
    cell.drawing.text({middle, 3.0}, words.note, kTableHeight, draw::Anchor::Middle);
  return cell;
}

class Cells {
 public:
  Cells(const Made& made, const Font& labels)
      : made_(made), numerals_(*made.numerals), labels_(labels) {}

  std::vector<NumeralCell> all() {
    const bool outlined = numerals_.outline > 0;
    if (outlined) add(DigitLayer::White, "piece.white");
    add(DigitLayer::Fill, outlined ? "piece.color" : "");
    return std::move(cells_);
  }

 private:
  NumeralMethod method() const { return made_.job.numerals.method; }

  void add(DigitLayer layer, const char* layer_word) {
    if (is_one_sheet(made_.job.numerals))
      add_masks(layer, layer_word);
    else
      for (const Digit& digit : numerals_.digits) add_digit(digit, layer, layer_word);
  }

  /// "digit 4" or "digit 4, white"; the layer by the id of its text, which may be empty.
  static std::string named(const std::string& what, const char* layer_word) {
    return *layer_word ? say(layer_word, {{"piece", what}}) : what;
  }

  /// "4: use 3 times"
  static std::string caption(const std::string& piece, bool use, int count) {
    if (count == 1) return say(use ? "piece.use-once" : "piece.cut-once", {{"piece", piece}});
    return say(use ? "piece.use" : "piece.cut",
               {{"piece", piece}, {"count", std::to_string(count)}});
  }

  void add_digit(const Digit& digit, DigitLayer layer, const char* layer_word) {
    const std::string text(1, digit.digit);
    const bool use = method() == NumeralMethod::Stencil;
    Words words{caption(named(text, layer_word), use, digit.count), {}};
    if (method() == NumeralMethod::IronOn) words.note = say("piece.mirrored");
    if (method() == NumeralMethod::SewOn)
      words.note = say("piece.allowance", {{"length", exact(kSewAllowance, made_.job.units)}});
    if (layer == DigitLayer::Fill && !digit.bridges.empty())
      words.note =
          say("piece.bridges", {{"share", plain_number(100 * taken_by_bridges(digit), 0)}});
    const double middle = bounds(digit.outline).middle().x;  // as on the placing strip
    NumeralCell cell =
        framed(digit_lines(digit, method(), layer), is_sheet(method()), 0,
               is_sheet(method()) ? &middle : nullptr, words, Subject::digit(digit.digit), labels_);
    cell.name = named(say("piece.digit", {{"digit", text}}), layer_word);
    cells_.push_back(std::move(cell));
  }

  /// Every place where these digits stand.
  Subjects mask_subjects(const std::string& text) const {
    std::vector<Subject> places;
    for (const PlacedNumeral& placed : numerals_.placed)
      if (placed.text == text) places.push_back(subject_of(placed));
    return Subjects(std::move(places));
  }

  void add_masks(DigitLayer layer, const char* layer_word) {
    std::vector<std::string> done;
    for (const PlacedNumeral& placed : numerals_.placed) {
      if (std::ranges::find(done, placed.text) != done.end()) continue;
      done.push_back(placed.text);
      const int count = masks_of(numerals_, placed.text, made_.job.numerals.spares,
                                 static_cast<int>(made_.job.cloth.colors.size()));
      const bool mask = method() == NumeralMethod::PaintMask;
      const Words words{caption(named(placed.text, layer_word), !mask, count),
                        placed.whole ? "" : say("piece.part")};
      const double base = placed.digits.front().origin.y - placed.center_u, center = 0;
      NumeralCell cell = framed({number_mask(placed, numerals_.digits, layer), {}, false}, true,
                                base, &center, words, mask_subjects(placed.text), labels_);
      cell.name =
          named(say(mask ? "piece.mask" : "piece.stencil", {{"digits", placed.text}}), layer_word);
      cells_.push_back(std::move(cell));
    }
  }

  const Made& made_;
  const Numerals& numerals_;
  const Font& labels_;
  std::vector<NumeralCell> cells_;
};

}  // namespace

std::vector<NumeralCell> numeral_cells(const Made& made, const Font& labels) {
  return Cells(made, labels).all();
}

bool covers_neighbor(const Made& made) {
  if (made.job.numerals.method != NumeralMethod::Stencil || is_one_sheet(made.job.numerals))
    return false;
  // The margin is left round the white outline too, and so may reach the neighbor's outline.
  const double white = 2 * made.job.numerals.outline.mm();
  return std::ranges::any_of(placings(made), [&](const Placing& placing) {
    const std::vector<DigitPlace>& digits = placing.digits;
    return std::ranges::adjacent_find(digits, [&](const DigitPlace& a, const DigitPlace& b) {
             return b.left - a.right - white < kStencilMargin;
           }) != digits.end();
  });
}

int masks_of(const Numerals& numerals, const std::string& text, int spares, int colors) {
  const auto placed = std::ranges::count(numerals.placed, text, &PlacedNumeral::text);
  const bool any_whole = std::ranges::any_of(numerals.placed, &PlacedNumeral::whole);
  const bool has_spares = text == numerals.number || !any_whole;
  return (static_cast<int>(placed) + (has_spares ? spares : 0)) * colors;
}

}  // namespace swathe
