#pragma once

#include <vector>

#include "swathe/job/job.hpp"
#include "swathe/numeral/numerals.hpp"
#include "swathe/type/digits.hpp"

namespace swathe {

/// Digits that were made for one job, which a caller keeps for the next: measuring strokes and
/// bridging take most of a pass.
struct KeptDigits {
  NumeralMethod method = NumeralMethod::Stencil;
  Length bridge, outline;
  std::vector<Digit> digits;
};

/// The kept digit that making this outline anew would come to, but for its count; none where the
/// outline, by a single bit, or what is made of it differs.
const Digit* kept_digit(const KeptDigits& kept, const DigitOutline& drawn, const NumeralKeys& keys);

}  // namespace swathe
