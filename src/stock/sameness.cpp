#include "swathe/stock/sameness.hpp"

#include <algorithm>
#include <iterator>
#include <numbers>

namespace swathe {
namespace {

constexpr double kSame = 0.05;  ///< mm

/// Every point of one list lies on a point of the other, and they are as many.
bool same_points(const std::vector<FlatPoint>& a, const std::vector<FlatPoint>& b) {
  if (a.size() != b.size()) return false;
  const auto has = [](const std::vector<FlatPoint>& points, FlatPoint p) {
    return std::ranges::any_of(points, [&](FlatPoint q) { return apart(p, q) < kSame; });
  };
  return std::ranges::all_of(a, [&](FlatPoint p) { return has(b, p); }) &&
         std::ranges::all_of(b, [&](FlatPoint p) { return has(a, p); });
}

std::vector<FlatPoint> placed(const Placement& placement, std::vector<FlatPoint> points) {
  for (FlatPoint& p : points) p = placement(p);
  return points;
}

/// Corners of all windows; as good as the windows themselves, since their radii come with them.
std::vector<FlatPoint> windows_of(const Pattern& pattern) {
  std::vector<FlatPoint> points;
  for (const BracketOnPattern& bracket : pattern.brackets)
    for (const Path& window : bracket.windows)
      for (const Vertex& v : window.vertices) points.push_back(v.at);
  return points;
}

std::vector<FlatPoint> holes_of(const Pattern& pattern) {
  std::vector<FlatPoint> points;
  for (const BracketOnPattern& bracket : pattern.brackets)
    for (const Punch& hole : bracket.holes) points.push_back(hole.at);
  return points;
}

/// Numbers, and the parts of split ones.
std::vector<PlacedNumeral> numerals_of(const std::vector<PlacedNumeral>& numerals, int bumper) {
  std::vector<PlacedNumeral> found;
  std::ranges::copy_if(numerals, std::back_inserter(found),
                       [&](const PlacedNumeral& numeral) { return numeral.bumper == bumper; });
  return found;
}

/// The same digits in the same places, once `onto` has moved the first.
bool same_numerals(const std::vector<PlacedNumeral>& a, const std::vector<PlacedNumeral>& b,
                   const Placement& onto) {
  return a.size() == b.size() && std::ranges::all_of(a, [&](const PlacedNumeral& p) {
           return std::ranges::any_of(b, [&](const PlacedNumeral& q) {
             return p.text == q.text && apart(onto(FlatPoint{p.centre_s, p.centre_u}),
                                              {q.centre_s, q.centre_u}) < kSame;
           });
         });
}

/// Lays a pattern over another's box.
Placement placement_of(Sameness::How how, const Pattern& pattern, const Box& onto) {
  Placement placement;
  placement.mirrored = how == Sameness::How::Mirrored;
  placement.turn = how == Sameness::How::Turned ? std::numbers::pi : 0.0;
  const Box box = bounds(placement(pattern.outline));
  placement.move = onto.lo - box.lo;
  return placement;
}

std::optional<Sameness> compare(const std::vector<Pattern>& patterns,
                                const std::vector<PlacedNumeral>& numerals, int earlier, int later,
                                Sameness::How how) {
  const Pattern& a = patterns[static_cast<std::size_t>(earlier)];
  const Pattern& b = patterns[static_cast<std::size_t>(later)];
  const Placement onto = placement_of(how, a, bounds(b.outline));
  if (!same_points(placed(onto, a.outline), b.outline)) return std::nullopt;
  Sameness sameness{earlier, how, {}};
  const auto differ = [&](const char* what, const std::vector<FlatPoint>& of_a,
                          const std::vector<FlatPoint>& of_b) {
    if (!same_points(placed(onto, of_a), of_b)) sameness.but_for.push_back(what);
  };
  differ("windows", windows_of(a), windows_of(b));
  differ("punch holes", holes_of(a), holes_of(b));
  // A numeral turned or mirrored reads wrong, wherever it lies.
  const auto of_a = numerals_of(numerals, earlier), of_b = numerals_of(numerals, later);
  const bool any = !of_a.empty() || !of_b.empty();
  if (any && (how != Sameness::How::Same || !same_numerals(of_a, of_b, onto)))
    sameness.but_for.push_back("numerals");
  return sameness;
}

}  // namespace

std::vector<std::optional<Sameness>> same_patterns(const std::vector<Pattern>& patterns,
                                                   const std::vector<PlacedNumeral>& numerals) {
  std::vector<std::optional<Sameness>> found(patterns.size());
  for (int later = 0; later < static_cast<int>(patterns.size()); ++later) {
    std::optional<Sameness>& best = found[static_cast<std::size_t>(later)];
    for (int earlier = 0; earlier < later; ++earlier)
      for (const Sameness::How how :
           {Sameness::How::Same, Sameness::How::Turned, Sameness::How::Mirrored}) {
        const auto sameness = compare(patterns, numerals, earlier, later, how);
        if (sameness && (!best || sameness->but_for.size() < best->but_for.size())) best = sameness;
      }
  }
  return found;
}

}  // namespace swathe
