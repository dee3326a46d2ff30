#pragma once

#include <mpfr.h>

// The functions of maths to the nearest double by MPFR, which rounds correctly (L. Fousse and
// others, "MPFR: a multiple-precision binary floating-point library with correct rounding", ACM
// TOMS 33, 2007). MPFR's own exponent range is set to a double's, and subnormals are rounded as
// such.
namespace swathe::test {

class Number {
 public:
  explicit Number(mpfr_prec_t bits = 53) { mpfr_init2(value_, bits); }
  explicit Number(double value) : Number() { mpfr_set_d(value_, value, MPFR_RNDN); }
  Number(const Number&) = delete;
  Number& operator=(const Number&) = delete;
  ~Number() { mpfr_clear(value_); }
  operator mpfr_ptr() { return value_; }

 private:
  mpfr_t value_;
};

/// What `compute(result)` sets, as a double; it returns which way it rounded, as MPFR does.
template <class Compute>
double nearest_double(Compute compute) {
  Number result;
  const int way = compute(static_cast<mpfr_ptr>(result));
  const mpfr_exp_t least = mpfr_get_emin(), most = mpfr_get_emax();
  mpfr_set_emin(-1073);
  mpfr_set_emax(1024);
  mpfr_subnormalize(result, mpfr_check_range(result, way, MPFR_RNDN), MPFR_RNDN);
  mpfr_set_emin(least);
  mpfr_set_emax(most);
  return mpfr_get_d(result, MPFR_RNDN);
}

using OfOne = int (*)(mpfr_ptr, mpfr_srcptr, mpfr_rnd_t);
using OfTwo = int (*)(mpfr_ptr, mpfr_srcptr, mpfr_srcptr, mpfr_rnd_t);

inline double correct(OfOne of, double a) {
  Number x(a);
  return nearest_double([&](mpfr_ptr to) { return of(to, x, MPFR_RNDN); });
}

inline double correct(OfTwo of, double a, double b) {
  Number x(a), y(b);
  return nearest_double([&](mpfr_ptr to) { return of(to, x, y, MPFR_RNDN); });
}

inline double correct_power(double base, int over, int under) {
  Number raised(mpfr_prec_t{16 * 53});  // holds it without error
  mpfr_set_d(raised, base, MPFR_RNDN);
  mpfr_pow_ui(raised, raised, static_cast<unsigned long>(over), MPFR_RNDN);
  return nearest_double([&](mpfr_ptr to) {
    return mpfr_rootn_ui(to, raised, static_cast<unsigned long>(under), MPFR_RNDN);
  });
}

}  // namespace swathe::test
