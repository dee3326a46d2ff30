#include <cmath>
#include <limits>

#include "stock/strip.hpp"
#include "swathe/pattern/joins.hpp"
#include "swathe/stock/stock.hpp"

namespace swathe {
namespace {

constexpr double kRounding = 1e-6;  // mm

/// What the seams' allowances add to a cover's cloth.
double allowances(const Pattern& pattern) {
  double area = 0;
  for (const ClothJoin& join : pattern.joins)
    area += 2 * join.allowance * (join.to.y - join.from.y);
  return area;
}

double rounded_up(double length, double step) {
  return step > 0 ? std::ceil((length - kRounding) / step) * step : length;
}

}  // namespace

ClothLay lay_cloth(const std::vector<Pattern>& patterns, const ClothKeys& cloth,
                   const std::string& colour) {
  ClothLay lay;
  lay.colour = colour;
  lay.roll_width = cloth.roll_width.mm();
  std::vector<StripBox> boxes;
  double area = 0;
  const double longest =
      cloth.longest_piece ? cloth.longest_piece->mm() : std::numeric_limits<double>::infinity();
  for (const Pattern& pattern : patterns) {
    bool all = true;
    for (const ClothPart& part : cloth_parts(pattern)) {
      const Box& box = part.box;
      if (box.empty()) continue;
      if (box.height() > lay.roll_width + kRounding || box.width() > longest + kRounding) {
        lay.does_not_fit.push_back(part.name);
        all = false;
        continue;
      }
      boxes.push_back({box.width(), box.height()});
      lay.placements.push_back({pattern.bumper, part.name, 0, 0, false});
    }
    if (all) area += pattern.cloth_area + allowances(pattern);
  }
  const StripLay laid = lay_on_strip(boxes, lay.roll_width, longest);
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    lay.placements[i].x = laid.at[i].x;
    lay.placements[i].y = laid.at[i].y;
  }
  lay.length = laid.length;
  lay.length_to_buy = rounded_up(laid.length, cloth.buy_step.mm());
  if (lay.length_to_buy > 0) lay.used_fraction = area / (lay.length_to_buy * lay.roll_width);
  return lay;
}

}  // namespace swathe
