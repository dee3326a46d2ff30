#include "tile/tile_footer.hpp"

#include <algorithm>
#include <vector>

#include "draw/furniture.hpp"
#include "draw/marks.hpp"
#include "tile/texts.hpp"

namespace swathe {
namespace {

using tile_texts::say;

constexpr double kWords = 32.0;    ///< height of the words, or of the scales, in the strip
constexpr double kGap = 4.0;       ///< between the image and the strip
constexpr double kScales = 104.0;  ///< width of the check scales
constexpr double kMapRoom = 20.0, kMapHeight = 30.0;
constexpr double kMapGap = 4.0;  ///< between map and words
constexpr double kLeastWords = 56.0;
constexpr double kNote = 6.0;  ///< height of the note's row, where there is one
constexpr double kName = 5.0;  ///< height of the tile's name
constexpr double kBelowWords = 1.0;
constexpr std::size_t kMostLines = 7;
constexpr double kRow = 6.1;                             ///< from line to line below it
constexpr double kLastRow = 5.4;                         ///< the same, below the scales
constexpr double kLeastGrain = 20.0, kMostGrain = 32.0;  ///< length of the arrow
constexpr double kPlanTitle = 6.0;                       ///< height of the words above a plan
constexpr double kHereRoom = kTableHeight + 1.5;

bool is_narrow(double width) { return width < kMapRoom + kMapGap + kLeastWords + kScales; }

/// How a map of the tiles lies in its room, true to their shape.
struct MapSize {
  double width, height;  ///< of a tile
};
MapSize map_size(const TileGrid& grid, double width, double height) {
  const double across = static_cast<double>(grid.columns), down = static_cast<double>(grid.rows);
  const double scale = std::min(width / (across * grid.step_x), height / (down * grid.step_y));
  return {scale * grid.step_x, scale * grid.step_y};
}

double room_for_tiles() { return kMapHeight - kTextHeight - 1.5 - kHereRoom; }

/// Room for a tile's number, white round it.
MapSize number_size(const Font& labels, std::size_t count, double height) {
  return {labels.text_width_mm(std::string(std::to_string(count).size(), '0'), height) + 1.2,
          1.65 * height};
}

/// The width of the map: wider where its tiles can be numbered then and the words keep their room.
double map_width(const Font& labels, const TileGrid& grid, double strip_width) {
  const double left = strip_width - kMapGap - kLeastWords - (is_narrow(strip_width) ? 0 : kScales);
  const MapSize least = number_size(labels, grid.count(), kTableHeight);
  const double tile_width = std::max(least.width, least.height * grid.step_x / grid.step_y);
  const double wanted = tile_width * static_cast<double>(grid.columns);
  return wanted <= left ? std::max(wanted, kMapRoom) : kMapRoom;
}

bool has_numbers(const Font& labels, const TileGrid& grid, const MapSize& tile) {
  const MapSize least = number_size(labels, grid.count(), kTableHeight);
  return grid.count() > 1 && tile.width > least.width - 1e-6 && tile.height > least.height - 1e-6;
}

/// The tiles as little boxes, numbered as they are glued where they have room for it.
void draw_tiles(Drawing& onto, FlatPoint corner, const TileGrid& grid, const MapSize& tile,
                double number_height, std::size_t here) {
  const std::vector<std::size_t> order = glue_order(grid);
  for (std::size_t k = 0; k < grid.used.size(); ++k) {
    if (!grid.used[k]) continue;
    const std::size_t column = k % grid.columns, row = k / grid.columns;
    const FlatPoint lo = corner + FlatPoint{static_cast<double>(column) * tile.width,
                                            -static_cast<double>(row + 1) * tile.height};
    const plane::Path box = rectangle(lo, lo + FlatPoint{tile.width, tile.height});
    onto.line(LineKind::Thin, box);
    if (k == here)
      onto.fill(LineKind::Thin, {0.25, 0.25, 0.25}, {box});
    else if (number_height > 0)
      onto.text(lo + FlatPoint{0.5 * tile.width, 0.5 * (tile.height - number_height)},
                std::to_string(order[k]), number_height, draw::Anchor::Middle);
  }
}

/// The page map under the word TOP, this tile filled.
void draw_map(Drawing& onto, const Font& labels, const plane::Box& room, const TileGrid& grid,
              std::size_t here) {
  const double middle = room.middle().x;
  onto.text({middle - 1.5, room.hi.y - kTextHeight}, say("map.top"), kTextHeight,
            draw::Anchor::Middle);
  onto.fill(LineKind::Thin, kBlack, {closed_path(arrow_head({middle + 6.0, room.hi.y}, {0, 1}))});
  const MapSize tile = map_size(grid, room.width(), room_for_tiles());
  const double across = static_cast<double>(grid.columns), down = static_cast<double>(grid.rows);
  const FlatPoint corner{middle - 0.5 * across * tile.width, room.hi.y - kTextHeight - 1.5};
  draw_tiles(onto, corner, grid, tile, has_numbers(labels, grid, tile) ? kTableHeight : 0, here);
  onto.text({middle, corner.y - down * tile.height - kHereRoom}, say("map.here"), kTableHeight,
            draw::Anchor::Middle);
}

/// When and how the tile is glued to the others; nothing where it is alone.
std::string glue_words(const TileGrid& grid, std::size_t column, std::size_t row) {
  if (grid.count() < 2) return "";
  const bool left = column > 0 && grid.has(column - 1, row);
  const bool top = row > 0 && grid.has(column, row - 1);
  return say(left && top                                          ? "glue.left-and-top"
             : left                                               ? "glue.left"
             : top                                                ? "glue.top"
             : glue_order(grid)[row * grid.columns + column] == 1 ? "glue.first"
                                                                  : "glue.under");
}

/// Small enough for the width, but not below what can be read; cut short after that.
void draw_fitted(Drawing& onto, const Font& labels, FlatPoint base, double width, std::string words,
                 double height) {
  const double natural = labels.text_width_mm(words, height);
  if (natural > width) height = std::max(kTableHeight, height * width / natural);
  if (labels.text_width_mm(words, height) > width + 1e-6) {  // as wide, but for the last digit
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

struct FooterLine {
  std::string words;
  double height;
};

/// What the tile says of itself: a line each where that fits, else small and broken into several.
std::vector<FooterLine> lines_of(const Font& labels, double width, const TileOptions& options) {
  std::vector<FooterLine> lines;
  bool broken = false;
  for (const std::string& words :
       {options.subject, options.face_words, options.cut_words, options.title}) {
    if (words.empty()) continue;
    const std::vector<std::string> parts = labels.text_width_mm(words, kTableHeight) > width
                                               ? wrap_text(labels, words, width, kTableHeight)
                                               : std::vector{words};
    broken = broken || parts.size() > 1;
    for (const std::string& part : parts) lines.push_back({part, kTextHeight});
  }
  if (broken)
    for (FooterLine& line : lines) line.height = kTableHeight;
  if (lines.size() > kMostLines) lines.resize(kMostLines);  // the job's title is the last
  return lines;
}

void draw_words(Drawing& onto, const Font& labels, FlatPoint top_left, double width,
                const std::string& name, const TileOptions& options) {
  FlatPoint base = top_left - FlatPoint{0, kName};
  onto.text(base, name, kName);
  // The cloth's length runs along the sheet, whichever way the paper lies.
  const double arrow_from = labels.text_width_mm(name, kName) + 4.0;
  const double half = 0.5 * std::clamp(width - arrow_from, kLeastGrain, kMostGrain);
  const FlatPoint middle = base + FlatPoint{arrow_from + half, 0};
  onto.text(middle + FlatPoint{0, 2.0}, say("tile.grain"), kTableHeight, draw::Anchor::Middle);
  draw_long_grain(onto, middle - FlatPoint{half, 0}, middle + FlatPoint{half, 0});
  const std::vector<FooterLine> lines = lines_of(labels, width, options);
  // More lines than there is room for at the usual distance stand closer.
  const double row =
      std::min(kRow, (kWords - kName - kBelowWords) / static_cast<double>(lines.size()));
  for (const FooterLine& line : lines) {
    base.y -= row;
    draw_fitted(onto, labels, base, width, line.words, line.height);
  }
}

void draw_scales(Drawing& onto, const Font& labels, FlatPoint top_left, const std::string& glue) {
  const plane::Box scales = draw_check_scales(onto, labels, top_left);
  FlatPoint base{top_left.x, scales.lo.y - 1.0 - kTextHeight};
  for (const std::string& words : {print_words(), glue}) {
    if (words.empty()) continue;
    draw_fitted(onto, labels, base, kScales, words, kTextHeight);
    base.y -= kLastRow;
  }
}

}  // namespace

double footer_height(double printable_width_mm, const TileOptions& options) {
  return kGap + (is_narrow(printable_width_mm) ? 2 * kWords : kWords) +
         (options.note.empty() ? 0.0 : kNote) + (options.correction.empty() ? 0.0 : kNote);
}

void draw_footer(Drawing& onto, const Font& labels, const plane::Box& strip, const TileGrid& grid,
                 std::size_t column, std::size_t row, const TileOptions& options) {
  const bool narrow = is_narrow(strip.width());
  const double top = strip.hi.y - kGap;
  const double wide = map_width(labels, grid, strip.width());
  draw_map(onto, labels, {{strip.lo.x, top - kMapHeight}, {strip.lo.x + wide, top}}, grid,
           row * grid.columns + column);
  const double right = narrow ? strip.hi.x : strip.hi.x - kScales;
  const FlatPoint words{strip.lo.x + wide + kMapGap, top};
  const std::string name = say(
      "tile.of", {{"tile", tile_name(grid, column, row)}, {"count", std::to_string(grid.count())}});
  draw_words(onto, labels, words, right - words.x - 3.0, name, options);
  draw_scales(onto, labels, narrow ? FlatPoint{strip.lo.x, top - kWords} : FlatPoint{right, top},
              glue_words(grid, column, row));
  FlatPoint base = strip.lo + FlatPoint{0, 1.5};
  for (const std::string& note : {options.correction, options.note}) {
    if (note.empty()) continue;
    draw_fitted(onto, labels, base, strip.width(), note, kTextHeight);
    base.y += kNote;
  }
}

std::optional<FlatPoint> plan_size(const Font& labels, const TileGrid& grid, double strip_width) {
  const MapSize map = map_size(grid, map_width(labels, grid, strip_width), room_for_tiles());
  if (grid.count() < 2 || has_numbers(labels, grid, map)) return std::nullopt;
  const MapSize tile = number_size(labels, grid.count(), kTextHeight);
  return FlatPoint{std::max(tile.width * static_cast<double>(grid.columns),
                            labels.text_width_mm(say("plan.title"), kTextHeight)),
                   tile.height * static_cast<double>(grid.rows) + kPlanTitle};
}

Drawing plan_of(const Font& labels, const TileGrid& grid) {
  Drawing onto;
  const MapSize tile = number_size(labels, grid.count(), kTextHeight);
  const FlatPoint corner{0, tile.height * static_cast<double>(grid.rows)};
  onto.text(corner + FlatPoint{0, kPlanTitle - 1.2 * kTextHeight}, say("plan.title"), kTextHeight);
  draw_tiles(onto, corner, grid, tile, kTextHeight, grid.used.size());
  return onto;
}

}  // namespace swathe
