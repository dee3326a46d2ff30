#pragma once

// What an observer can read from every side.

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/bumper.hpp"
#include "swathe/job.hpp"
#include "swathe/numeral.hpp"
#include "swathe/plane.hpp"

namespace swathe {

/// The unit way to an observer: bearing 0 straight ahead of the machine (y), counter-clockwise.
inline FlatPoint towards(double bearing) { return plane::left_of(plane::direction(bearing)); }
/// The bearing of a way, 0 to 2 pi.
double bearing_of(FlatPoint way);

/// A part of the full circle of bearings, in radians: what holds from some of them and not from
/// others.
///
/// Holds (bearings_test.cpp): (1) a bearing is in a & b, a | b, !a when the words say so;
///   (2) the measures of a set and of the rest add up to 2 pi.
class Bearings {
 public:
  static Bearings all() { return {true, {}}; }
  static Bearings none() { return {false, {}}; }
  /// From one bearing counter-clockwise to another; all the circle where that is 2 pi on or more.
  static Bearings arc(double from, double to);
  /// Where `holds` changes at these bearings and nowhere else.
  template <class Holds>
  static Bearings between(std::vector<double> changes, Holds holds);

  bool contains(double bearing) const;
  double measure() const;
  bool empty() const { return !before_zero_ && flips_.empty(); }
  bool whole() const { return before_zero_ && flips_.empty(); }
  /// Each stretch as from and to, the latter greater: one over bearing 0 ends past 2 pi.
  std::vector<std::pair<double, double>> arcs() const;
  /// Where the answer changes, rising.
  const std::vector<double>& flips() const { return flips_; }

  friend Bearings operator&(const Bearings& a, const Bearings& b) {
    return merged(a, b, [](bool p, bool q) { return p && q; });
  }
  friend Bearings operator|(const Bearings& a, const Bearings& b) {
    return merged(a, b, [](bool p, bool q) { return p || q; });
  }
  friend Bearings operator!(Bearings a) {
    a.before_zero_ = !a.before_zero_;
    return a;
  }

 private:
  Bearings(bool before_zero, std::vector<double> flips)
      : before_zero_(before_zero), flips_(std::move(flips)) {}
  static Bearings merged(const Bearings& a, const Bearings& b, bool (*both)(bool, bool));
  static std::vector<double> sorted_on_circle(std::vector<double> bearings);

  bool before_zero_;           ///< the answer just before 2 pi
  std::vector<double> flips_;  ///< in [0, 2 pi), rising, an even number of them
};

template <class Holds>
Bearings Bearings::between(std::vector<double> changes, Holds holds) {
  constexpr double kTurn = 6.283185307179586;
  changes = sorted_on_circle(std::move(changes));
  if (changes.empty()) return {holds(0.0), {}};
  const auto after = [&](std::size_t k) {
    const double next = k + 1 < changes.size() ? changes[k + 1] : changes.front() + kTurn;
    return holds(0.5 * (changes[k] + next));
  };
  bool now = after(changes.size() - 1);
  Bearings set{now, {}};
  for (std::size_t k = 0; k < changes.size(); ++k) {
    const bool then = after(k);
    if (then != now) set.flips_.push_back(changes[k]);
    now = then;
  }
  return set;
}

// How large a digit looks, and how far from square on it can still be read.

/// Beyond this no legibility is claimed: the law of oblique_factor() was found to hold up to 65.7
/// deg and to fail from there on. Source: Cai and Green, Estimating the legibility of a single
/// letter E viewed at different display angles, Applied Ergonomics 2013.
inline constexpr Angle kWidestObliquity = degrees(65);

/// The angle a thing takes up square to the line of sight.
/// Source: h = 2 d tan(x / 2), Federal Aviation Administration, Human Factors Design Standard.
Angle visual_angle(Length size, Length distance);

/// How far away a thing still takes up that angle.
Length distance_of(Length size, Angle angle);

/// What of its size a character keeps to the reader, seen this far from square on: equal solid
/// angles are equally legible, so it is the square root of the cosine. 0 from 90 deg on.
/// Source: Cai and Green, LEUKOS 5 (2009), pp. 279-295.
double oblique_factor(Angle off_square);

// What an observer looks at: digits on the cloth, and solids that may hide them.

/// The box of one digit's ink on the cloth that is on its bumper (before stretch is taken out).
struct SightDigit {
  char digit = '0';
  int bumper = 0;  ///< number in the job
  double from_s = 0, to_s = 0, from_u = 0, to_u = 0;
  double stroke = 0;  ///< median width
};

/// One number as it is to be read, its digits in order: all on one side, or split.
struct SightNumber {
  std::string text;
  std::string side;  ///< that it is on; of its first digit where it is split
  double space = 0;  ///< widest ink-to-ink space between neighboring digits
  std::vector<SightDigit> digits;
};

/// The numbers as placed. Requires: places on the wrap, not moved by the pattern's stretch.
std::vector<SightNumber> numbers_to_see(const Numerals& numerals);

namespace sight {

/// A convex body as plane outlines at rising heights, corner over corner, straight in between.
struct Solid {
  struct Level {
    double z = 0;
    plane::Polygon plan;  ///< convex, counter-clockwise; as many corners at every level
  };
  std::string name;           ///< "bumper B", "blind box 1"
  std::vector<Level> levels;  ///< two or more; of none it is empty, at height 0, and hides nothing

  double bottom() const { return levels.empty() ? 0.0 : levels.front().z; }
  double top() const { return levels.empty() ? 0.0 : levels.back().z; }
  /// Requires: bottom() <= z <= top().
  plane::Polygon plan_at(double z) const;
};

}  // namespace sight

/// The solids of a bumper, one a side it covers, then those of padding that runs on past a board.
/// Rounds are chords within kSolidChord.
std::vector<sight::Solid> bumper_solids(const Wrap& wrap);
inline constexpr Length kSolidChord = mm(0.1);
sight::Solid blind_solid(const BlindKeys& box, int number);

/// A digit where it is in space.
struct DigitInSpace {
  char digit = '0';
  SpacePoint middle, normal;            ///< of its box; normal outward, unit
  std::array<SpacePoint, 4> corners;    ///< bottom left, bottom right, top right, top left
  std::array<SpacePoint, 4> normals;    ///< there
  std::vector<SpacePoint> left, right;  ///< its upright edges, rising; chords
  double height = 0, width = 0;         ///< along the cloth
  double seen_height = 0;               ///< square on
  double stroke = 0;
};

struct NumberInSpace {
  std::string text;
  std::string side;
  double space = 0;
  double bearing = 0;  ///< the way its middle digit looks; radians
  std::vector<DigitInSpace> digits;
  std::vector<SightDigit> boxes;  ///< of the digits, on the cloth
};

namespace sight {

/// Everything in one place; heights from the floor.
struct Scene {
  FlatPoint center;  ///< of the machine: observers walk round it
  std::vector<NumberInSpace> numbers;
  std::vector<sight::Solid> solids;
};

}  // namespace sight

/// Requires: a bumper at least; every digit's box on the cloth of one side, clear of darts.
sight::Scene make_scene(const std::vector<Wrap>& wraps, const std::vector<SightNumber>& numbers,
                        const std::vector<BlindKeys>& blind);

namespace sight {

/// When a digit counts as legible.
struct Criterion {
  Angle least = Angle::from_arcmin(15);  ///< of its height
  Angle widest = kWidestObliquity;
};

}  // namespace sight

/// What an observer sees of one digit.
struct DigitSeen {
  bool turned_away = false;  ///< some of it faces away from the observer
  int hidden_by = -1;        ///< number of a solid that stands before some of it; -1 for none
  Angle obliquity;           ///< of the line of sight to its middle, from square on
  Angle height;              ///< visual angle of its seen height, square on at this distance
  Angle stroke;              ///< of its stroke
  Angle effective;           ///< the height's, obliquity counted
  bool legible = false;      ///< wholly in view, and as large and square on as the criterion asks

  bool in_view() const { return !turned_away && hidden_by < 0; }
};

/// What an observer sees of one number.
struct NumberSeen {
  std::vector<DigitSeen> digits;  ///< in order
  std::string text;               ///< the legible ones

  bool whole() const;       ///< every digit is legible
  bool misleading() const;  ///< some are legible and others hidden: looks like another number
};

/// What can be seen of each number from one height above the floor.
///
/// A digit is in view where all of its ink's box is: where the cloth under it faces the observer
/// and no solid stands between. The places at one height from which a convex solid hides some of a
/// flat strip of a digit are convex: the solid itself, and all beyond it in line with the strip. So
/// each strip has one polygon a solid, and a circle round the machine is cut by their edges at
/// exact bearings.
///
/// Holds (sightlines_test.cpp, cgal/sight/rays_test.cpp): (1) around() changes where seen_from()
/// does;
///   (2) rays cast at a fine mesh say the same; (3) a solid more never brings more into view.
class Sightlines {
 public:
  Sightlines(const sight::Scene& scene, Length eye_height, sight::Criterion criterion = {});

  Length eye_height() const { return mm(eye_); }
  /// One for each number. Requires: a place outside the bumpers.
  std::vector<NumberSeen> seen_from(FlatPoint plan) const;
  DigitSeen digit_from(std::size_t number, std::size_t digit, FlatPoint plan) const;

  /// One digit on a circle round the machine's center.
  struct Around {
    Bearings in_view, legible;
  };
  Around around(std::size_t number, std::size_t digit, Length distance) const;

 private:
  struct Shadow {
    int solid = 0;
    plane::Polygon from;  ///< convex: places that see the digit hidden, in part or whole
  };
  /// Places p with dot(way, p) >= least.
  struct HalfPlane {
    FlatPoint way;
    double least = 0;
  };
  struct Lines {
    std::array<HalfPlane, 4> faces;  ///< one for each corner of the box
    std::vector<Shadow> shadows;
  };
  Lines lines_of(const DigitInSpace& digit) const;
  Bearings large_enough(const DigitInSpace& digit, double distance) const;
  const DigitInSpace& digit_at(std::size_t number, std::size_t digit) const {
    return scene_->numbers[number].digits[digit];
  }

  const sight::Scene* scene_;  ///< stays the caller's, and must outlive this
  double eye_;
  sight::Criterion criterion_;
  std::vector<std::vector<Lines>> lines_;  ///< of each digit of each number
};

enum class Reads {
  Number,   ///< at least one place shows the whole number
  Another,  ///< none does, and what one of them shows reads as another number
  Nothing,
};

/// A stretch of bearings from which the same is read. Degrees, 0 straight ahead of the machine,
/// counter-clockwise; `to` is greater than `from`, past 360 where the stretch goes over 0.
struct SightArc {
  double from_deg = 0, to_deg = 0;
  Reads reads = Reads::Nothing;
  std::string text;  ///< as read: the number, or the part of it that misleads
  int number = -1;   ///< that it is read on, in the scene; -1 for none
};

/// "301 to 61 deg": bearings as they stand on a compass card; "all round" for the whole circle.
std::string arc_words(double from_deg, double to_deg);

/// Neighboring stretches of one kind as one, with all that is read there: "29 to 119 (2, 20, 86)".
/// Those narrower than `step` are left out; "nowhere" where there is none.
std::string arcs_in_words(const std::vector<SightArc>& arcs, Reads reads, Angle step);

/// What one number gives on a circle.
struct NumberServes {
  std::string side;
  std::vector<std::pair<double, double>> arcs_deg;  ///< from where it reads whole, rising
  Length
      farthest;  ///< from the machine's center, at which it still reads; zero where it never does
  double worst_deg = 0;      ///< bearing of those arcs at which it looks smallest
  double worst_off_deg = 0;  ///< obliquity there, of the digit that looks smallest
  double worst_arcmin = 0;   ///< its visual angle there, obliquity counted
  double square_deg = 0;     ///< bearing of those arcs at which it looks largest
  double square_arcmin = 0;
};

/// All round the machine at one distance from its center and one eye height.
struct SightRing {
  Length distance, eye_height;
  std::vector<SightArc> arcs;  ///< neighbors differ; together the full circle
  std::vector<NumberServes> numbers;

  double fraction(Reads reads) const;  ///< of the circle
  /// The widest stretch of a kind, if any is as wide as `step`.
  const SightArc* widest(Reads reads, Angle step) const;
};

/// What can be read of the job's numbers, from every side.
struct Sight {
  sight::Scene scene;
  sight::Criterion criterion;
  Angle step;                    ///< stretches of bearings narrower than this are not told of
  std::vector<SightRing> rings;  ///< each eye height at the first distance, then at the next
  /// Each eye height at the distance the season names; without one, at the job's nearest.
  std::vector<SightRing> demanded;
  std::string advice;  ///< the smallest change that would meet the season; empty where it is met
  std::vector<KeyChange> mend{};  ///< of the advice, where it comes to a change of keys
};

/// The distance at which a demand is held: what the season names, else the job's nearest.
Length demanded_distance(const SightKeys& keys, std::optional<Length> named);

/// One number on a circle: where it reads whole, and where it reads as another.
struct NumberAround {
  Bearings whole, misleads;
};
NumberAround around_number(const sight::Scene& scene, const Sightlines& lines, std::size_t number,
                           Length distance);

/// What is read on one circle, at exact bearings.
SightRing ring_at(const sight::Scene& scene, const Sightlines& lines, Length distance);

/// Every ring of the job; `named` is the distance the season names.
/// Holds (sweep_test.cpp): (1) each ring's arcs go once round; (2) within an arc seen_from() says
///   the same; (3) a machine turned turns its arcs; (4) a blind box more never adds to what reads.
Sight sweep(sight::Scene scene, const SightKeys& keys, std::optional<Length> named = {});

}  // namespace swathe
