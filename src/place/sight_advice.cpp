#include "place/sight_advice.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>
#include <optional>
#include <utility>

#include "place/place.hpp"
#include "place/sight_change.hpp"

namespace swathe {
namespace {

constexpr Length kStep = Length::from_inches(1.0 / 2);    // numbers are tried this far apart
constexpr Length kTaller = Length::from_inches(1.0 / 8);  // and heights
constexpr double kTallest = 2.0;                          // of the height they have

// How much work the search for each kind of change may take: comparing a digit with one solid, or
// with none, counts 1. It is counted and not timed, so that every machine gives the same advice.
// Ordinary jobs need a small part of it.
constexpr long kMostWork = 1'000'000;
constexpr long kCircleWork = 50;  // to find from where on a circle a digit is large enough
constexpr const char* kStoppedShort = "; the search stopped early, so there may be a better change";

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

/// From where on a circle the number can be read, and from where it looks like another number.
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

  /// Without numbers where nothing is wanting, and where nothing was found but words.
  SightChange advise(const std::vector<SightNumber>& numbers) const {
    if (numbers.empty()) return {};
    left_ = kMostWork;
    if (good(numbers, {})) return {};
    using Search = std::optional<SightChange> (Advisor::*)(const std::vector<SightNumber>&) const;
    bool stopped = left_ <= 0;
    for (const Search search : {&Advisor::by_moving, &Advisor::by_adding, &Advisor::by_growing,
                                &Advisor::by_adding_more, &Advisor::by_two}) {
      left_ = kMostWork;
      auto change = (this->*search)(numbers);
      stopped = stopped || left_ <= 0;
      if (!change) continue;
      if (stopped) change->words += kStoppedShort;
      return *std::move(change);
    }
    if (stopped)
      return {
          "we found no change that helps, and no two together; the search stopped early, so there "
          "may be some"};
    return {keys_.blind.empty()
                ? "put bumpers with the number on the bare sides: no change on these bumpers, and "
                  "no two together, are enough"
                : "move what hides the numbers: no change on the bumpers, and no two together, are "
                  "enough"};
  }

 private:
  /// All circles, one eye height after another, in each the demanded distance first.
  using Circles = std::vector<Circle>;

  sight::Scene scene_of(const std::vector<SightNumber>& numbers) const {
    return make_scene(wraps_, numbers, keys_.blind);
  }

  /// Calls visit(k, circle) with what the scene's numbers show on each, until it returns false.
  template <class Visit>
  bool each_circle(const sight::Scene& scene, Visit visit) const {
    std::size_t k = 0, digits = 0;
    for (const NumberInSpace& number : scene.numbers) digits += number.digits.size();
    const long work = static_cast<long>(digits * (1 + scene.solids.size()));
    const long work_on_circle = work + kCircleWork * static_cast<long>(digits);
    for (const Length eye : keys_.eye_height) {
      left_ -= work;
      const Sightlines lines(scene, eye, {keys_.least_angle, kWidestObliquity});
      for (const Length distance : distances_) {
        Circle circle;
        left_ -= work_on_circle;
        for (std::size_t n = 0; n < scene.numbers.size(); ++n) {
          const NumberAround around = around_number(scene, lines, n, distance);
          circle.add(around.whole, around.misleads);
        }
        if (!visit(k++, std::move(circle))) return false;
      }
    }
    return true;
  }

  Circles circles_of(const std::vector<SightNumber>& numbers) const {
    Circles circles;
    each_circle(scene_of(numbers), [&](std::size_t, Circle circle) {
      circles.push_back(std::move(circle));
      return true;
    });
    return circles;
  }

  /// Whether the number can be read from enough of this circle, if the season asks for this circle.
  bool enough(std::size_t k, const Circle& circle) const {
    return k % distances_.size() != 0 || !demand_.viewpoints ||
           meets(circle.whole.measure() / (2 * std::numbers::pi), *demand_.viewpoints);
  }

  /// Whether no number looks like another one from anywhere, and one can be read from enough of
  /// each circle that the season asks for; `others` is what other numbers show. False when the work
  /// is used up.
  bool good(const std::vector<SightNumber>& numbers, const Circles& others) const {
    if (left_ <= 0) return false;
    const auto with_others = [&](std::size_t k, Circle circle) {
      if (!others.empty()) circle.add(others[k].whole, others[k].misleads);
      return circle;
    };
    // What is not enough with nothing in the way is not enough with solids in the way either.
    sight::Scene scene = scene_of(numbers);
    std::vector<sight::Solid> solids = std::move(scene.solids);
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

  /// The side that a number moves toward: to the left seen from outside where `sense` is negative.
  std::string neighbor_of(const std::string& side, double sense) const {
    const Frame& frame = wraps_.front().frame();
    const auto at = frame.side(side);
    assert(at && "a number stands on a side of the frame");
    const int neighbor = sense < 0 ? frame.previous(*at) : frame.next(*at);
    return frame.sides()[static_cast<std::size_t>(neighbor)].name;
  }

  std::optional<SightChange> by_moving(const std::vector<SightNumber>& numbers) const {
    std::optional<SightChange> best;
    double least = 1e300;
    for (std::size_t n = 0; n < numbers.size(); ++n) {
      if (is_split(numbers[n]) || left_ <= 0) continue;
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
            best = {fmt::format("move the {} number {} toward the {} side", numbers[n].side,
                                dimension_with_unit(mm(by), units_),
                                neighbor_of(numbers[n].side, sense)),
                    numbers, n};
            best->numbers[n] = moved(numbers[n], sense * by);
          }
        }
      }
    }
    return best;
  }

  /// Every room that is wide enough for the number, on a side that has none.
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

  std::optional<SightChange> by_adding(const std::vector<SightNumber>& numbers) const {
    const Circles others = circles_of(numbers);
    for (const SightNumber& one : more_numbers(numbers)) {
      if (!good({one}, others)) continue;
      SightChange change{fmt::format("put the number on the {} side too", one.side), numbers};
      change.numbers.push_back(one);
      return change;
    }
    return std::nullopt;
  }

  std::optional<SightChange> by_growing(const std::vector<SightNumber>& numbers) const {
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
        return SightChange{
            fmt::format("make the digits {} high", dimension_with_unit(mm(height), units_)),
            std::move(changed), std::nullopt, mm(height)};
    }
    return std::nullopt;
  }

  std::optional<SightChange> by_adding_more(const std::vector<SightNumber>& numbers) const {
    Circles others = circles_of(numbers);
    std::string names;
    std::vector<SightNumber> all = numbers;
    for (const SightNumber& one : more_numbers(numbers)) {
      names += (names.empty() ? "" : ", ") + one.side;
      all.push_back(one);
      if (good({one}, others)) return SightChange{"put the number on more sides: " + names, all};
      if (left_ <= 0) return std::nullopt;
      // Numbers do not hide each other: add what this one shows instead of sweeping all again.
      const Circles own = circles_of({one});
      for (std::size_t k = 0; k < others.size(); ++k) others[k].add(own[k].whole, own[k].misleads);
    }
    return std::nullopt;
  }

  /// A number on one more side, and what is there moved or made larger. What is left of the work is
  /// shared by all pairs.
  std::optional<SightChange> by_two(const std::vector<SightNumber>& numbers) const {
    using Search = std::optional<SightChange> (Advisor::*)(const std::vector<SightNumber>&) const;
    for (const SightNumber& one : more_numbers(numbers)) {
      std::vector<SightNumber> more = numbers;
      more.push_back(one);
      for (const Search second : {&Advisor::by_growing, &Advisor::by_moving}) {
        if (left_ <= 0) return std::nullopt;
        if (auto change = (this->*second)(more)) {
          change->words =
              fmt::format("put the number on the {} side too, and {}", one.side, change->words);
          return change;
        }
      }
    }
    return std::nullopt;
  }

  const std::vector<Wrap>& wraps_;
  const SightKeys& keys_;
  const Demand& demand_;
  Units units_;
  std::vector<Length> distances_;
  mutable long left_ = 0;  ///< of kMostWork
};

}  // namespace

Advice sight_advice(const std::vector<Wrap>& wraps, const std::vector<SightNumber>& numbers,
                    const std::vector<int>& places, const Job& job, const Demand& demand) {
  SightChange change = Advisor(wraps, job.sight, demand, job.units).advise(numbers);
  Advice advice{std::move(change.words)};
  if (!change.numbers.empty()) advice.mend = keys_of(change, wraps, places, job);
  return advice;
}

}  // namespace swathe
