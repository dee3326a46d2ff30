#pragma once

#include <cfloat>
#include <cmath>

// Numbers of twice a double's digits, as the sum of two doubles, the second at most half a unit in
// the last place of the first. Every step is one IEEE operation, so no machine differs.
// Source: T. J. Dekker, "A floating-point technique for extending the available precision",
//   Numerische Mathematik 18 (1971); Muller and others, Handbook of Floating-Point Arithmetic (from
//   memory).
namespace swathe::maths {

static_assert(FLT_EVAL_METHOD == 0, "each operation is rounded to double");

struct DoubleDouble {
  double hi = 0, lo = 0;

  friend DoubleDouble operator-(DoubleDouble a) { return {-a.hi, -a.lo}; }
};

/// a + b without error, where a is zero or no smaller than b.
inline DoubleDouble fast_two_sum(double a, double b) {
  const double sum = a + b;
  return {sum, b - (sum - a)};
}

/// a + b without error (Knuth).
inline DoubleDouble two_sum(double a, double b) {
  const double sum = a + b, of_b = sum - a;
  return {sum, (a - (sum - of_b)) + (b - of_b)};
}

/// a b without error. Requires: a and b below 2^990, the product zero or above 2^-960.
inline DoubleDouble two_product(double a, double b) {
  constexpr double kSplitter = 134217729;  // 2^27 + 1
  const double a_far = kSplitter * a, a_hi = a_far - (a_far - a), a_lo = a - a_hi;
  const double b_far = kSplitter * b, b_hi = b_far - (b_far - b), b_lo = b - b_hi;
  const double product = a * b;
  return {product, ((a_hi * b_hi - product) + a_hi * b_lo + a_lo * b_hi) + a_lo * b_lo};
}

// The next four are within some 2^-102 of their result, but for a sum that cancels.

inline DoubleDouble sum(DoubleDouble a, DoubleDouble b) {
  const DoubleDouble s = two_sum(a.hi, b.hi);
  return fast_two_sum(s.hi, s.lo + (a.lo + b.lo));
}

inline DoubleDouble product(DoubleDouble a, DoubleDouble b) {
  const DoubleDouble p = two_product(a.hi, b.hi);
  return fast_two_sum(p.hi, p.lo + (a.hi * b.lo + a.lo * b.hi));
}

inline DoubleDouble quotient(DoubleDouble a, DoubleDouble b) {
  const double q = a.hi / b.hi;
  const DoubleDouble p = two_product(q, b.hi);
  return fast_two_sum(q, (((a.hi - p.hi) - p.lo) + (a.lo - q * b.lo)) / b.hi);
}

/// Requires: a above zero.
inline DoubleDouble square_root(DoubleDouble a) {
  const double root = std::sqrt(a.hi);
  const DoubleDouble p = two_product(root, root);
  return fast_two_sum(root, (((a.hi - p.hi) - p.lo) + a.lo) / (2 * root));
}

}  // namespace swathe::maths
