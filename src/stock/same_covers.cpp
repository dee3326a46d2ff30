#include "stock/same_covers.hpp"

#include <algorithm>
#include <iterator>
#include <numbers>

#include "swathe/stock.hpp"

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

std::vector<FlatPoint> placed(const plane::Placement& placement, std::vector<FlatPoint> points) {
  for (FlatPoint& p : points) p = placement(p);
  return points;
}

/// Corners of all windows; as good as the windows themselves, since their radii come with them.
std::vector<FlatPoint> windows_of(const Pattern& pattern) {
  std::vector<FlatPoint> points;
  for (const BracketOnPattern& bracket : pattern.brackets)
    for (const plane::Path& window : bracket.windows)
      for (const plane::Vertex& v : window.vertices) points.push_back(v.at);
  return points;
}

std::vector<FlatPoint> holes_of(const Pattern& pattern) {
  std::vector<FlatPoint> points;
  for (const BracketOnPattern& bracket : pattern.brackets)
    for (const Punch& hole : bracket.holes) points.push_back(hole.at);
  return points;
}

/// What brackets take on cloth that passes beneath them.
std::vector<FlatPoint> footprints_of(const Pattern& pattern) {
  std::vector<FlatPoint> points;
  for (const BracketOnPattern& bracket : pattern.brackets)
    if (bracket.cloth == BracketCloth::Under)
      for (const plane::Path& footprint : bracket.footprints)
        for (const plane::Vertex& v : footprint.vertices) points.push_back(v.at);
  return points;
}

/// Each fold line's ends, and the ways its arrows point.
std::vector<FlatPoint> pleats_of(const Pattern& pattern) {
  constexpr double kArrow = 10.0;
  std::vector<FlatPoint> points;
  for (const PleatLine& pleat : pattern.pleats)
    for (const FlatPoint end : {pleat.path.vertices.front().at, pleat.path.vertices.back().at})
      points.insert(points.end(), {end, end + kArrow * pleat.under});
  for (const HemFold& hem : pattern.hems)
    for (const FlatPoint end : {hem.from, hem.to})
      points.insert(points.end(), {end, end + kArrow * hem.under()});
  return points;
}

using Joins = std::vector<std::vector<ClothJoin>>;  ///< of each pattern, or none at all

std::vector<FlatPoint> seams_of(const Joins& joins, int bumper) {
  std::vector<FlatPoint> points;
  if (joins.empty()) return points;
  for (const ClothJoin& join : joins[static_cast<std::size_t>(bumper)])
    points.insert(points.end(), {join.from, join.to});
  return points;
}

std::vector<FlatPoint> marks_of(const Pattern& pattern) {
  std::vector<FlatPoint> points;
  for (const MatchMark& mark : pattern.marks) points.push_back(mark.at);
  return points;
}

/// The sides a cover lies on, from the start.
std::vector<std::string> sides_of(const Pattern& pattern) {
  std::vector<std::string> sides;
  for (const MatchMark& mark : pattern.marks)
    if (sides.empty() || sides.back() != mark.side) sides.push_back(mark.side);
  return sides;
}

std::vector<std::pair<std::string, std::string>> matched_sides(const Pattern& a, const Pattern& b,
                                                               Sameness::How how) {
  std::vector<std::string> of_a = sides_of(a), of_b = sides_of(b);
  if (how != Sameness::How::Same) std::ranges::reverse(of_b);
  std::vector<std::pair<std::string, std::string>> sides;
  for (std::size_t k = 0; k < std::min(of_a.size(), of_b.size()); ++k)
    sides.emplace_back(of_a[k], of_b[k]);
  return sides;
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
                   const plane::Placement& onto) {
  return a.size() == b.size() && std::ranges::all_of(a, [&](const PlacedNumeral& p) {
           return std::ranges::any_of(b, [&](const PlacedNumeral& q) {
             return p.text == q.text && apart(onto(FlatPoint{p.center_s, p.center_u}),
                                              {q.center_s, q.center_u}) < kSame;
           });
         });
}

/// Lays a pattern over another's box.
plane::Placement placement_of(Sameness::How how, const Pattern& pattern, const plane::Box& onto) {
  plane::Placement placement;
  placement.mirrored = how == Sameness::How::Mirrored;
  placement.turn = how == Sameness::How::Turned ? std::numbers::pi : 0.0;
  const plane::Box box = bounds(placement(pattern.outline));
  placement.move = onto.lo - box.lo;
  return placement;
}

/// Whether the match marks of a cover stand where those of its print do.
bool same_places(Sameness::How how, const Pattern& print, const Pattern& pattern) {
  const plane::Placement onto = placement_of(how, print, bounds(pattern.outline));
  return same_points(placed(onto, marks_of(print)), marks_of(pattern));
}

std::optional<Sameness> compare(const std::vector<Pattern>& patterns, const Joins& joins,
                                const std::vector<PlacedNumeral>& numerals, int earlier, int later,
                                Sameness::How how) {
  const Pattern& a = patterns[static_cast<std::size_t>(earlier)];
  const Pattern& b = patterns[static_cast<std::size_t>(later)];
  const plane::Placement onto = placement_of(how, a, bounds(b.outline));
  if (!same_points(placed(onto, a.outline), b.outline)) return std::nullopt;
  Sameness sameness{earlier, how, {}, matched_sides(a, b, how)};
  const auto differ = [&](const char* what, const std::vector<FlatPoint>& of_a,
                          const std::vector<FlatPoint>& of_b) {
    if (!same_points(placed(onto, of_a), of_b)) sameness.but_for.push_back(what);
  };
  differ("windows", windows_of(a), windows_of(b));
  differ("punch holes", holes_of(a), holes_of(b));
  differ("brackets", footprints_of(a), footprints_of(b));
  differ("pleats", pleats_of(a), pleats_of(b));
  differ("seams", seams_of(joins, earlier), seams_of(joins, later));
  differ("match marks", marks_of(a), marks_of(b));
  // A numeral turned or mirrored reads wrong, wherever it lies.
  const auto of_a = numerals_of(numerals, earlier), of_b = numerals_of(numerals, later);
  const bool any = !of_a.empty() || !of_b.empty();
  if (any && (how != Sameness::How::Same || !same_numerals(of_a, of_b, onto)))
    sameness.but_for.push_back("numerals");
  return sameness;
}

}  // namespace

std::vector<std::optional<Sameness>> same_patterns(const std::vector<Pattern>& patterns,
                                                   const Joins& joins,
                                                   const std::vector<PlacedNumeral>& numerals) {
  std::vector<std::optional<Sameness>> found(patterns.size());
  for (int later = 0; later < static_cast<int>(patterns.size()); ++later) {
    std::optional<Sameness>& best = found[static_cast<std::size_t>(later)];
    for (int earlier = 0; earlier < later; ++earlier)
      for (const Sameness::How how :
           {Sameness::How::Same, Sameness::How::Turned, Sameness::How::Mirrored}) {
        const auto sameness = compare(patterns, joins, numerals, earlier, later, how);
        if (sameness && (!best || sameness->but_for.size() < best->but_for.size())) best = sameness;
      }
  }
  return found;
}

std::vector<std::string> unlike_mirrored(const Pattern& pattern) {
  const auto mirrored = compare({pattern}, {}, {}, 0, 0, Sameness::How::Mirrored);
  return mirrored ? mirrored->but_for : std::vector<std::string>{"outline"};
}

std::vector<std::vector<std::string>> shared_mark_names(
    const std::vector<Pattern>& patterns, const std::vector<std::optional<Sameness>>& same) {
  std::vector<std::vector<std::string>> names;
  for (std::size_t k = 0; k < patterns.size(); ++k) {
    const Pattern& pattern = patterns[k];
    std::vector<std::string> own;
    for (const MatchMark& mark : pattern.marks) own.push_back(mark.name);
    names.push_back(std::move(own));
    if (!same[k]) continue;
    const auto other = static_cast<std::size_t>(same[k]->other);
    const Pattern& print = patterns[other];
    if (!same_places(same[k]->how, print, pattern)) continue;
    const plane::Placement onto = placement_of(same[k]->how, print, bounds(pattern.outline));
    for (std::size_t mark = 0; mark < pattern.marks.size(); ++mark) {
      const auto on_print = std::ranges::min_element(print.marks, {}, [&](const MatchMark& m) {
        return apart(onto(m.at), pattern.marks[mark].at);
      });
      names[k][mark] = names[other][static_cast<std::size_t>(on_print - print.marks.begin())];
    }
  }
  return names;
}

}  // namespace swathe
