#include "place/choose_places.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <tuple>

#include "rules/practice.hpp"

namespace swathe {
namespace {

constexpr std::size_t kMostLookedAt = 12;
constexpr double kSameShare = 0.02;  // of the circle: shares closer than this count as equal
constexpr double kSameTurn = 5;      // degrees: the same for angles between numbers

/// The smallest angle between two neighboring bearings, degrees; 360 for one alone.
double least_turn(const std::vector<NumeralRoom>& rooms) {
  std::vector<double> bearings;
  for (const NumeralRoom& room : rooms) bearings.push_back(room.bearing_deg);
  std::ranges::sort(bearings);
  double least = bearings.front() + 360 - bearings.back();
  for (std::size_t k = 1; k < bearings.size(); ++k)
    least = std::min(least, bearings[k] - bearings[k - 1]);
  return least;
}

/// From where each room's number can be read, on every circle that counts.
class Serving {
 public:
  Serving(const std::vector<NumeralRoom>& rooms, const SetNumber& number,
          const std::vector<Wrap>& wraps, const SightKeys& keys, const Demand& demand) {
    std::vector<SightNumber> numbers;
    for (const NumeralRoom& room : rooms)
      numbers.push_back(number_in(number, room, 0.5 * (room.from_s + room.to_s)));
    const sight::Scene scene = make_scene(wraps, numbers, keys.blind);
    const Length distance = demanded_distance(keys, demand.distance);
    for (const Length eye : keys.eye_height) {
      const Sightlines lines(scene, eye, {keys.least_angle, kWidestObliquity});
      auto& circle = circles_.emplace_back();
      for (std::size_t n = 0; n < numbers.size(); ++n)
        circle.push_back(around_number(scene, lines, n, distance).whole);
    }
  }

  /// Of the circle from which least can be read in these rooms.
  double share(const std::vector<std::size_t>& choice) const {
    double least = 2 * std::numbers::pi;
    for (const auto& circle : circles_) {
      Bearings read = Bearings::none();
      for (const std::size_t room : choice) read = read | circle[room];
      least = std::min(least, read.measure());
    }
    return least / (2 * std::numbers::pi);
  }

 private:
  std::vector<std::vector<Bearings>> circles_;  ///< of each, one set a room
};

/// To the nearest integer. A half goes up even when rounding has lost its last digits, so that
/// equal choices rank equal on every machine.
double nearest_integer(double number) {
  constexpr double kLost = 1e-6;
  return std::floor(number + 0.5 + kLost);
}

struct Choice {
  std::vector<std::size_t> rooms;
  double share = 0;
};

/// The best of all choices of so many rooms.
Choice best_of(const std::vector<NumeralRoom>& rooms, std::size_t count, const Serving& serving,
               const Demand& demand) {
  Choice best;
  auto best_rank = std::tuple(false, -1.0, -1.0, -1.0);
  std::vector<std::size_t> choice;
  const auto extend = [&](const auto& self, std::size_t from) -> void {
    if (choice.size() == count) {
      std::vector<NumeralRoom> chosen;
      for (const std::size_t k : choice) chosen.push_back(rooms[k]);
      const double length =
          std::accumulate(chosen.begin(), chosen.end(), 0.0,
                          [](double sum, const NumeralRoom& room) { return sum + room.length(); });
      const double share = serving.share(choice);
      const bool enough = !demand.viewpoints || meets(share, *demand.viewpoints);
      const std::tuple rank(enough, std::floor((least_turn(chosen) + 0.5) / kSameTurn),
                            nearest_integer(share / kSameShare), nearest_integer(length));
      if (rank <= best_rank) return;
      best_rank = rank;
      best = {choice, share};
      return;
    }
    for (std::size_t k = from; k < rooms.size(); ++k) {
      choice.push_back(k);
      self(self, k + 1);
      choice.pop_back();
    }
  };
  extend(extend, 0);
  return best;
}

}  // namespace

SightNumber number_in(const SetNumber& number, const NumeralRoom& room, double center_s) {
  SightNumber seen{number.text, room.side, number.largest_space, {}};
  const FlatPoint move = FlatPoint{center_s, 0} - number.ink.middle();
  for (const PlacedDigit& digit : number.digits) {
    const FlatPoint origin = digit.origin + move;
    const plane::Box& ink = number.shape(digit.digit).ink;
    seen.digits.push_back({digit.digit, room.bumper, origin.x + ink.lo.x, origin.x + ink.hi.x,
                           origin.y + ink.lo.y, origin.y + ink.hi.y, 0});
  }
  return seen;
}

std::vector<NumeralRoom> choose_by_sight(const std::vector<NumeralRoom>& fitting,
                                         const SetNumber& number, int least,
                                         const std::vector<Wrap>& wraps, const SightKeys& keys,
                                         const Demand& demand) {
  std::vector<NumeralRoom> rooms = fitting;
  if (rooms.size() > kMostLookedAt) {
    std::ranges::stable_sort(rooms, [](const auto& p, const auto& q) {
      return nearest_integer(p.length() * 1e3) > nearest_integer(q.length() * 1e3);
    });
    rooms.resize(kMostLookedAt);
  }
  const int asked = least > 0 ? least : demand.viewpoints ? 1 : practice::kPlaces;
  if (static_cast<int>(rooms.size()) <= asked) return rooms;

  const Serving serving(rooms, number, wraps, keys, demand);
  std::vector<std::size_t> every(rooms.size());
  std::iota(every.begin(), every.end(), std::size_t{0});
  const double most = serving.share(every);
  Choice best;
  for (std::size_t count = static_cast<std::size_t>(asked); count <= rooms.size(); ++count) {
    best = best_of(rooms, count, serving, demand);
    if (!demand.viewpoints || meets(best.share, *demand.viewpoints)) break;
    // If even all of them are not enough, take only those that add something.
    if (!meets(most, *demand.viewpoints) && best.share > most - kSameShare) break;
  }
  std::vector<NumeralRoom> chosen;
  for (const std::size_t k : best.rooms) chosen.push_back(rooms[k]);
  return chosen;
}

}  // namespace swathe
