#include <algorithm>
#include <cmath>
#include <numbers>

#include "rules/practice.hpp"
#include "swathe/stock.hpp"

namespace swathe {

Screws screws_for(const Job& job, int joints) {
  Screws screws;
  if (joints == 0) return screws;
  const bool inch = job.units == Units::Inches;
  const BoardKeys& boards = job.boards;
  // At equal spaces, the outer ones off the edges. Never one alone: a board would turn round it.
  const double between = boards.height.mm() - 2 * practice::kScrewFromEdge.mm();
  screws.a_joint =
      1 + std::max(1, static_cast<int>(std::ceil(between / practice::kScrewSpacing.mm() - 1e-9)));
  screws.count = joints * screws.a_joint * padded_sets(job);
  const practice::ScrewSize& size = *std::ranges::find_if(
      practice::kScrewSizes,
      [&](const practice::ScrewSize& one) { return boards.thickness >= one.least_board; });
  screws.number = size.number;
  screws.across = size.across;
  screws.pilot = inch ? size.pilot_inch : size.pilot_metric;
  const Length wanted = boards.thickness + practice::kScrewHold;
  const Length step = inch ? inches(0.25) : mm(5);  // as they are sold
  screws.length = (inch ? std::ceil(wanted / step - 1e-9) : std::round(wanted / step)) * step;
  return screws;
}

double screw_g(const Screws& screws) {
  constexpr double kSteel = 7.85e-3;  // g/mm3; EN 1991-1-1, table A.4
  constexpr double kCore = 0.8;       // of the thread: what its wire comes to. No source
  const double wire = kCore * screws.across.mm();
  return std::numbers::pi / 4 * wire * wire * screws.length.mm() * kSteel;
}

}  // namespace swathe
