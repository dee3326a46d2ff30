#include <algorithm>
#include <cassert>
#include <cmath>

#include "swathe/sight.hpp"

namespace swathe {
namespace {

constexpr double kEdgeStep = 0.15;  // radians of tilt a chord of a digit's upright edge spans

/// A place on the cloth, known to be on it.
SpacePoint on_cloth(const std::optional<SpacePoint>& place) {
  assert(place && "a digit lies on the cloth, clear of darts");
  return *place;
}

DigitInSpace in_space(const Wrap& wrap, const SightDigit& box) {
  DigitInSpace digit;
  digit.digit = box.digit;
  digit.stroke = box.stroke;
  digit.height = box.to_u - box.from_u;
  digit.width = box.to_s - box.from_s;
  const ClothPoint middle{0.5 * (box.from_s + box.to_s), 0.5 * (box.from_u + box.to_u)};
  digit.middle = on_cloth(wrap.at(middle));
  digit.normal = on_cloth(wrap.normal_at(middle));
  const std::array<ClothPoint, 4> corners = {{{box.from_s, box.from_u},
                                              {box.to_s, box.from_u},
                                              {box.to_s, box.to_u},
                                              {box.from_s, box.to_u}}};
  for (std::size_t k = 0; k < corners.size(); ++k) {
    digit.corners[k] = on_cloth(wrap.at(corners[k]));
    digit.normals[k] = on_cloth(wrap.normal_at(corners[k]));
  }
  digit.seen_height = digit.corners[3].z - digit.corners[0].z;
  for (const double u : wrap.section().heights(box.from_u, box.to_u, kEdgeStep)) {
    digit.left.push_back(on_cloth(wrap.at({box.from_s, u})));
    digit.right.push_back(on_cloth(wrap.at({box.to_s, u})));
  }
  return digit;
}

}  // namespace

std::vector<SightNumber> numbers_to_see(const Numerals& numerals) {
  std::vector<SightNumber> numbers;
  int showing = -1;
  for (const PlacedNumeral& placed : numerals.placed) {
    if (placed.showing != showing) {
      showing = placed.showing;
      numbers.push_back({"", placed.side, 0, {}});
    }
    SightNumber& number = numbers.back();
    number.text += placed.text;
    number.space = std::max({number.space, placed.largest_space, placed.space_across});
    for (const PlacedDigit& on : placed.digits) {
      const Digit& digit = numerals.shape(on.digit);
      const plane::Box ink = bounds(digit.outline);
      number.digits.push_back({on.digit, placed.bumper, on.origin.x + ink.lo.x,
                               on.origin.x + ink.hi.x, on.origin.y + ink.lo.y,
                               on.origin.y + ink.hi.y, digit.stroke.median()});
    }
  }
  return numbers;
}

sight::Scene make_scene(const std::vector<Wrap>& wraps, const std::vector<SightNumber>& numbers,
                        const std::vector<BlindKeys>& blind) {
  assert(!wraps.empty());
  sight::Scene scene;
  scene.center = wraps.front().frame().center();
  for (const SightNumber& number : numbers) {
    NumberInSpace& standing = scene.numbers.emplace_back();
    standing.text = number.text;
    standing.side = number.side;
    standing.space = number.space;
    standing.boxes = number.digits;
    for (const SightDigit& box : number.digits)
      standing.digits.push_back(in_space(wraps[static_cast<std::size_t>(box.bumper)], box));
    if (standing.digits.empty()) continue;
    const SpacePoint& out = standing.digits[standing.digits.size() / 2].normal;
    standing.bearing = bearing_of({out.x, out.y});
  }
  for (const Wrap& wrap : wraps)
    for (sight::Solid& solid : bumper_solids(wrap)) scene.solids.push_back(std::move(solid));
  for (std::size_t k = 0; k < blind.size(); ++k)
    scene.solids.push_back(blind_solid(blind[k], static_cast<int>(k) + 1));
  return scene;
}

}  // namespace swathe
