#include "sheet/tile_footer.hpp"

#include <algorithm>

#include "sheet/pattern_marks.hpp"
#include "swathe/sheet/furniture.hpp"

namespace swathe {
namespace {

constexpr double kWords = 32.0;    ///< height of the words, or of the scales, in the strip
constexpr double kGap = 4.0;       ///< between the image and the strip
constexpr double kScales = 104.0;  ///< width of the check scales
constexpr double kMapRoom = 24.0;
constexpr double kLeastWords = 56.0;
constexpr double kNote = 6.0;     ///< height of the note's row, where there is one
constexpr double kName = 5.0;     ///< height of the tile's name
constexpr double kRow = 6.1;      ///< from line to line below it
constexpr double kLastRow = 5.4;  ///< the same, below the scales
constexpr double kLeastGrain = 20.0, kMostGrain = 32.0;  ///< length of the arrow
constexpr const char* kJoinWords = "trim left and top, lay on JOIN";

bool is_narrow(double width) { return width < kMapRoom + kLeastWords + kScales; }

/// The tiles as little boxes, this one filled, under the word TOP.
void draw_map(Drawing& onto, const Box& room, const TileGrid& grid, std::size_t column,
              std::size_t row) {
  const double middle = room.middle().x;
  onto.text({middle - 1.5, room.hi.y - kTextHeight}, "TOP", kTextHeight, Anchor::Middle);
  onto.fill(LineKind::Thin, kBlack, {closed_path(arrow_head({middle + 6.0, room.hi.y}, {0, 1}))});

  const double across = static_cast<double>(grid.columns), down = static_cast<double>(grid.rows);
  const double high = room.height() - kTextHeight - 1.5;
  const double scale = std::min(room.width() / (across * grid.step_x), high / (down * grid.step_y));
  const double w = scale * grid.step_x, h = scale * grid.step_y;
  const FlatPoint corner{middle - 0.5 * across * w, room.hi.y - kTextHeight - 1.5};
  for (std::size_t r = 0; r < grid.rows; ++r)
    for (std::size_t c = 0; c < grid.columns; ++c) {
      if (!grid.has(c, r)) continue;
      const FlatPoint lo =
          corner + FlatPoint{static_cast<double>(c) * w, -static_cast<double>(r + 1) * h};
      const Path box = rectangle(lo, lo + FlatPoint{w, h});
      onto.line(LineKind::Thin, box);
      if (c == column && r == row) onto.fill(LineKind::Thin, {0.25, 0.25, 0.25}, {box});
    }
}

/// Small enough for the width, but not below what can be read; cut short after that.
void draw_fitted(Drawing& onto, const Face& labels, FlatPoint base, double width, std::string words,
                 double height) {
  const double natural = labels.text_width_mm(words, height);
  if (natural > width) height = std::max(kTableHeight, height * width / natural);
  if (labels.text_width_mm(words, height) > width) {
    while (!words.empty() && labels.text_width_mm(words + "...", height) > width) {
      // Whole characters only: bytes 10xxxxxx of UTF-8 go on with the one before.
      while (words.size() > 1 && (static_cast<unsigned char>(words.back()) & 0xc0) == 0x80)
        words.pop_back();
      words.pop_back();
    }
    words += "...";
  }
  onto.text(base, words, height);
}

void draw_words(Drawing& onto, const Face& labels, FlatPoint top_left, double width,
                const std::string& name, const TileOptions& options) {
  FlatPoint base = top_left - FlatPoint{0, kName};
  onto.text(base, name, kName);
  // The cloth's length runs along the sheet, whichever way the paper lies.
  const double arrow_from = labels.text_width_mm(name, kName) + 4.0;
  const double half = 0.5 * std::clamp(width - arrow_from, kLeastGrain, kMostGrain);
  const FlatPoint middle = base + FlatPoint{arrow_from + half, 0};
  onto.text(middle + FlatPoint{0, 2.0}, "LONG GRAIN", kTableHeight, Anchor::Middle);
  draw_long_grain(onto, middle - FlatPoint{half, 0}, middle + FlatPoint{half, 0});
  for (const std::string& words :
       {options.subject, options.face_words, options.cut_words, options.title}) {
    if (words.empty()) continue;
    base.y -= kRow;
    draw_fitted(onto, labels, base, width, words, kTextHeight);
  }
}

void draw_scales(Drawing& onto, const Face& labels, FlatPoint top_left) {
  const Box scales = draw_check_scales(onto, labels, top_left);
  FlatPoint base{top_left.x, scales.lo.y - 1.0 - kTextHeight};
  for (const char* const words : {kPrintWords, kJoinWords}) {
    draw_fitted(onto, labels, base, kScales, words, kTextHeight);
    base.y -= kLastRow;
  }
}

}  // namespace

double footer_height(double printable_width_mm, const TileOptions& options) {
  return kGap + (is_narrow(printable_width_mm) ? 2 * kWords : kWords) +
         (options.note.empty() ? 0.0 : kNote) + (options.correction.empty() ? 0.0 : kNote);
}

void draw_footer(Drawing& onto, const Face& labels, const Box& strip, const TileGrid& grid,
                 std::size_t column, std::size_t row, const TileOptions& options) {
  const bool narrow = is_narrow(strip.width());
  const double top = strip.hi.y - kGap;
  const Box map{{strip.lo.x, top - kWords + 2.0}, {strip.lo.x + kMapRoom - 4.0, top}};
  draw_map(onto, map, grid, column, row);
  const double right = narrow ? strip.hi.x : strip.hi.x - kScales;
  const FlatPoint words{strip.lo.x + kMapRoom, top};
  const std::string name = tile_name(column, row) + " of " + std::to_string(grid.count());
  draw_words(onto, labels, words, right - words.x - 3.0, name, options);
  draw_scales(onto, labels, narrow ? FlatPoint{strip.lo.x, top - kWords} : FlatPoint{right, top});
  FlatPoint base = strip.lo + FlatPoint{0, 1.5};
  for (const std::string& note : {options.correction, options.note}) {
    if (note.empty()) continue;
    draw_fitted(onto, labels, base, strip.width(), note, kTextHeight);
    base.y += kNote;
  }
}

}  // namespace swathe
