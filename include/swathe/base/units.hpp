#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "swathe/base/length.hpp"

namespace swathe {

/// The unit of bare numbers in a job, and of printed dimensions.
enum class Units { Inches, Millimeters };

/// Reads a length with its unit, or a bare number in `bare`.
///
/// Understands "32 1/4 in", "32.25in", "2 ft 8 1/4 in", `2' 8-1/4"`, "819 mm", "81.9 cm", "1 m",
/// "1/4 yd". One leading minus makes it negative. Does not depend on the locale. Nothing if the
/// text is not a length, or not finite.
std::optional<Length> parse_length(std::string_view text, Units bare);

/// Reads "90 deg", "15 arcmin", "0.5 rad"; a bare number is degrees.
std::optional<Angle> parse_angle(std::string_view text);

/// A length as it stands on a sheet, without its unit: a reduced fraction to the nearest 1/16 in
/// ("32 1/4", "0", "1/16"; halfway goes up in size), or millimeters to the nearest whole ("819").
std::string dimension(Length length, Units units);

/// The same with its unit: "32 1/4 in", "819 mm".
std::string dimension_with_unit(Length length, Units units);

/// A distance to walk, in feet or meters to a tenth: "60 ft", "18.3 m".
std::string walked(Length length, Units units);

/// A length of cloth, in yards to a sixteenth: "2 1/2 yd".
std::string yards(Length length);

/// A measured value for tables and findings: decimals enough to tell it from its limit
/// ("4.125 in", "104.8 mm").
std::string measured(Length length, Units units);

/// A length or a rule's value in words, exactly: "3 3/4 in" where it is a multiple of 1/64 in, else
/// as measured(); in millimeters to 1/100 ("95.25 mm").
std::string exact(Length length, Units units);

/// A number with at most `decimals` places, no trailing zeros, never "-0"; the same in any locale.
std::string plain_number(double value, int decimals);

/// Reads a decimal number that fills the whole text; the same in any locale.
std::optional<double> parse_number(std::string_view text);

}  // namespace swathe
