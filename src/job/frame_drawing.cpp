#include "job/frame_drawing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "base/maths.hpp"
#include "base/print.hpp"

namespace swathe {
namespace {

constexpr double kColumns = 36,
                 kRows = 13;           // at most, of the frame itself, less one
constexpr double kRowPerColumn = 2.0;  // a character is about twice as high as it is wide
constexpr int kBeside = 2;             // columns between a side and its words

/// Lines of characters; anywhere may be written, and it grows.
class Canvas {
 public:
  void put(int column, int row, char c) {
    if (row >= static_cast<int>(lines_.size())) lines_.resize(static_cast<std::size_t>(row) + 1);
    std::string& line = lines_[static_cast<std::size_t>(row)];
    const auto at = static_cast<std::size_t>(column);
    if (at >= line.size()) line.resize(at + 1, ' ');
    line[at] = c;
  }
  char at(int column, int row) const {
    if (row < 0 || row >= static_cast<int>(lines_.size())) return ' ';
    const std::string& line = lines_[static_cast<std::size_t>(row)];
    return static_cast<std::size_t>(column) < line.size() ? line[static_cast<std::size_t>(column)]
                                                          : ' ';
  }
  void write(int column, int row, const std::string& words) {
    for (std::size_t k = 0; k < words.size(); ++k) put(column + static_cast<int>(k), row, words[k]);
  }
  std::vector<std::string> lines() && {
    for (std::string& line : lines_) line.erase(line.find_last_not_of(' ') + 1);
    return std::move(lines_);
  }

 private:
  std::vector<std::string> lines_;
};

/// A corner's character.
struct Cell {
  int column = 0, row = 0;
};

/// Where on the canvas the corners are: as large as there is room, each square
/// to its true shape.
std::vector<Cell> cells_of(const std::vector<FlatPoint>& corners, int left) {
  double least_x = corners[0].x, most_x = least_x, least_y = corners[0].y, most_y = least_y;
  for (const FlatPoint& p : corners) {
    least_x = std::min(least_x, p.x);
    most_x = std::max(most_x, p.x);
    least_y = std::min(least_y, p.y);
    most_y = std::max(most_y, p.y);
  }
  const double scale =  // columns a mm
      std::min(kColumns / (most_x - least_x), kRowPerColumn * kRows / (most_y - least_y));
  std::vector<Cell> cells;
  for (const FlatPoint& p : corners)
    cells.push_back({left + static_cast<int>(std::lround(scale * (p.x - least_x))),
                     1 + static_cast<int>(std::lround(scale * (most_y - p.y) / kRowPerColumn))});
  return cells;
}

char stroke(const Cell& a, const Cell& b) {
  const int across = b.column - a.column, down = b.row - a.row;
  if (down == 0) return '-';
  if (std::abs(across) * 4 < std::abs(down)) return '|';
  if (std::abs(down) * 6 < std::abs(across)) return '-';
  return (across > 0) == (down > 0) ? '\\' : '/';
}

void draw_side(Canvas& canvas, const Cell& a, const Cell& b) {
  const int steps = std::max(std::abs(b.column - a.column), std::abs(b.row - a.row));
  const bool steep = std::abs(b.row - a.row) > 0 && stroke(a, b) != '-';
  // One character a line where the side goes up or down, so that it is no
  // stair.
  const int marks = steep ? std::abs(b.row - a.row) : steps;
  for (int k = 1; k < marks; ++k) {
    const double share = static_cast<double>(k) / marks;
    canvas.put(a.column + static_cast<int>(std::lround(share * (b.column - a.column))),
               a.row + static_cast<int>(std::lround(share * (b.row - a.row))), stroke(a, b));
  }
}

/// Where a side crosses a line; its middle where it lies along it.
int column_at(const Cell& a, const Cell& b, int row) {
  if (a.row == b.row) return (a.column + b.column) / 2;
  const double share = static_cast<double>(row - a.row) / (b.row - a.row);
  return a.column + static_cast<int>(std::lround(share * (b.column - a.column)));
}

/// Whether a side's words go left of it (-1), right of it (1), or above or
/// below it (0).
int beside(const Cell& a, const Cell& b) {
  if (std::abs(b.column - a.column) > 4 * std::abs(b.row - a.row)) return 0;
  return b.row > a.row ? -1 : 1;  // counter-clockwise: what runs down is on the left
}

}  // namespace

std::vector<std::string> frame_drawing(const FrameKeys& frame, Units units) {
  const std::size_t count = frame.corners.size();
  std::vector<std::string> words;
  int left = 0;
  for (std::size_t k = 0; k < count; ++k) {
    const FlatPoint along = frame.corners[(k + 1) % count] - frame.corners[k];
    words.push_back(fmt::format("{} {}", clip(frame.sides[k], 24),
                                dimension_with_unit(mm(maths::hypot(along.x, along.y)), units)));
    if (along.y < 0) left = std::max(left, static_cast<int>(words.back().size()));
  }
  const std::vector<Cell> cells = cells_of(frame.corners, left + kBeside);
  Canvas canvas;
  for (std::size_t k = 0; k < count; ++k) draw_side(canvas, cells[k], cells[(k + 1) % count]);
  for (const Cell& cell : cells) canvas.put(cell.column, cell.row, '+');
  for (std::size_t k = 0; k < count; ++k) {
    const Cell &a = cells[k], &b = cells[(k + 1) % count];
    const int row = (a.row + b.row) / 2, column = column_at(a, b, row);
    const int width = static_cast<int>(words[k].size());
    const int where = beside(a, b);
    if (where < 0)
      canvas.write(column - kBeside + 1 - width, row, words[k]);
    else if (where > 0)
      canvas.write(column + kBeside, row, words[k]);
    else
      canvas.write(std::max(0, column - width / 2), b.column < a.column ? row - 1 : row + 1,
                   words[k]);
  }
  return std::move(canvas).lines();
}

}  // namespace swathe
