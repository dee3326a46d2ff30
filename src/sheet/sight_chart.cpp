#include "sheet/sight_chart.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/maths.hpp"
#include "draw/furniture.hpp"
#include "sheet/shown_subjects.hpp"
#include "sheet/texts.hpp"
#include "swathe/base.hpp"

namespace swathe {
namespace {

using sheet_texts::say;

constexpr double kMachine = 0.36;    // of the chart's radius
constexpr double kRim = 8.0;         // mm for the bearings' words
constexpr double kHatch = 2.5;       // deg from line to line
constexpr double kWidestBand = 9.0;  // mm
constexpr double kNumber = 0.5;      // of a band's width, its number's height at most
constexpr Color kDark{0.42, 0.42, 0.42}, kPale{0.85, 0.85, 0.85}, kWhite{1, 1, 1};

double rad(double deg) { return degrees(deg).radians(); }

plane::Path moved(const plane::Polygon& plan, FlatPoint center, double scale, FlatPoint machine) {
  plane::Polygon out;
  for (const FlatPoint p : plan) out.push_back(center + scale * (p - machine));
  return closed_path(out);
}

/// The machine's bumpers, what hides them, and a black bar before each number.
void draw_machine(Drawing& onto, FlatPoint center, double radius, const Made& made) {
  const sight::Scene& scene = made.sight->scene;
  const auto plan_of = [](const sight::Solid& solid) {
    return solid.plan_at(0.5 * (solid.bottom() + solid.top()));
  };
  double reach = 1.0;
  for (const sight::Solid& solid : scene.solids)
    for (const FlatPoint p : plan_of(solid)) reach = std::max(reach, apart(p, scene.center));
  const double scale = 0.9 * radius / reach;
  for (const sight::Solid& solid : scene.solids) {
    const Showing one(onto, subject_of(solid));
    const plane::Path path = moved(plan_of(solid), center, scale, scene.center);
    onto.fill(LineKind::Outline, solid.name.starts_with("blind") ? kDark : kPale, {path});
    onto.line(LineKind::Thin, path);
  }
  for (std::size_t n = 0; n < scene.numbers.size(); ++n)
    for (const DigitInSpace& digit : scene.numbers[n].digits) {
      const Showing one(onto, showing_subject(made, n));
      const FlatPoint out = unit(FlatPoint{digit.normal.x, digit.normal.y});
      const auto corner = [&](const SpacePoint& p, double off) {
        const FlatPoint front{p.x, p.y};
        const double behind = dot(FlatPoint{digit.middle.x, digit.middle.y} - front, out);
        return center + scale * (front + behind * out - scene.center) + off * out;
      };
      onto.fill(
          LineKind::Outline, {0, 0, 0},
          {plane::closed_path({corner(digit.corners[0], 0.4), corner(digit.corners[0], 1.4),
                               corner(digit.corners[1], 1.4), corner(digit.corners[1], 0.4)})});
    }
  // Which way is ahead.
  const FlatPoint tip = center + FlatPoint{0, 0.28 * radius};
  onto.line(LineKind::Outline, center - FlatPoint{0, 0.2 * radius}, tip);
  onto.line(LineKind::Outline,
            plane::open_path({tip + FlatPoint{-2, -3}, tip, tip + FlatPoint{2, -3}}));
}

/// A bearing far from every change, for the bands' numbers.
double quiet_bearing(const std::vector<SightRing>& rings) {
  double best = 0, widest = -1;
  for (int deg = 0; deg < 360; deg += 5) {
    double nearest = 360;
    for (const SightRing& ring : rings)
      for (const SightArc& arc : ring.arcs) {
        if (ring.arcs.size() == 1) continue;
        nearest = std::min(nearest, std::abs(std::remainder(arc.from_deg - deg, 360.0)));
      }
    if (nearest <= widest + 1) continue;
    widest = nearest;
    best = deg;
  }
  return best;
}

/// Hatching keeps `clear` from the middle of the band at `label`, where its number is written.
void draw_band(Drawing& onto, FlatPoint center, double inner, double outer, const SightRing& ring,
               double label, double clear) {
  const auto is_at_label = [&](double bearing) {
    return 0.5 * (inner + outer) * std::abs(std::remainder(bearing - label, 2 * std::numbers::pi)) <
           clear;
  };
  for (const SightArc& arc : ring.arcs) {
    const plane::Path part = band_part(center, inner, outer, rad(arc.from_deg), rad(arc.to_deg));
    if (arc.reads == Reads::Nothing) onto.fill(LineKind::Outline, kDark, {part});
    if (arc.reads != Reads::Another) continue;
    onto.fill(LineKind::Outline, kPale, {part});
    for (int k = 0; arc.from_deg + (k + 0.5) * kHatch < arc.to_deg; ++k) {
      const double deg = arc.from_deg + (k + 0.5) * kHatch;
      if (is_at_label(rad(deg + 0.25 * kHatch))) continue;
      onto.line(LineKind::Thin, center + inner * towards(rad(deg)),
                center + outer * towards(rad(deg + 0.5 * kHatch)));
    }
  }
  if (ring.arcs.size() > 1)
    for (const SightArc& arc : ring.arcs)
      onto.line(LineKind::Outline, center + inner * towards(rad(arc.from_deg)),
                center + outer * towards(rad(arc.from_deg)));
  for (const double radius : {inner, outer}) onto.line(LineKind::Thin, circle(center, radius));
}

}  // namespace

plane::Path band_part(FlatPoint center, double inner, double outer, double from, double to) {
  // In halves, each with its own bulge: an arc of a path may not be a whole turn.
  const double middle = 0.5 * (from + to), bulge = maths::tan(0.125 * (to - from));
  plane::Path path;
  path.closed = true;
  const auto at = [&](double radius, double bearing) { return center + radius * towards(bearing); };
  path.vertices = {{at(outer, from), bulge}, {at(outer, middle), bulge},  {at(outer, to), 0},
                   {at(inner, to), -bulge},  {at(inner, middle), -bulge}, {at(inner, from), 0}};
  return path;
}

void draw_sight_chart(Drawing& onto, const plane::Box& box, const Made& made, const Font&) {
  const Sight& sight = *made.sight;
  const FlatPoint center = box.middle();
  const double radius = 0.5 * std::min(box.width(), box.height()) - kRim;
  const double inner = kMachine * radius;
  const double band =
      std::min(kWidestBand, (radius - inner) / static_cast<double>(sight.rings.size()));
  const double first = radius - band * static_cast<double>(sight.rings.size());
  draw_machine(onto, center, first - 3, made);

  const double quiet = rad(quiet_bearing(sight.rings));
  for (std::size_t k = 0; k < sight.rings.size(); ++k) {
    const double from = first + band * static_cast<double>(k), to = from + band;
    const double height = std::min(kTableHeight, kNumber * band);
    draw_band(onto, center, from + 0.4, to - 0.4, sight.rings[k], quiet, 1.1 * height);
    const FlatPoint at = center + 0.5 * (from + to) * towards(quiet);
    onto.fill(LineKind::Outline, kWhite, {circle(at, 0.85 * height)});
    onto.text(at - FlatPoint{0, 0.5 * height}, std::to_string(k + 1), height, draw::Anchor::Middle);
  }
  for (int deg = 0; deg < 360; deg += 30) {
    const FlatPoint way = towards(rad(deg));
    onto.line(LineKind::Thin, center + radius * way, center + (radius + 1.5) * way);
    const draw::Anchor anchor = way.x > 0.3    ? draw::Anchor::Left
                                : way.x < -0.3 ? draw::Anchor::Right
                                               : draw::Anchor::Middle;
    onto.text(center + (radius + 2.5) * way + FlatPoint{0, (way.y - 1) * 0.5 * kTableHeight},
              deg == 0 ? say("chart.ahead") : std::to_string(deg), kTableHeight, anchor);
  }
}

double sight_chart_side(std::size_t bands) {
  const double band = kTableHeight / kNumber;
  return 2 * (kRim + band * static_cast<double>(bands) / (1 - kMachine));
}

plane::Box draw_arc_key(Drawing& onto, const Font& labels, FlatPoint top_left,
                        const std::string& number) {
  constexpr double kWide = 12, kHigh = 4.5, kStep = 6.5;
  plane::Box taken;
  taken.cover(top_left);
  const std::string words[3] = {say("chart.can-be-read", {{"number", number}}),
                                say("chart.looks-like-another"), say("chart.cannot-be-read")};
  for (int k = 0; k < 3; ++k) {
    const FlatPoint hi = top_left - FlatPoint{0, kStep * k};
    const plane::Path sample = rectangle(hi - FlatPoint{0, kHigh}, hi + FlatPoint{kWide, 0});
    if (k > 0) onto.fill(LineKind::Outline, k == 1 ? kPale : kDark, {sample});
    if (k == 1)
      for (int line = 0; 1 + 1.5 * line < kWide; ++line) {
        const double x = 1 + 1.5 * line;
        onto.line(LineKind::Thin, hi + FlatPoint{x, -kHigh},
                  hi + FlatPoint{std::min(kWide, x + 0.7), 0});
      }
    onto.line(LineKind::Outline, sample);
    const plane::Box text =
        draw_text_block(onto, labels, hi + FlatPoint{kWide + 2.5, -1}, 80, words[k], kTableHeight);
    taken.cover(text);
    taken.cover(hi - FlatPoint{0, kHigh});
  }
  return taken;
}

}  // namespace swathe
