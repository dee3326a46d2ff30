#include <cmath>
#include <numbers>

#include "pattern/joins.hpp"
#include "stock/strip.hpp"
#include "swathe/stock.hpp"

namespace swathe {
namespace {

constexpr double kRounding = 1e-6;  // mm
/// So much larger than its piece the steps round it may be: a piece as long as its cloth still
/// fits.
constexpr Micron kSteps = 2;

/// A cover's cloth, its seams' allowances in.
double cloth_of(const Pattern& pattern, const std::vector<ClothJoin>& joins) {
  double area = pattern.cloth_area;
  for (const ClothJoin& join : joins) area += 2 * join.allowance * (join.to.y - join.from.y);
  return area;
}

double rounded_up(double length, double step) {
  return step > 0 ? std::ceil((length - kRounding) / step) * step : length;
}

/// How a piece is turned on the roll.
struct Turn {
  bool across = false, turned = false;

  plane::Polygon operator()(const plane::Polygon& outline) const {
    const double quarters = (across ? 1.0 : 0.0) + (turned ? 2.0 : 0.0);
    return plane::Placement{false, quarters * std::numbers::pi / 2, {}}(outline);
  }
};

/// Turns that may lie side by side, a list each. On cloth that runs one way all covers lie alike.
std::vector<std::vector<Turn>> allowed_turns(const ClothKeys& cloth) {
  const Turn along{false, false}, across{true, false};
  if (cloth.one_way && cloth.may_lie_across) return {{along}, {across}};
  if (cloth.one_way) return {{along}};
  std::vector<Turn> turns = {along, {false, true}};
  if (cloth.may_lie_across) turns.insert(turns.end(), {across, {true, true}});
  return {turns};
}

class ClothLayer {
 public:
  ClothLayer(const std::vector<Pattern>& patterns, const std::vector<std::vector<ClothJoin>>& joins,
             const ClothKeys& cloth)
      : patterns_(patterns), joins_(joins), cloth_(cloth) {
    strip_.width = microns(cloth.roll_width.mm()) + kSteps;
    if (cloth.longest_piece) strip_.length = microns(cloth.longest_piece->mm()) + kSteps;
  }

  ClothLay lay(const std::vector<Turn>& turns) const {
    ClothLay lay;
    lay.roll_width = cloth_.roll_width.mm();
    std::vector<StripPiece> pieces;
    std::vector<std::vector<Turn>> turns_of;
    double area = 0;
    for (std::size_t k = 0; k < patterns_.size(); ++k) {
      const Pattern& pattern = patterns_[k];
      const std::vector<ClothJoin> joins = joins_.empty() ? std::vector<ClothJoin>() : joins_[k];
      bool all = true;
      for (const ClothPart& part : cloth_parts(pattern, joins)) {
        if (part.box.empty()) continue;
        StripPiece ways;
        std::vector<Turn> fitting;
        for (const Turn& turn : turns) {
          SteppedShape shape = stepped(turn(part.outline));
          if (shape.across > strip_.width || shape.along > strip_.length) continue;
          ways.ways.push_back(std::move(shape));
          fitting.push_back(turn);
        }
        if (fitting.empty()) {
          lay.does_not_fit.push_back(part.name);
          all = false;
          continue;
        }
        pieces.push_back(std::move(ways));
        turns_of.push_back(std::move(fitting));
        lay.placements.push_back({pattern.bumper, part.name, 0, 0, false, false, part.outline});
      }
      if (all) area += cloth_of(pattern, joins);
    }
    const StripLay laid = lay_on_strip(pieces, strip_);
    for (std::size_t k = 0; k < pieces.size(); ++k)
      put(lay.placements[k], turns_of[k][laid.at[k].way], laid.at[k]);
    lay.length = mm_of(laid.length);
    if (lay.length > 0) {
      lay.shop_cut = cloth_.shop_cut.mm();
      lay.length_to_buy = rounded_up(lay.length + lay.shop_cut, cloth_.buy_step.mm());
    }
    if (lay.length_to_buy > 0) lay.used_fraction = area / (lay.length_to_buy * lay.roll_width);
    return lay;
  }

 private:
  static double mm_of(Micron length) {
    return static_cast<double>(length) / static_cast<double>(kMicronsPerMm);
  }

  void put(ClothPlacement& placement, const Turn& turn, const StripPlace& place) const {
    placement.across = turn.across;
    placement.turned = turn.turned;
    // What was added to each piece of cloth for the steps is not there.
    const Micron before = cloth_.longest_piece ? place.x / strip_.length * kSteps : 0;
    placement.x = mm_of(place.x - before);
    placement.y = mm_of(place.y);
    placement.outline = turn(placement.outline);
    const FlatPoint corner = bounds(placement.outline).lo;
    for (FlatPoint& p : placement.outline) p = p - corner + FlatPoint{placement.x, placement.y};
  }

  const std::vector<Pattern>& patterns_;
  const std::vector<std::vector<ClothJoin>>& joins_;
  const ClothKeys& cloth_;
  Strip strip_;
};

}  // namespace

ClothLay lay_cloth(const std::vector<Pattern>& patterns,
                   const std::vector<std::vector<ClothJoin>>& joins, const ClothKeys& cloth,
                   const std::string& color) {
  const ClothLayer layer(patterns, joins, cloth);
  ClothLay best;
  bool first = true;
  for (const auto& turns : allowed_turns(cloth)) {
    ClothLay lay = layer.lay(turns);
    const auto judged = [](const ClothLay& one) {
      return std::pair(one.does_not_fit.size(), one.length);
    };
    if (first || judged(lay) < judged(best)) best = std::move(lay);
    first = false;
  }
  best.color = color;
  return best;
}

}  // namespace swathe
