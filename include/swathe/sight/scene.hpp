#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "swathe/bumper/wrap.hpp"
#include "swathe/job/job.hpp"
#include "swathe/numeral/numerals.hpp"
#include "swathe/plane/path.hpp"

// What an observer looks at: digits on the cloth, and solids that may hide them.
namespace swathe {

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

/// A convex body as plane outlines at rising heights, corner over corner, straight in between.
struct Solid {
  struct Level {
    double z = 0;
    Polygon plan;  ///< convex, counter-clockwise; as many corners at every level
  };
  std::string name;           ///< "bumper B", "blind box 1"
  std::vector<Level> levels;  ///< two or more

  double bottom() const { return levels.front().z; }
  double top() const { return levels.back().z; }
  /// Requires: bottom() <= z <= top().
  Polygon plan_at(double z) const;
};

/// The solids of a bumper, one a side it covers. Rounds are chords within kSolidChord.
std::vector<Solid> bumper_solids(const Wrap& wrap);
inline constexpr Length kSolidChord = mm(0.1);
Solid blind_solid(const BlindKeys& box, int number);

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

/// Everything in one place; heights from the floor.
struct Scene {
  FlatPoint center;  ///< of the machine: observers walk round it
  std::vector<NumberInSpace> numbers;
  std::vector<Solid> solids;
};

/// Requires: a bumper at least; every digit's box on the cloth of one side, clear of darts.
Scene make_scene(const std::vector<Wrap>& wraps, const std::vector<SightNumber>& numbers,
                 const std::vector<BlindKeys>& blind);

}  // namespace swathe
