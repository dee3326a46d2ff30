#include <algorithm>
#include <cmath>

#include "base/maths.hpp"
#include "sight/changes.hpp"
#include "sight/shadow.hpp"
#include "swathe/sight.hpp"

namespace swathe {
namespace {

/// A line of sight to the middle of a digit: how long, and how much of that is square to it.
struct LineOfSight {
  double distance = 0, square = 0;

  double cosine() const { return std::max(0.0, square) / distance; }
};

double angle_of(double size, double distance) { return 2.0 * maths::atan2(0.5 * size, distance); }

double effective(double seen_height, const LineOfSight& sight) {
  return angle_of(seen_height, sight.distance) * std::sqrt(sight.cosine());
}

/// How much that angle is more than `least`: right in its sign, and where that is plain without an
/// arc tangent, which lies from t - t^3/3 to t.
double over_least(double seen_height, const LineOfSight& sight, double least) {
  const double t = 0.5 * seen_height / sight.distance, share = 2.0 * std::sqrt(sight.cosine());
  if (const double at_most = share * t; at_most < least) return at_most - least;
  if (const double at_least = share * (t - t * t * t / 3.0); at_least > least)
    return at_least - least;
  return effective(seen_height, sight) - least;
}

LineOfSight sight_of(const DigitInSpace& digit, FlatPoint plan, double eye) {
  const double x = plan.x - digit.middle.x, y = plan.y - digit.middle.y, z = eye - digit.middle.z;
  return {std::sqrt(x * x + y * y + z * z),
          x * digit.normal.x + y * digit.normal.y + z * digit.normal.z};
}

}  // namespace

bool NumberSeen::whole() const {
  return std::ranges::all_of(digits, [](const DigitSeen& d) { return d.legible; });
}

bool NumberSeen::misleading() const {
  return !text.empty() &&
         !std::ranges::all_of(digits, [](const DigitSeen& d) { return d.in_view(); });
}

Sightlines::Sightlines(const sight::Scene& scene, Length eye_height, sight::Criterion criterion)
    : scene_(&scene), eye_(eye_height.mm()), criterion_(criterion) {
  for (const NumberInSpace& number : scene.numbers) {
    auto& lines = lines_.emplace_back();
    for (const DigitInSpace& digit : number.digits) lines.push_back(lines_of(digit));
  }
}

Sightlines::Lines Sightlines::lines_of(const DigitInSpace& digit) const {
  Lines lines;
  for (std::size_t k = 0; k < digit.corners.size(); ++k) {
    const SpacePoint &p = digit.corners[k], &n = digit.normals[k];
    lines.faces[k] = {{n.x, n.y}, n.x * p.x + n.y * p.y - n.z * (eye_ - p.z)};
  }
  for (std::size_t k = 0; k < scene_->solids.size(); ++k)
    for (plane::Polygon& from : shadows_at(scene_->solids[k], digit, eye_))
      lines.shadows.push_back({static_cast<int>(k), std::move(from)});
  return lines;
}

DigitSeen Sightlines::digit_from(std::size_t number, std::size_t digit, FlatPoint plan) const {
  const DigitInSpace& on = digit_at(number, digit);
  const Lines& lines = lines_[number][digit];
  DigitSeen seen;
  for (const HalfPlane& face : lines.faces)
    seen.turned_away = seen.turned_away || dot(face.way, plan) < face.least;
  for (const Shadow& shadow : lines.shadows)
    if (seen.hidden_by < 0 && inside(shadow.from, plan)) seen.hidden_by = shadow.solid;
  const LineOfSight sight = sight_of(on, plan, eye_);
  seen.obliquity =
      Angle::from_radians(maths::acos(std::clamp(sight.square / sight.distance, -1.0, 1.0)));
  seen.height = Angle::from_radians(angle_of(on.seen_height, sight.distance));
  seen.stroke = Angle::from_radians(angle_of(on.stroke, sight.distance));
  seen.effective = Angle::from_radians(effective(on.seen_height, sight));
  seen.legible =
      seen.in_view() && seen.obliquity <= criterion_.widest && seen.effective >= criterion_.least;
  return seen;
}

std::vector<NumberSeen> Sightlines::seen_from(FlatPoint plan) const {
  std::vector<NumberSeen> numbers;
  for (std::size_t n = 0; n < scene_->numbers.size(); ++n) {
    NumberSeen& seen = numbers.emplace_back();
    const std::size_t count = scene_->numbers[n].digits.size();
    seen.digits.reserve(count);
    for (std::size_t d = 0; d < count; ++d) {
      seen.digits.push_back(digit_from(n, d, plan));
      if (seen.digits.back().legible) seen.text += scene_->numbers[n].digits[d].digit;
    }
  }
  return numbers;
}

/// From where the criterion's angle and obliquity are met, whatever stands between.
Bearings Sightlines::large_enough(const DigitInSpace& digit, double distance) const {
  const FlatPoint from = scene_->center - FlatPoint{digit.middle.x, digit.middle.y};
  const FlatPoint normal{digit.normal.x, digit.normal.y};
  const double rise = eye_ - digit.middle.z;
  // On the circle both the square of the sight's length and its square part are a constant and one
  // cosine.
  const Swing length2{dot(from, from) + distance * distance + rise * rise,
                      2.0 * distance * norm(from), bearing_of(from)};
  const Swing square{dot(normal, from) + digit.normal.z * rise, distance * norm(normal),
                     bearing_of(normal)};
  const double least = criterion_.least.radians(), cosine = maths::cos(criterion_.widest.radians());

  const auto square_enough = [&](const LineOfSight& s) { return s.square / s.distance - cosine; };
  const auto value_at = [&](double bearing) {
    const LineOfSight s = sight_of(digit, scene_->center + distance * towards(bearing), eye_);
    return std::min(square_enough(s), effective(digit.seen_height, s) - least);
  };
  const auto high_enough = [&](const LineOfSight& s) {
    return over_least(digit.seen_height, s, least);
  };
  struct Cosines {
    double length2, square;
  };
  const auto look = [&](double bearing) {
    return Cosines{length2.cosine_at(bearing), square.cosine_at(bearing)};
  };
  const auto may_pass = [&](double a, double b, const Cosines& at_a, const Cosines& at_b) {
    const Range l2 = length2.between(a, b, at_a.length2, at_b.length2);
    const Range s = square.between(a, b, at_a.square, at_b.square);
    const double shortest = std::sqrt(std::max(l2.lo, 1e-12)), longest = std::sqrt(l2.hi);
    // Both grow with the square part, and where that is positive fall with the length.
    const LineOfSight best{s.hi < 0.0 ? longest : shortest, s.hi};
    if (square_enough(best) < 0.0 || high_enough(best) < 0.0) return false;
    const LineOfSight worst{s.lo < 0.0 ? shortest : longest, s.lo};
    return square_enough(worst) <= 0.0 || high_enough(worst) <= 0.0;
  };
  auto zeros = zeros_round(look, may_pass, value_at);
  return Bearings::between(std::move(zeros), [&](double b) { return value_at(b) >= 0.0; });
}

Sightlines::Around Sightlines::around(std::size_t number, std::size_t digit,
                                      Length distance) const {
  const Lines& lines = lines_[number][digit];
  const double radius = distance.mm();
  Bearings in_view = Bearings::all();
  for (const HalfPlane& face : lines.faces) {
    const double swing = radius * norm(face.way);
    const double needs = face.least - dot(face.way, scene_->center);
    if (needs <= -swing) continue;
    if (needs >= swing) return {Bearings::none(), Bearings::none()};
    const double middle = bearing_of(face.way), half = maths::acos(needs / swing);
    in_view = in_view & Bearings::arc(middle - half, middle + half);
  }
  for (const Shadow& shadow : lines.shadows)
    if (!in_view.empty()) in_view = in_view & !inside(shadow.from, scene_->center, radius);
  if (in_view.empty()) return {Bearings::none(), Bearings::none()};
  return {in_view, in_view & large_enough(digit_at(number, digit), radius)};
}

}  // namespace swathe
