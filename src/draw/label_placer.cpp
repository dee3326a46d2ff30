#include "draw/label_placer.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <utility>
#include <vector>

#include "base/maths.hpp"

namespace swathe {
namespace {

constexpr double kFlat = 0.2;          ///< arcs are kept off as chords
constexpr double kLeaderFrom = 4.0;    ///< text further off than this gets a leader
constexpr double kLineSpacing = 1.75;  ///< base line to base line, of the capitals' height
constexpr double kAwayParts = 1e3;     ///< of a millimeter: distances are compared in these
constexpr double kFirstRing = 40.0;    ///< mm; places this near are tried first

/// Where the middle of something of that length may stand.
std::vector<double> steps(double lo, double hi, double length, double step) {
  std::vector<double> places;
  const int count = static_cast<int>(std::floor((hi - lo - length) / step)) + 1;
  for (int k = 0; k < count; ++k) places.push_back(lo + 0.5 * length + k * step);
  return places;
}

struct Place {
  double away;  ///< from the aim, in whole parts of a millimeter
  FlatPoint at;
};

struct Ring {
  std::vector<Place> places;
  bool is_last = true;  ///< no place is further away
};

/// The places more than `from` and at most `to` parts away, the nearest first.
Ring places_between(const std::vector<double>& xs, const std::vector<double>& ys, FlatPoint aim,
                    double from, double to) {
  const double reach = (to + 1) / kAwayParts;
  // The first and one past the last that are near enough.
  const auto within = [&](const std::vector<double>& all, double middle) {
    return std::pair{std::ranges::lower_bound(all, middle - reach) - all.begin(),
                     std::ranges::upper_bound(all, middle + reach) - all.begin()};
  };
  const auto [x_first, x_last] = within(xs, aim.x);
  const auto [y_first, y_last] = within(ys, aim.y);
  Ring ring;
  ring.is_last = x_last - x_first == std::ssize(xs) && y_last - y_first == std::ssize(ys);
  for (auto i = x_first; i < x_last; ++i)
    for (auto k = y_first; k < y_last; ++k) {
      const FlatPoint at{xs[static_cast<std::size_t>(i)], ys[static_cast<std::size_t>(k)]};
      const double away = std::round(kAwayParts * apart(at, aim));
      if (away > to) ring.is_last = false;
      if (away > from && away <= to) ring.places.push_back({away, at});
    }
  std::ranges::stable_sort(ring.places, {}, &Place::away);
  return ring;
}

}  // namespace

double reading_turn(FlatPoint along) {
  constexpr double kHalf = 0.5 * std::numbers::pi;
  double turn = maths::atan2(along.y, along.x);
  if (turn > kHalf + 1e-9) turn -= std::numbers::pi;
  if (turn <= -kHalf + 1e-9) turn += std::numbers::pi;
  return turn;
}

LabelPlacer::LabelPlacer(Drawing& onto, const Font& labels, const plane::Box& page)
    : LabelPlacer(onto, labels, page, Clear{}) {}

LabelPlacer::LabelPlacer(Drawing& onto, const Font& labels, const plane::Box& page,
                         const Clear& clear)
    : onto_(onto),
      labels_(labels),
      page_(page),
      clear_(clear),
      stroke_strips_(page),
      held_strips_(page) {
  for (const draw::Mark& mark : onto.marks()) {
    if (const auto* line = std::get_if<LineMark>(&mark)) keep_off(line->path);
    if (const auto* fill = std::get_if<FillMark>(&mark))
      for (const plane::Path& path : fill->outlines) keep_off(bounds(path));
    if (const auto* text = std::get_if<TextMark>(&mark)) hold(box_of(*text, labels));
  }
}

void LabelPlacer::keep_off(const plane::Path& path) {
  const std::vector<FlatPoint> points = flatten(path, kFlat);
  for (std::size_t k = 0; k + (path.closed ? 0 : 1) < points.size(); ++k) {
    Stroke stroke{points[k], points[(k + 1) % points.size()], {}};
    stroke.box.cover(stroke.a);
    stroke.box.cover(stroke.b);
    stroke_strips_.add(stroke.box, strokes_.size());
    strokes_.push_back(stroke);
  }
}

bool LabelPlacer::is_free(const TextBox& box) const {
  const TextBox wide = box.grown(clear_.around_mm);
  const plane::Box all = bounds(wide);
  if (!page_.holds(all)) return false;
  const bool hit_line = stroke_strips_.any_near(all, [&](std::size_t k) {
    const Stroke& stroke = strokes_[k];
    return stroke.box.meets(all) && crossed_by(wide, stroke.a, stroke.b);
  });
  return !hit_line && !held_strips_.any_near(all, [&](std::size_t k) {
    return held_[k].around.meets(all) && overlap(wide, held_[k].box);
  });
}

bool LabelPlacer::is_crossed(FlatPoint a, FlatPoint b) const {
  return std::ranges::any_of(held_, [&](const Held& other) { return crossed_by(other.box, a, b); });
}

void LabelPlacer::hold(const TextBox& box) {
  const plane::Box around = bounds(box);
  held_strips_.add(around, held_.size());
  held_.push_back({box, around});
}

void LabelPlacer::write(const TextMark& text) {
  onto_.text(text);
  hold(box_of(text, labels_));
}

bool LabelPlacer::try_at(const TextMark& text) {
  if (!is_free(box_of(text, labels_))) return false;
  write(text);
  return true;
}

bool LabelPlacer::first_free(const std::vector<TextMark>& candidates) {
  return std::ranges::any_of(candidates, [&](const TextMark& text) { return try_at(text); });
}

bool LabelPlacer::beside(FlatPoint a, FlatPoint b, const std::string& text, double height_mm,
                         double from_end_mm, double off_mm) {
  const double length = apart(a, b);
  if (length < 1e-9) return false;
  const FlatPoint along = unit(b - a);
  const double turn = reading_turn(along);
  const FlatPoint reading = plane::direction(turn), up = left_of(reading);
  // The text starts at the end `a` whichever way it reads.
  const draw::Anchor anchor = dot(reading, along) > 0 ? draw::Anchor::Left : draw::Anchor::Right;
  const double width = labels_.text_width_mm(text, height_mm);
  const double above = 0.3 * height_mm + clear_.around_mm + off_mm;
  const double below = -1.08 * height_mm - clear_.around_mm - off_mm;
  constexpr double kStep = 4.0;
  const double room = std::max(0.1, length - from_end_mm - width);
  for (int k = 0; kStep * k <= room; ++k)
    for (const double side : {above, below})
      if (try_at(
              {a + (from_end_mm + kStep * k) * along + side * up, text, height_mm, anchor, turn}))
        return true;
  return false;
}

bool LabelPlacer::near(FlatPoint place, const std::string& text, double height_mm,
                       double furthest_mm) {
  constexpr int kWays = 16;
  constexpr double kStep = 1.5;
  for (int ring = 1; kStep * ring <= furthest_mm; ++ring)
    for (int k = 0; k < kWays; ++k) {
      const double off = kStep * ring;
      const FlatPoint way = plane::direction(2 * std::numbers::pi * k / kWays);
      // The text's nearest edge stands `off` away in that direction.
      const draw::Anchor anchor = way.x > 0.3    ? draw::Anchor::Left
                                  : way.x < -0.3 ? draw::Anchor::Right
                                                 : draw::Anchor::Middle;
      const FlatPoint foot = place + off * way;
      const FlatPoint at = foot + FlatPoint{0, (0.5 * way.y - 0.5) * height_mm};
      const TextMark mark{at, text, height_mm, anchor};
      const TextBox box = box_of(mark, labels_);
      if (!is_free(box)) continue;
      if (off > kLeaderFrom) {
        const FlatPoint to = foot - 1.0 * way;
        if (is_crossed(place + clear_.leader_mm * way, to) || crossed_by(box, place, to)) continue;
        onto_.line(LineKind::Thin, place, to);
        keep_off(line(place, to));
      }
      write(mark);
      return true;
    }
  return false;
}

std::optional<plane::Box> LabelPlacer::claim(double width, double height, const plane::Box& within,
                                             FlatPoint aim, double step_mm) {
  const std::vector<double> xs = steps(within.lo.x, within.hi.x, width, step_mm);
  const std::vector<double> ys = steps(within.lo.y, within.hi.y, height, step_mm);
  if (xs.empty() || ys.empty()) return std::nullopt;
  const FlatPoint half{0.5 * width, 0.5 * height};
  // Most texts find a place near by, so rings round the aim are tried, each twice as wide.
  double from = -1, to = std::round(kAwayParts * kFirstRing);
  for (bool all = false; !all;) {
    const Ring ring = places_between(xs, ys, aim, from, to);
    all = ring.is_last;
    from = to;
    to *= 2;
    for (const auto& [away, middle] : ring.places) {
      const plane::Box box{middle - half, middle + half};
      if (!is_free(box_of(box))) continue;
      hold(box_of(box));
      return box;
    }
  }
  return std::nullopt;
}

bool LabelPlacer::block(const TextBlock& block, const plane::Box& within, FlatPoint aim) {
  double width = 0, height = 0;
  for (const TextBlock::Line& line : block.lines) {
    width = std::max(width, labels_.text_width_mm(line.text, line.height_mm));
    height += kLineSpacing * line.height_mm;
  }
  const std::optional<plane::Box> box = claim(width, height, within, aim);
  if (!box) return false;
  double y = box->hi.y;
  for (const TextBlock::Line& line : block.lines) {
    y -= kLineSpacing * line.height_mm;
    onto_.text({box->middle().x, y + 0.4 * line.height_mm}, line.text, line.height_mm,
               draw::Anchor::Middle);
  }
  return true;
}

}  // namespace swathe
