#pragma once

#include "numeral/size.hpp"
#include "swathe/base.hpp"
#include "swathe/job.hpp"
#include "swathe/numeral.hpp"

namespace swathe {

/// One digit, measured and made ready for the job's method; not counted yet.
/// Refuses: as make_stencil().
Outcome<Digit> made_digit(const DigitOutline& drawn, const NumeralKeys& keys, Units units);

/// Whether more than half of the digit's stroke, bridges taken off, is at least `stroke` wide. A
/// digit that cannot be bridged has no such stroke.
bool keeps_stroke(const DigitOutline& drawn, const NumeralKeys& keys, Length stroke);
/// The same of every digit of a number.
bool keeps_stroke(const SetNumber& number, const NumeralKeys& keys, Length stroke);

}  // namespace swathe
