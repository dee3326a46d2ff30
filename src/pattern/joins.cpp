#include "pattern/joins.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "plane/clip.hpp"
#include "swathe/base.hpp"

namespace swathe {
namespace {

/// A seam is sewn no nearer than this to anything drawn on the cloth. Common practice, no source.
constexpr double kSeamClear = 6.0;

/// Everything on the cover that a seam in the open may not cross.
std::vector<Occupied> barred(const Pattern& pattern, std::vector<Occupied> occupied) {
  for (const PatternCorner& corner : pattern.corners) {
    const plane::Box notch = bounds(corner.notch_top);
    occupied.push_back({notch.lo.x, notch.hi.x});
  }
  for (const BracketOnPattern& bracket : pattern.brackets)
    for (const auto* shapes : {&bracket.windows, &bracket.footprints})
      for (const plane::Path& shape : *shapes)
        occupied.push_back({bounds(shape).lo.x, bounds(shape).hi.x});
  const double far = pattern.cloth_length;
  for (const EndOnPattern& end : pattern.ends)  // no seam past the board either
    occupied.push_back(end.start ? Occupied{-far, end.past_board}
                                 : Occupied{pattern.length - end.past_board, pattern.length + far});
  return occupied;
}

/// The furthest place up to `limit` that is `clear` of everything barred.
double furthest(double limit, double clear, const std::vector<Occupied>& bars) {
  double s = limit;
  for (bool moved = true; moved;) {
    moved = false;
    for (const Occupied& bar : bars) {
      if (s <= bar.from - clear || s >= bar.to + clear) continue;
      s = bar.from - clear;
      moved = true;
    }
  }
  return s;
}

ClothJoin join_at(const Pattern& pattern, double s, const PatternCorner* corner, double allowance) {
  const plane::Box box = bounds(pattern.outline);
  ClothJoin join{s, corner != nullptr, allowance, {s, box.lo.y}, {s, box.hi.y}};
  if (!corner) return join;
  // On a corner line the cloth ends at the notches' points.
  join.from.y = bounds(corner->notch_bottom).hi.y;
  join.to.y = bounds(corner->notch_top).lo.y;
  return join;
}

/// The box of what lies between two places along an outline.
plane::Box box_between(const plane::Polygon& outline, double from, double to) {
  plane::Box box;
  const auto cover = [&](FlatPoint p) {
    if (p.x >= from && p.x <= to) box.cover(p);
  };
  for (std::size_t k = 0; k < outline.size(); ++k) {
    const FlatPoint a = outline[k], b = outline[(k + 1) % outline.size()];
    cover(a);
    for (const double x : {from, to})
      if ((a.x < x && x < b.x) || (b.x < x && x < a.x))
        box.cover(FlatPoint{x, a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x)});
  }
  return box;
}

ClothPart part_between(const Pattern& pattern, std::string name, double from, double to) {
  const plane::Box whole = bounds(pattern.outline);
  const plane::Polygon between = {
      {from, whole.lo.y}, {to, whole.lo.y}, {to, whole.hi.y}, {from, whole.hi.y}};
  ClothPart part{std::move(name), box_between(pattern.outline, from, to), {}};
  for (plane::Polygon& piece :
       plane::intersect({pattern.outline}, {between}))  // without flaps' loose corners
    if (area(piece) > area(part.outline)) part.outline = std::move(piece);
  return part;
}

/// "A" and 2 make "A2", "left 1" and 2 "left 1-2".
std::string part_name(const std::string& bumper, std::size_t number) {
  const bool digit = !bumper.empty() && bumper.back() >= '0' && bumper.back() <= '9';
  return fmt::format("{}{}{}", bumper, digit ? "-" : "", number);
}

}  // namespace

std::vector<ClothPart> cloth_parts(const Pattern& pattern, const std::vector<ClothJoin>& joins) {
  const plane::Box whole = bounds(pattern.outline);
  if (joins.empty()) return {{pattern.bumper, whole, pattern.outline}};
  std::vector<ClothPart> parts;
  double from = whole.lo.x;
  for (const ClothJoin& join : joins) {
    parts.push_back(part_between(pattern, part_name(pattern.bumper, parts.size() + 1), from,
                                 join.s + join.allowance));
    from = join.s - join.allowance;
  }
  parts.push_back(
      part_between(pattern, part_name(pattern.bumper, parts.size() + 1), from, whole.hi.x));
  return parts;
}

Outcome<std::vector<ClothJoin>> lay_joins(const Pattern& pattern, const Job& job,
                                          std::vector<Occupied> occupied) {
  std::vector<ClothJoin> joins;
  if (!job.cloth.longest_piece) return joins;
  const double longest = job.cloth.longest_piece->mm(), allowance = job.cloth.seam.mm();
  const auto refuse_with = [&](const std::string& expected) {
    return refuse(
        Why::DoesNotFit,
        fmt::format("the cover of bumper \"{}\" is {} long, the longest piece of cloth {}, {}",
                    pattern.bumper, measured(mm(pattern.cloth_length), job.units),
                    measured(*job.cloth.longest_piece, job.units), expected),
        job.places.of("cloth.longest_piece"));
  };
  const plane::Box box = bounds(pattern.outline);
  if (box.width() > longest && !job.cloth.may_join)
    return refuse_with("expected longer cloth, or cloth.may_join = true");
  const std::vector<Occupied> bars = barred(pattern, std::move(occupied));
  for (double start = box.lo.x;;) {
    const double sewn_on = joins.empty() ? 0.0 : allowance;
    if (box.hi.x - start + sewn_on <= longest) return joins;
    const double limit = start + longest - sewn_on - allowance;
    const PatternCorner* under = nullptr;
    for (const PatternCorner& corner : pattern.corners)
      if (job.cloth.relief == Relief::Fold && corner.s > start + 2 * allowance && corner.s <= limit)
        under = &corner;
    const double s = under ? under->s : furthest(limit, allowance + kSeamClear, bars);
    if (s <= start + 2 * allowance)
      return refuse_with("and there is no place for a seam, expected longer cloth");
    joins.push_back(join_at(pattern, s, under, allowance));
    start = s;
  }
}

}  // namespace swathe
