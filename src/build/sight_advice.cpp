#include "build/sight_advice.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <utility>

#include "swathe/numeral/place.hpp"

namespace swathe {
namespace {

constexpr Length kStep = Length::from_inches(1.0 / 2);    // numbers are tried this far apart
constexpr Length kTaller = Length::from_inches(1.0 / 8);  // and heights
constexpr double kTallest = 2.0;                          // of the height they have

// The search is given up after so much work, counted, so that it ends alike on every machine: what
// one digit is on one circle, and what one solid is before one digit.
constexpr long kMostWork = 1'500'000;
constexpr long kWorkOfCircle = 16, kWorkOfSolid = 1;

/// Where a number's ink lies along its bumper.
struct Extent {
  double from = 1e300, to = -1e300, low = 1e300, high = -1e300;

  double width() const { return to - from; }
  double middle() const { return 0.5 * (from + to); }
  double half_height() const { return std::max(-low, high); }
};

Extent extent_of(const SightNumber& number) {
  Extent e;
  for (const SightDigit& digit : number.digits) {
    e.from = std::min(e.from, digit.from_s);
    e.to = std::max(e.to, digit.to_s);
    e.low = std::min(e.low, digit.from_u);
    e.high = std::max(e.high, digit.to_u);
  }
  return e;
}

bool is_split(const SightNumber& number) {
  return std::ranges::any_of(number.digits, [&](const SightDigit& digit) {
    return digit.bumper != number.digits.front().bumper;
  });
}

SightNumber moved(SightNumber number, double by) {
  for (SightDigit& digit : number.digits) {
    digit.from_s += by;
    digit.to_s += by;
  }
  return number;
}

SightNumber into(SightNumber number, const NumeralRoom& room) {
  const double by = 0.5 * (room.from_s + room.to_s) - extent_of(number).middle();
  number = moved(std::move(number), by);
  for (SightDigit& digit : number.digits) digit.bumper = room.bumper;
  number.side = room.side;
  return number;
}

SightNumber scaled(SightNumber number, double by) {
  const double middle = extent_of(number).middle();
  for (SightDigit& digit : number.digits) {
    digit.from_s = middle + by * (digit.from_s - middle);
    digit.to_s = middle + by * (digit.to_s - middle);
    digit.from_u *= by;
    digit.to_u *= by;
  }
  return number;
}

/// Where a circle reads the number, and where it would be misled.
struct Circle {
  Bearings whole = Bearings::none(), misleads = Bearings::none();

  void add(const Bearings& whole_too, const Bearings& misleads_too) {
    whole = whole | whole_too;
    misleads = misleads | misleads_too;
  }
};

class Advisor {
 public:
  Advisor(const std::vector<Wrap>& wraps, const SightKeys& keys, const Demand& demand, Units units)
      : wraps_(wraps),
        keys_(keys),
        demand_(demand),
        units_(units),
        distances_{demanded_distance(keys, demand.distance)} {
    distances_.insert(distances_.end(), keys.distance.begin(), keys.distance.end());
  }

  std::string advise(const std::vector<SightNumber>& numbers) {
    if (numbers.empty() || good(numbers, {})) return "";
    if (auto words = by_moving(numbers))
      return *words + (given_up() ? "; the search stopped there, less may do" : "");
    if (auto words = by_adding(numbers)) return *words;
    if (auto words = by_growing(numbers)) return *words;
    if (auto words = by_adding_more(numbers)) return *words;
    if (given_up())
      return "no change was found: the search stopped before it had tried them all, since there "
             "are "
             "so many distances, eye heights and boxes";
    return keys_.blind.empty()
               ? "no one change would do on these bumpers: bare sides need bumpers with the number"
               : "no one change would do: move what hides the numbers, or leave a side free of it";
  }

 private:
  bool given_up() const { return work_left_ < 0; }

  /// All circles, one eye height after another, in each the demanded distance first.
  using Circles = std::vector<Circle>;

  Scene scene_of(const std::vector<SightNumber>& numbers) const {
    return make_scene(wraps_, numbers, keys_.blind);
  }

  /// Calls visit(k, circle) with what the scene's numbers show on each, until it says no or the
  /// work is used up.
  template <class Visit>
  bool each_circle(const Scene& scene, Visit visit) {
    long digits = 0;
    for (const NumberInSpace& number : scene.numbers)
      digits += static_cast<long>(number.digits.size());
    std::size_t k = 0;
    for (const Length eye : keys_.eye_height) {
      work_left_ -= kWorkOfSolid * digits * static_cast<long>(scene.solids.size());
      const Sightlines lines(scene, eye, {keys_.least_angle, kWidestObliquity});
      for (const Length distance : distances_) {
        work_left_ -= kWorkOfCircle * digits;
        if (given_up()) return false;
        Circle circle;
        for (std::size_t n = 0; n < scene.numbers.size(); ++n) {
          const NumberAround around = around_number(scene, lines, n, distance);
          circle.add(around.whole, around.misleads);
        }
        if (!visit(k++, std::move(circle))) return false;
      }
    }
    return true;
  }

  Circles circles_of(const std::vector<SightNumber>& numbers) {
    Circles circles;
    each_circle(scene_of(numbers), [&](std::size_t, Circle circle) {
      circles.push_back(std::move(circle));
      return true;
    });
    return circles;
  }

  /// Whether enough of this circle reads the number, where the demand is on it.
  bool enough(std::size_t k, const Circle& circle) const {
    return k % distances_.size() != 0 || !demand_.viewpoints ||
           meets(circle.whole.measure() / (2 * std::numbers::pi), *demand_.viewpoints);
  }

  /// Whether nobody is misled anywhere, and enough of each demanded circle reads the number, with
  /// what other numbers show where there are any.
  bool good(const std::vector<SightNumber>& numbers, const Circles& others) {
    const auto with_others = [&](std::size_t k, Circle circle) {
      if (!others.empty()) circle.add(others[k].whole, others[k].misleads);
      return circle;
    };
    // What does not do with nothing in the way need not be looked at with all that hides it.
    Scene scene = scene_of(numbers);
    std::vector<Solid> solids = std::move(scene.solids);
    scene.solids.clear();
    const bool might = each_circle(scene, [&](std::size_t k, Circle circle) {
      return enough(k, with_others(k, std::move(circle)));
    });
    if (!might) return false;
    scene.solids = std::move(solids);
    return each_circle(scene, [&](std::size_t k, Circle circle) {
      circle = with_others(k, std::move(circle));
      const bool misled = std::ranges::any_of(
          (circle.misleads & !circle.whole).arcs(),
          [&](const auto& arc) { return arc.second - arc.first >= keys_.step.radians(); });
      return !misled && enough(k, circle);
    });
  }

  /// Rooms that hold a number of this size, the longest of each side.
  std::vector<NumeralRoom> rooms_for(const SightNumber& number) const {
    const Extent e = extent_of(number);
    return rooms_that_fit(numeral_rooms(wraps_, e.half_height()),
                          e.width() + 2 * kNumeralMargin.mm());
  }

  /// Where it stands, with its margins.
  bool fits(const SightNumber& number) const {
    const Extent e = extent_of(number);
    return std::ranges::any_of(numeral_rooms(wraps_, e.half_height()), [&](const auto& room) {
      return room.bumper == number.digits.front().bumper &&
             room.from_s <= e.from - kNumeralMargin.mm() && room.to_s >= e.to + kNumeralMargin.mm();
    });
  }

  static const SightNumber* unsplit(const std::vector<SightNumber>& numbers) {
    const auto found =
        std::ranges::find_if(numbers, [](const SightNumber& n) { return !is_split(n); });
    return found == numbers.end() ? nullptr : &*found;
  }

  std::optional<std::string> by_moving(const std::vector<SightNumber>& numbers) {
    std::optional<std::string> best;
    double least = 1e300;
    for (std::size_t n = 0; n < numbers.size(); ++n) {
      if (is_split(numbers[n])) continue;
      const Extent e = extent_of(numbers[n]);
      std::vector<SightNumber> staying = numbers;
      staying.erase(staying.begin() + static_cast<std::ptrdiff_t>(n));
      const Circles others = circles_of(staying);
      for (const NumeralRoom& room : numeral_rooms(wraps_, e.half_height())) {
        const bool own = room.bumper == numbers[n].digits.front().bumper &&
                         e.middle() >= room.from_s && e.middle() <= room.to_s;
        if (!own) continue;
        const double left = room.from_s + kNumeralMargin.mm() - e.from;
        const double right = room.to_s - kNumeralMargin.mm() - e.to;
        for (int steps = 1; steps * kStep.mm() < std::min(least, std::max(-left, right)); ++steps) {
          const double by = steps * kStep.mm();
          for (const double sense : {-1.0, 1.0}) {
            if (by >= least || sense * by < left || sense * by > right) continue;
            if (!good({moved(numbers[n], sense * by)}, others)) continue;
            least = by;
            best =
                fmt::format("move the {} number {} to the {} (seen from outside)", numbers[n].side,
                            dimension_with_unit(mm(by), units_), sense < 0 ? "left" : "right");
          }
        }
      }
    }
    return best;
  }

  /// Every room on a side without the number, that holds it.
  std::vector<SightNumber> more_numbers(const std::vector<SightNumber>& numbers) const {
    std::vector<SightNumber> more;
    const SightNumber* const whole = unsplit(numbers);
    if (whole == nullptr) return more;
    for (const NumeralRoom& room : rooms_for(*whole)) {
      const auto same = [&](const SightNumber& number) { return number.side == room.side; };
      if (std::ranges::none_of(numbers, same)) more.push_back(into(*whole, room));
    }
    return more;
  }

  std::optional<std::string> by_adding(const std::vector<SightNumber>& numbers) {
    const Circles others = circles_of(numbers);
    for (const SightNumber& one : more_numbers(numbers))
      if (good({one}, others)) return fmt::format("put the number on the {} side too", one.side);
    return std::nullopt;
  }

  std::optional<std::string> by_growing(const std::vector<SightNumber>& numbers) {
    double shortest = 1e300;
    for (const SightNumber& number : numbers)
      for (const SightDigit& digit : number.digits)
        shortest = std::min(shortest, digit.to_u - digit.from_u);
    const int first = static_cast<int>(std::ceil(shortest / kTaller.mm() + 1e-6));
    for (int steps = first; steps * kTaller.mm() < kTallest * shortest; ++steps) {
      const double height = steps * kTaller.mm();
      std::vector<SightNumber> changed;
      for (const SightNumber& number : numbers) {
        if (is_split(number)) return std::nullopt;
        changed.push_back(scaled(number, height / shortest));
        if (!fits(changed.back())) return std::nullopt;
      }
      if (good(changed, {}))
        return fmt::format("make the digits {} high", dimension_with_unit(mm(height), units_));
    }
    return std::nullopt;
  }

  std::optional<std::string> by_adding_more(const std::vector<SightNumber>& numbers) {
    std::vector<SightNumber> changed = numbers;
    std::string names;
    for (const SightNumber& one : more_numbers(numbers)) {
      changed.push_back(one);
      names += (names.empty() ? "" : ", ") + one.side;
      if (good(changed, {})) return fmt::format("put the number on more sides: {}", names);
    }
    return std::nullopt;
  }

  const std::vector<Wrap>& wraps_;
  const SightKeys& keys_;
  const Demand& demand_;
  Units units_;
  std::vector<Length> distances_;
  long work_left_ = kMostWork;
};

}  // namespace

std::string sight_advice(const std::vector<Wrap>& wraps, const std::vector<SightNumber>& numbers,
                         const SightKeys& keys, const Demand& demand, Units units) {
  return Advisor(wraps, keys, demand, units).advise(numbers);
}

}  // namespace swathe
