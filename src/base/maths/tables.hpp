#pragma once

#include <array>
#include <cstdint>

#include "base/maths/double_double.hpp"

// Constants that the test "base: the constants of maths" works out again with MPFR. Each
// double-double is the nearest double and then the one nearest to what is left.
namespace swathe::maths {

inline constexpr int kQuarterSteps = 256;
extern const std::array<DoubleDouble, kQuarterSteps + 1> kSines;  ///< of k / 256 of a quarter turn
extern const std::array<DoubleDouble, 129> kArcTangents;          ///< of k / 128

/// A step, 1 / 256 of a quarter turn, in three parts: two of 36 bits, and what is left.
extern const std::array<double, 3> kStepParts;
extern const double kStepsPerRadian;
extern const DoubleDouble kPi, kHalfPi;

/// The digits of 2 / pi after the point, 32 bits each, the first ones first.
extern const std::array<std::uint32_t, 44> kTwoOverPi;
/// Those of pi / 4, the first ones last.
extern const std::array<std::uint32_t, 8> kQuarterPi;

}  // namespace swathe::maths
