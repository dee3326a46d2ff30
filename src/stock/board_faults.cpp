#include "stock/board_faults.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "base/workshop.hpp"

namespace swathe {
namespace {

double step_of(Units units) { return units == Units::Inches ? inches(1.0 / 16).mm() : 1.0; }

/// A place on the board's side where its bumper can be split, into parts as long as one another and
/// no longer than a sheet; the first of them, where there are several.
std::string place_to_split(const Frame& frame, const bumper::Piece& board, double sheet,
                           Units units) {
  const double parts = std::max(2.0, std::ceil(board.length_mm / sheet - 1e-9));
  const double step = step_of(units);
  const int side = *frame.side(board.side);
  const std::string& before = frame.sides()[static_cast<std::size_t>(frame.previous(side))].name;
  const Length at = frame.from_corner(side, board.from_x + board.length_mm / parts, before);
  return fmt::format("[\"{}\", \"{}\", \"{}\"]", board.side,
                     exact(mm(std::round(at.mm() / step) * step), units), before);
}

const bumper::Piece* longest_that_fails(const Stock& stock,
                                        const std::vector<bumper::Piece>& boards) {
  const bumper::Piece* worst = nullptr;
  for (const bumper::Piece& board : boards) {
    const bool fails =
        std::ranges::count(stock.boards.too_long, piece_name(board), &StockCut::label) > 0;
    if (fails && (!worst || board.length_mm > worst->length_mm)) worst = &board;
  }
  return worst;
}

}  // namespace

Refusals board_faults(const Job& job, const Frame& frame, const Stock& stock,
                      const std::vector<bumper::Piece>& boards) {
  const bumper::Piece* const worst = longest_that_fails(stock, boards);
  if (!worst) return {};
  const auto words = [&](Length length) { return exact(length, job.units); };
  std::array<Length, 2> sheet{job.boards.stock[0], job.boards.stock[1]};
  const std::string is = words(sheet[0]) + " by " + words(sheet[1]);
  const std::size_t longer = sheet[1] < sheet[0] ? 0 : 1;
  const Length longest = sheet[longer];
  const bool too_high = job.boards.height > sheet[1 - longer];
  sheet[longer] = std::max(longest, on_tape(mm(worst->length_mm), job.units, Rounding::Up));
  if (too_high) sheet[1 - longer] = on_tape(job.boards.height, job.units, Rounding::Up);
  const std::string least = fmt::format("[\"{}\", \"{}\"]", words(sheet[0]), words(sheet[1]));
  const std::string split =
      too_high ? ""
               : fmt::format(
                     ", or two bumpers instead of \"{}\": one that ends at {}, and one "
                     "that begins there",
                     worst->bumper, place_to_split(frame, *worst, longest.mm(), job.units));
  return {{Why::DoesNotFit,
           fmt::format("sheets of {} give no board for {}, which is {} long and {} high, expected "
                       "at least {}{}",
                       is, piece_name(*worst), measured(mm(worst->length_mm), job.units),
                       words(job.boards.height), least, split),
           job.places.of("boards.stock"),
           {{"boards.stock", least}}}};
}

}  // namespace swathe
