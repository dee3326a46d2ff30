#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "screen/standing.hpp"
#include "screen/texts.hpp"
#include "sheet/shown_subjects.hpp"

namespace swathe {
namespace {

using screen_texts::say;

constexpr int kHalvings = 30;  ///< of a stretch of distances: to some micrometers

/// What can be read along one bearing, at one eye height.
class Bearing {
 public:
  Bearing(const Made& made, const Observer& from)
      : made_(made),
        scene_(made.sight->scene),
        from_(from),
        lines_(scene_, from.eye_height, made.sight->criterion) {}

  std::vector<NumberSeen> seen(double distance_mm) const {
    return lines_.seen_from(scene_.center + distance_mm * towards(from_.bearing.radians()));
  }

  PlaceVerdict judged() const {
    PlaceVerdict verdict;
    verdict.from = from_;
    const std::vector<NumberSeen> all = seen(from_.distance.mm());
    for (std::size_t n = 0; n < all.size() && verdict.reads != Reads::Number; ++n) {
      const bool whole = all[n].whole();
      if (!whole && (verdict.reads == Reads::Another || !all[n].misleading())) continue;
      verdict.reads = whole ? Reads::Number : Reads::Another;
      verdict.text = whole ? scene_.numbers[n].text : all[n].text;
      verdict.shows = showing_subject(made_, n);
    }
    if (verdict.reads == Reads::Number) verdict.out_to = mm(out_to());
    verdict.words = verdict.reads == Reads::Number ? read_words(*verdict.out_to)
                    : verdict.reads == Reads::Another
                        ? say("verdict.another", {{"seen", verdict.text}})
                        : why_not(all);
    return verdict;
  }

  /// Whether any number faces this way.
  bool faced() const { return std::ranges::any_of(seen(from_.distance.mm()), faces_here); }

 private:
  static bool faces_here(const NumberSeen& number) {
    return !number.digits.empty() && std::ranges::none_of(number.digits, &DigitSeen::turned_away);
  }

  bool reads_at(double distance_mm) const {
    return std::ranges::any_of(seen(distance_mm), &NumberSeen::whole);
  }

  /// Between a distance at which it reads and one at which it does not.
  double edge(double reads, double does_not) const {
    for (int k = 0; k < kHalvings; ++k) {
      const double middle = 0.5 * (reads + does_not);
      (reads_at(middle) ? reads : does_not) = middle;
    }
    return reads;
  }

  /// Requires: it reads from here.
  double out_to() const {
    double reads = from_.distance.mm(), far = 2 * reads;
    while (reads_at(far)) {
      if (far > kFarthestEye.mm()) return kFarthestEye.mm();
      reads = far;
      far *= 2;
    }
    return edge(reads, far);
  }

  std::string read_words(Length out) const {
    return say("verdict.read", {{"distance", walked(out, made_.job.units)}});
  }

  /// Why nothing can be read, of the number that faces this way the most.
  std::string why_not(const std::vector<NumberSeen>& all) const {
    const NumberSeen* best = nullptr;
    for (const NumberSeen& one : all)
      if (faces_here(one) &&
          (!best || one.digits.front().obliquity < best->digits.front().obliquity))
        best = &one;
    if (!best) return too_near().value_or(say("verdict.none-faces"));
    for (const DigitSeen& digit : best->digits)
      if (digit.hidden_by >= 0) return say("verdict.hidden");
    for (const DigitSeen& digit : best->digits)
      if (digit.obliquity > made_.sight->criterion.widest)
        return too_near().value_or(say("verdict.slanted"));
    const double near = nearest_eye(made_).mm(), here = from_.distance.mm();
    // Somewhere nearer it reads, unless the digits are very small.
    for (double distance = here; distance > near; distance *= 0.8)
      if (reads_at(distance))
        return say("verdict.too-far",
                   {{"distance", walked(mm(edge(distance, distance / 0.8)), made_.job.units)}});
    return say("verdict.too-small");
  }

  /// Where it is not the way but how steeply the eye looks down: to where to step back.
  std::optional<std::string> too_near() const {
    // A tenth of a foot or of a meter: the next that is said.
    const double step = made_.job.units == Units::Inches ? inches(1.2).mm() : 100;
    for (double far = 1.25 * from_.distance.mm(); far < kFarthestEye.mm(); far *= 1.25) {
      if (!reads_at(far)) continue;
      const double reads = edge(far, far / 1.25);
      return say("verdict.too-near",
                 {{"distance", walked(mm(std::ceil(reads / step) * step), made_.job.units)}});
    }
    return std::nullopt;
  }

  const Made& made_;
  const sight::Scene& scene_;
  const Observer& from_;
  Sightlines lines_;
};

struct Way {
  const char* name;
  const char* none;  ///< said where no number faces this way
};
constexpr std::array<Way, 4> kWays = {{{"front", "verdict.none-in-front"},
                                       {"left", "verdict.none-on-the-left"},
                                       {"back", "verdict.none-behind"},
                                       {"right", "verdict.none-on-the-right"}}};

}  // namespace

Length nearest_eye(const Made& made) {
  constexpr double kClear = 100;  // mm between eye and bumper
  const FlatPoint center = made.frame.center();
  double reach = 0;
  for (const FrameSide& side : made.frame.sides())
    reach = std::max(reach, apart(side.from, center));
  return mm(std::numbers::sqrt2 * made.section.depth_mm() + reach + kClear);
}

Observer kept(const Made& made, const Observer& observer) {
  const auto within = [](double value, double least, double most) {
    return value >= least ? std::min(value, most) : least;
  };
  Observer one = observer;
  const double turn = observer.bearing.radians();
  one.bearing = Angle::from_radians(std::isfinite(turn) ? turn : 0.0);
  one.distance = mm(within(observer.distance.mm(), nearest_eye(made).mm(), kFarthestEye.mm()));
  one.eye_height = mm(within(observer.eye_height.mm(), 0, kHighestEye.mm()));
  if (one.color >= made.job.cloth.colors.size()) one.color = 0;
  return one;
}

Observer first_observer(const Made& made, Angle bearing) {
  const SightKeys& keys = made.job.sight;
  return kept(made, {bearing, *std::ranges::min_element(keys.distance),
                     *std::ranges::max_element(keys.eye_height), 0});
}

SpacePoint eye_of(const Made& made, const Observer& observer) {
  const FlatPoint plan =
      made.frame.center() + observer.distance.mm() * towards(observer.bearing.radians());
  return {plan.x, plan.y, observer.eye_height.mm()};
}

PlaceVerdict verdict_from(const Made& made, const Observer& observer) {
  const Observer from = kept(made, observer);
  if (made.sight) return Bearing(made, from).judged();
  PlaceVerdict verdict;
  verdict.from = from;
  verdict.words = say("verdict.no-number");
  return verdict;
}

std::vector<PlaceVerdict> side_verdicts(const Made& made) {
  std::vector<PlaceVerdict> all;
  for (std::size_t k = 0; k < kWays.size(); ++k) {
    const Observer from = first_observer(made, degrees(90.0 * static_cast<double>(k)));
    PlaceVerdict verdict = verdict_from(made, from);
    verdict.way = kWays[k].name;
    if (verdict.reads == Reads::Nothing && made.sight && !Bearing(made, from).faced())
      verdict.words = say(kWays[k].none);
    all.push_back(std::move(verdict));
  }
  return all;
}

}  // namespace swathe
