#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "swathe/job/job.hpp"
#include "swathe/sight/scene.hpp"
#include "swathe/sight/sightlines.hpp"

namespace swathe {

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
  Scene scene;
  Criterion criterion;
  Angle step;                    ///< stretches of bearings narrower than this are not told of
  std::vector<SightRing> rings;  ///< each eye height at the first distance, then at the next
  /// Each eye height at the distance the season names; without one, at the job's nearest.
  std::vector<SightRing> demanded;
  std::string advice;  ///< the smallest change that would meet the season; empty where it is met
};

/// The distance at which a demand is held: what the season names, else the job's nearest.
Length demanded_distance(const SightKeys& keys, std::optional<Length> named);

/// One number on a circle: where it reads whole, and where it reads as another.
struct NumberAround {
  Bearings whole, misleads;
};
NumberAround around_number(const Scene& scene, const Sightlines& lines, std::size_t number,
                           Length distance);

/// What is read on one circle, at exact bearings.
SightRing ring_at(const Scene& scene, const Sightlines& lines, Length distance);

/// Every ring of the job; `named` is the distance the season names.
/// Holds (sweep_test.cpp): (1) each ring's arcs go once round; (2) within an arc seen_from() says
///   the same; (3) a machine turned turns its arcs; (4) a blind box more never adds to what reads.
Sight sweep(Scene scene, const SightKeys& keys, std::optional<Length> named = {});

}  // namespace swathe
