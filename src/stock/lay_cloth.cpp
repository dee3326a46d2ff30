#include <cmath>

#include "stock/strip.hpp"
#include "swathe/stock/stock.hpp"

namespace swathe {
namespace {

constexpr double kRounding = 1e-6;  // mm

Box box_of(const Pattern& pattern) {
  Box box;
  for (const FlatPoint p : pattern.outline) box.cover(p);
  return box;
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
  for (const Pattern& pattern : patterns) {
    const Box box = box_of(pattern);
    if (box.empty()) continue;
    if (box.height() > lay.roll_width + kRounding) {
      lay.does_not_fit.push_back(pattern.bumper);
      continue;
    }
    boxes.push_back({box.width(), box.height()});
    lay.placements.push_back({pattern.bumper, 0, 0, false});
    area += pattern.cloth_area;
  }
  const StripLay laid = lay_on_strip(boxes, lay.roll_width);
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
