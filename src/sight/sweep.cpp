#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/maths.hpp"
#include "swathe/base.hpp"
#include "swathe/sight.hpp"

namespace swathe {
namespace {

constexpr double kTurn = 2.0 * std::numbers::pi;
constexpr double kNarrowestArc = 2e-6;  // radians: more than the last place a bearing is told to

double deg(double radians) { return Angle::from_radians(radians).degrees(); }

/// One number on one circle, digit by digit.
struct DigitsAround : NumberAround {
  std::vector<Sightlines::Around> digits;

  std::string text(const NumberInSpace& number, double bearing) const {
    std::string legible;
    for (std::size_t d = 0; d < digits.size(); ++d)
      if (digits[d].legible.contains(bearing)) legible += number.digits[d].digit;
    return legible;
  }
};

DigitsAround digits_around(const sight::Scene& scene, const Sightlines& lines, std::size_t number,
                           Length distance) {
  DigitsAround around{{Bearings::all(), Bearings::none()}, {}};
  Bearings in_view = Bearings::all(), some = Bearings::none();
  for (std::size_t d = 0; d < scene.numbers[number].digits.size(); ++d) {
    const auto& digit = around.digits.emplace_back(lines.around(number, d, distance));
    around.whole = around.whole & digit.legible;
    in_view = in_view & digit.in_view;
    some = some | digit.legible;
  }
  around.misleads = some & !in_view;
  return around;
}

/// The digit of a number that looks smallest.
DigitSeen smallest(const sight::Scene& scene, const Sightlines& lines, std::size_t number,
                   FlatPoint eye) {
  DigitSeen least;
  for (std::size_t d = 0; d < scene.numbers[number].digits.size(); ++d) {
    const DigitSeen seen = lines.digit_from(number, d, eye);
    if (d == 0 || seen.effective < least.effective) least = seen;
  }
  return least;
}

/// How far out along the way it looks a number still reads, whatever stands between: an eye that
/// high loses nothing by coming nearer but the slant. Zero where it never reads.
double farthest_out(const NumberInSpace& number, const sight::Scene& scene, double eye,
                    const sight::Criterion& criterion) {
  double least = 1e300;
  for (const DigitInSpace& digit : number.digits) {
    const FlatPoint out{digit.normal.x, digit.normal.y};
    const FlatPoint middle{digit.middle.x, digit.middle.y};
    const double rise = eye - digit.middle.z;
    const auto reads = [&](double along) {
      const double length = maths::hypot(along * norm(out), rise);
      const double square = along * dot(out, out) + rise * digit.normal.z;
      const Angle off = Angle::from_radians(maths::acos(std::clamp(square / length, -1.0, 1.0)));
      const Angle height = visual_angle(mm(digit.seen_height), mm(length));
      return off <= criterion.widest && oblique_factor(off) * height >= criterion.least;
    };
    // The far end of what reads: from there on the angle falls.
    double lo = std::abs(rise), hi = lo + distance_of(mm(digit.seen_height), criterion.least).mm();
    if (!reads(lo)) return 0.0;
    for (int k = 0; k < 60; ++k) {
      const double middle_way = 0.5 * (lo + hi);
      (reads(middle_way) ? lo : hi) = middle_way;
    }
    least = std::min(least, norm(middle + lo * out - scene.center));
  }
  return number.digits.empty() ? 0.0 : least;
}

/// The farthest circle on which a number reads from somewhere.
Length farthest(const sight::Scene& scene, const Sightlines& lines, std::size_t number,
                const sight::Criterion& criterion) {
  const double out = farthest_out(scene.numbers[number], scene, lines.eye_height().mm(), criterion);
  if (out <= 0.0) return Length();
  const auto reads = [&](double distance) {
    return !digits_around(scene, lines, number, mm(distance)).whole.empty();
  };
  // In the open this is the answer, but for the digits' own places beside the middle.
  double lo = 0.998 * out, hi = 1.002 * out;
  int steps = 4;
  if (!reads(lo)) {  // something stands before it
    steps = 12;
    hi = lo;
    lo = 0.5 * hi;
    while (lo > 1e3 && !reads(lo)) lo *= 0.5;
    if (!reads(lo)) return Length();
  }
  for (int k = 0; k < steps; ++k) {
    const double middle = 0.5 * (lo + hi);
    (reads(middle) ? lo : hi) = middle;
  }
  return mm(lo);
}

NumberServes serves(const sight::Scene& scene, const Sightlines& lines, std::size_t number,
                    const DigitsAround& around, Length distance) {
  constexpr double kInside = 1e-6;  // radians: arcs are looked at just inside their ends
  NumberServes one;
  one.side = scene.numbers[number].side;
  one.worst_arcmin = 1e300;
  const auto look = [&](double bearing) {
    const FlatPoint eye = scene.center + distance.mm() * towards(bearing);
    const DigitSeen seen = smallest(scene, lines, number, eye);
    if (seen.effective.arcmin() < one.worst_arcmin) {
      one.worst_arcmin = seen.effective.arcmin();
      one.worst_deg = deg(bearing);
      one.worst_off_deg = seen.obliquity.degrees();
    }
    if (seen.effective.arcmin() > one.square_arcmin) {
      one.square_arcmin = seen.effective.arcmin();
      one.square_deg = deg(bearing);
    }
  };
  for (const auto& [from, to] : around.whole.arcs()) {
    one.arcs_deg.emplace_back(deg(from), deg(to));
    look(from + std::min(kInside, 0.25 * (to - from)));
    look(to - std::min(kInside, 0.25 * (to - from)));
    // The way the number looks, where that is in the arc.
    for (const double turn : {0.0, kTurn}) {
      const double bearing = scene.numbers[number].bearing + turn;
      if (bearing > from && bearing < to) look(bearing);
    }
  }
  if (one.arcs_deg.empty()) one.worst_arcmin = 0.0;
  return one;
}

}  // namespace

std::string arc_words(double from_deg, double to_deg) {
  if (to_deg - from_deg >= 360.0) return "all round";
  const auto card = [](double deg) {
    return plain_number(std::fmod(std::round(deg) + 360.0, 360.0), 0);
  };
  return card(from_deg) + " to " + card(to_deg);
}

std::string arcs_in_words(const std::vector<SightArc>& arcs, Reads reads, Angle step) {
  constexpr double kNeighbors = 1e-6;  // degrees
  struct Span {
    double from, to;
    std::vector<std::string> texts;
  };
  std::vector<Span> spans;
  for (const SightArc& arc : arcs) {
    if (arc.reads != reads) continue;
    if (spans.empty() || arc.from_deg - spans.back().to > kNeighbors)
      spans.push_back({arc.from_deg, arc.to_deg, {}});
    spans.back().to = arc.to_deg;
    auto& texts = spans.back().texts;
    if (!arc.text.empty() && std::ranges::find(texts, arc.text) == texts.end())
      texts.push_back(arc.text);
  }
  // The last may go on over bearing 0 as the first.
  if (spans.size() > 1 && std::abs(spans.back().to - 360.0 - spans.front().from) < kNeighbors) {
    auto& texts = spans.front().texts;
    texts.insert(texts.begin(), spans.back().texts.begin(), spans.back().texts.end());
    spans.front().from = spans.back().from - 360.0;
    spans.pop_back();
  }
  std::string words;
  for (const Span& span : spans) {
    if (span.to - span.from < step.degrees()) continue;
    words += (words.empty() ? "" : ", ") + arc_words(span.from, span.to);
    std::string texts;
    for (const std::string& text : span.texts) texts += (texts.empty() ? "" : ", ") + text;
    if (reads == Reads::Another) words += " (" + texts + ")";
  }
  return words.empty() ? "nowhere" : words;
}

double SightRing::fraction(Reads reads) const {
  double sum = 0.0;
  for (const SightArc& arc : arcs)
    if (arc.reads == reads) sum += arc.to_deg - arc.from_deg;
  return sum / 360.0;
}

const SightArc* SightRing::widest(Reads reads, Angle step) const {
  const SightArc* widest = nullptr;
  const auto width = [](const SightArc& arc) { return arc.to_deg - arc.from_deg; };
  for (const SightArc& arc : arcs)
    if (arc.reads == reads && width(arc) >= step.degrees() &&
        (widest == nullptr || width(arc) > width(*widest)))
      widest = &arc;
  return widest;
}

Length demanded_distance(const SightKeys& keys, std::optional<Length> named) {
  return named ? *named : *std::ranges::min_element(keys.distance);
}

NumberAround around_number(const sight::Scene& scene, const Sightlines& lines, std::size_t number,
                           Length distance) {
  return digits_around(scene, lines, number, distance);
}

SightRing ring_at(const sight::Scene& scene, const Sightlines& lines, Length distance) {
  SightRing ring;
  ring.distance = distance;
  ring.eye_height = lines.eye_height();
  std::vector<DigitsAround> numbers;
  std::vector<double> changes;
  for (std::size_t n = 0; n < scene.numbers.size(); ++n) {
    numbers.push_back(digits_around(scene, lines, n, distance));
    const DigitsAround& around = numbers.back();
    for (const Bearings* set : {&around.whole, &around.misleads})
      changes.insert(changes.end(), set->flips().begin(), set->flips().end());
    for (const auto& digit : around.digits)
      changes.insert(changes.end(), digit.legible.flips().begin(), digit.legible.flips().end());
    ring.numbers.push_back(serves(scene, lines, n, around, distance));
  }
  std::ranges::sort(changes);
  // What lies closer is one change told with two last digits: between them is no arc of any width.
  const auto together = [](double a, double b) { return b - a < kNarrowestArc; };
  changes.erase(std::unique(changes.begin(), changes.end(), together), changes.end());
  if (changes.size() > 1 && together(changes.back(), changes.front() + kTurn)) changes.pop_back();

  const auto read_at = [&](double bearing) {
    SightArc arc;
    for (std::size_t n = 0; n < numbers.size(); ++n) {
      if (numbers[n].whole.contains(bearing))
        return SightArc{0, 0, Reads::Number, scene.numbers[n].text, static_cast<int>(n)};
      if (arc.reads == Reads::Nothing && numbers[n].misleads.contains(bearing))
        arc = {0, 0, Reads::Another, numbers[n].text(scene.numbers[n], bearing),
               static_cast<int>(n)};
    }
    return arc;
  };
  const auto same = [](const SightArc& a, const SightArc& b) {
    return a.reads == b.reads && a.text == b.text && a.number == b.number;
  };
  if (changes.empty()) {
    SightArc whole = read_at(0.0);
    whole.to_deg = 360.0;
    ring.arcs.push_back(whole);
    return ring;
  }
  for (std::size_t k = 0; k < changes.size(); ++k) {
    const double from = changes[k];
    const double to = k + 1 < changes.size() ? changes[k + 1] : changes.front() + kTurn;
    SightArc arc = read_at(0.5 * (from + to));
    arc.from_deg = deg(from);
    arc.to_deg = deg(to);
    if (!ring.arcs.empty() && same(ring.arcs.back(), arc)) {
      ring.arcs.back().to_deg = arc.to_deg;
    } else {
      ring.arcs.push_back(arc);
    }
  }
  if (ring.arcs.size() > 1 && same(ring.arcs.front(), ring.arcs.back())) {
    ring.arcs.back().to_deg = ring.arcs.front().to_deg + 360.0;
    ring.arcs.erase(ring.arcs.begin());
  } else if (ring.arcs.size() == 1) {
    ring.arcs.front().from_deg = 0.0;
    ring.arcs.front().to_deg = 360.0;
  }
  return ring;
}

Sight sweep(sight::Scene scene, const SightKeys& keys, std::optional<Length> named) {
  Sight sight{std::move(scene), {keys.least_angle, kWidestObliquity}, keys.step, {}, {}, {}};
  std::vector<Sightlines> lines;
  for (const Length eye : keys.eye_height) lines.emplace_back(sight.scene, eye, sight.criterion);
  std::vector<std::vector<Length>> far(lines.size());
  for (std::size_t h = 0; h < lines.size(); ++h)
    for (std::size_t n = 0; n < sight.scene.numbers.size(); ++n)
      far[h].push_back(farthest(sight.scene, lines[h], n, sight.criterion));
  const auto ring = [&](std::size_t h, Length distance) {
    SightRing at = ring_at(sight.scene, lines[h], distance);
    for (std::size_t n = 0; n < far[h].size(); ++n) at.numbers[n].farthest = far[h][n];
    return at;
  };
  for (const Length distance : keys.distance)
    for (std::size_t h = 0; h < lines.size(); ++h) sight.rings.push_back(ring(h, distance));
  const Length asked = demanded_distance(keys, named);
  for (std::size_t h = 0; h < lines.size(); ++h) {
    const auto had = std::ranges::find_if(sight.rings, [&](const SightRing& one) {
      return one.distance == asked && one.eye_height == lines[h].eye_height();
    });
    sight.demanded.push_back(had != sight.rings.end() ? *had : ring(h, asked));
  }
  return sight;
}

}  // namespace swathe
