#include "make/count_sheets.hpp"

#include <fmt/format.h>

#include "job/limits.hpp"
#include "swathe/base.hpp"

namespace swathe {

Refusals too_many_sheets(const Job& job, const std::vector<Pattern>& patterns) {
  const PaperKeys& paper = job.paper;
  const Length around = 2 * paper.margin + paper.overlap;
  const double sheet = (paper.width - around).mm() * (paper.height - around).mm();
  double covers = 0;
  for (const Pattern& pattern : patterns) {
    const plane::Box box = bounds(pattern.outline);
    covers += box.width() * box.height();
  }
  const double sheets = covers / sheet;
  if (sheets <= kMostTiles) return {};
  return {{Why::TooLarge,
           fmt::format("the covers would take about {} sheets of this paper, expected at most {}: "
                       "take larger paper, or a roll",
                       plain_number(sheets, 0), kMostTiles),
           job.places.of("paper.sheet")}};
}

}  // namespace swathe
