#pragma once

#include <vector>

#include "swathe/base.hpp"
#include "swathe/job.hpp"
#include "swathe/numeral.hpp"
#include "swathe/plane.hpp"

// What is cut for a number, by the way it is put on the cloth.
namespace swathe {

/// Cloth left round a digit that is sewn on, to be turned under. Common practice, no source.
inline constexpr Length kSewAllowance = Length::from_inches(1.0 / 4);

/// Whether the middles of digits have to hang on to the sheet that is cut.
bool needs_bridges(NumeralMethod method);

/// The lines of one digit's sheet, in the digit's own coordinates.
struct DigitLines {
  plane::Region cut;      ///< what the blade follows
  plane::Region stitch;   ///< where it is sewn down, and how it lies in its place; else empty
  bool mirrored = false;  ///< drawn as seen from the back
};

/// Which of a digit's two pieces, where it has a white outline: its own shape, or the larger white
/// one that lies under it.
enum class DigitLayer { Fill, White };

/// Requires: for the white layer, a digit that has one.
/// Holds:
///   (1) stencil and paint mask: the openings, bridges left standing;
///   (2) iron-on: the outline mirrored about the middle of its ink, since the film is cut from its
///       back; mirrored once more it is the outline;
///   (3) sew-on: the cut line lies kSewAllowance outside the stitch line, in the counters too; a
///       counter too narrow for that stays closed on the sheet, to be slit by hand.
DigitLines digit_lines(const Digit& digit, NumeralMethod method,
                       DigitLayer layer = DigitLayer::Fill);

/// The whole number's openings in one sheet, for a mask that is taped on: each digit's stencil at
/// its place, x and y from the number's own center.
/// Requires: a placed number and the digits it was made from.
plane::Region number_mask(const PlacedNumeral& placed, const std::vector<Digit>& digits,
                          DigitLayer layer = DigitLayer::Fill);

/// Share of a digit's stroke that its bridges cover, 0 to 1.
double taken_by_bridges(const Digit& digit);

}  // namespace swathe
