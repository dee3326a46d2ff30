#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "swathe/base/length.hpp"
#include "swathe/sight/bearings.hpp"
#include "swathe/sight/scene.hpp"
#include "swathe/sight/visual_angle.hpp"

namespace swathe {

/// When a digit counts as legible.
struct Criterion {
  Angle least = Angle::from_arcmin(15);  ///< of its height
  Angle widest = kWidestObliquity;
};

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
  Sightlines(const Scene& scene, Length eye_height, Criterion criterion = {});

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
    Polygon from;  ///< convex: places that see the digit hidden, in part or whole
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

  const Scene* scene_;  ///< stays the caller's, and must outlive this
  double eye_;
  Criterion criterion_;
  std::vector<std::vector<Lines>> lines_;  ///< of each digit of each number
};

}  // namespace swathe
