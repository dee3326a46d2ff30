#include "base/maths.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <bit>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <limits>
#include <numbers>
#include <string>
#include <vector>

#include "base/maths/arguments.hpp"
#include "base/maths/correct.hpp"
#include "base/maths/quick.hpp"
#include "base/maths/slow.hpp"
#include "base/maths/tables.hpp"
#include "support/drawn.hpp"

using namespace swathe;
using maths::DoubleDouble, maths::Estimate;
using test::correct;
namespace quick = maths::quick;

namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
constexpr double kNoNumber = std::numeric_limits<double>::quiet_NaN();

bool same_bits(double a, double b) {
  if (std::isnan(a) || std::isnan(b)) return std::isnan(a) && std::isnan(b);
  return std::bit_cast<std::uint64_t>(a) == std::bit_cast<std::uint64_t>(b);
}

/// Counts results that are not the right ones, and tells the first of them.
class Tally {
 public:
  explicit Tally(std::string what) : what_(std::move(what)) {}
  ~Tally() {
    CHECK_MESSAGE(wrong_ == 0, fmt::format("{}: {} of {} wrong; {}", what_, wrong_, held_, first_));
    CHECK(held_ > 0);
  }
  void hold(double given, double right, double a, double b = 0) {
    ++held_;
    if (same_bits(given, right)) return;
    if (wrong_++ == 0) first_ = fmt::format("({:a}, {:a}) gave {:a}, not {:a}", a, b, given, right);
  }

 private:
  std::string what_, first_;
  int held_ = 0, wrong_ = 0;
};

std::uint64_t seed() {
  const char* text = std::getenv("SWATHE_SEED");
  return text ? std::stoull(text) : std::random_device{}();
}

/// How many arguments each function is held against: SWATHE_DRAWN, or this.
int drawn_arguments(int usual) {
  const char* text = std::getenv("SWATHE_DRAWN");
  return text ? std::stoi(text) : usual;
}

struct OfAngle {
  const char* name;
  double (*ours)(double);
  test::OfOne right;
  Estimate (*quick)(double);
  double (*slow)(double);
};
const OfAngle kOfAngle[] = {{"sin", maths::sin, mpfr_sin, quick::sine, maths::slow::sine},
                            {"cos", maths::cos, mpfr_cos, quick::cosine, maths::slow::cosine},
                            {"tan", maths::tan, mpfr_tan, quick::tangent, maths::slow::tangent}};

}  // namespace

TEST_CASE("base: maths (1), drawn arguments, held against MPFR") {
  const std::uint64_t from = seed();
  INFO("replay with SWATHE_SEED=" << from);
  const int count = drawn_arguments(100'000);
  test::Arguments draw(from);
  for (const OfAngle& of : kOfAngle) {
    Tally tally(of.name);
    for (int k = 0; k < count; ++k) {
      const double a = draw.angle();
      tally.hold(of.ours(a), correct(of.right, a), a);
    }
  }
  Tally acos("acos"), atan("atan"), atan2("atan2"), hypot("hypot"), power("power");
  for (int k = 0; k < count; ++k) {
    const double cosine = draw.cosine(), tangent = draw.tangent();
    acos.hold(maths::acos(cosine), correct(mpfr_acos, cosine), cosine);
    atan.hold(maths::atan(tangent), correct(mpfr_atan, tangent), tangent);
    const double x = draw.coordinate(), y = draw.coordinate(x);
    atan2.hold(maths::atan2(y, x), correct(mpfr_atan2, y, x), y, x);
    hypot.hold(maths::hypot(x, y), correct(mpfr_hypot, x, y), x, y);
    const double base = draw.base();
    const int over = draw.whole(1, 16), under = draw.whole(1, 6);
    power.hold(maths::power(base, over, under), test::correct_power(base, over, under), base,
               100 * over + under);
    power.hold(maths::power(base, 12, 5), test::correct_power(base, 12, 5), base, 1205);
  }
}

// Values next to the middle between two doubles, so that it takes many digits to round them. The
// first six are of the tables of V. Lefevre and J.-M. Muller (from memory; what is said of each is
// how far from the middle it lies, in half units of the last place, by 400 bits of another
// library); the rest the worst of 30,000,000 drawn. The 2^797 is next to a multiple of a quarter
// turn as no other double is (W. Kahan, from memory).
TEST_CASE("base: maths (1), hard arguments, held against MPFR") {
  struct Hard {
    const char* name;
    double (*ours)(double);
    test::OfOne right;
    double a;
  };
  const Hard hard[] = {{"sin", maths::sin, mpfr_sin, 0x1.598bae9e632f6p-7},     // 2^-59.1
                       {"tan", maths::tan, mpfr_tan, 0x1.dffffffffff1fp-22},    // 2^-78.5
                       {"acos", maths::acos, mpfr_acos, 0x1.53ea6c7255e88p-4},  // 2^-57.7
                       {"tan", maths::tan, mpfr_tan, 0x1.67a8b89ec2a5ep0},
                       {"sin", maths::sin, mpfr_sin, 0x1.e0000000001c2p-20},  // next to a double
                       {"cos", maths::cos, mpfr_cos, 0x1.8000000000009p-23},  // likewise
                       {"sin", maths::sin, mpfr_sin, 0x1.90486002186acp0},
                       {"cos", maths::cos, mpfr_cos, 0x1.03e82d043078p1},
                       {"tan", maths::tan, mpfr_tan, 0x1.d783d7e96cda6p-10},
                       {"tan", maths::tan, mpfr_tan, 0x1.8000000000008p-25},  // 2^-44.5
                       {"atan", maths::atan, mpfr_atan, 0x1.92fa0e45f5925p-9},
                       {"acos", maths::acos, mpfr_acos, 0x1.40812d931d19cp-3},
                       {"sin", maths::sin, mpfr_sin, 0x1.b000000011febp-8}};
  Tally tally("hard");
  for (const Hard& of : hard)
    for (const double a : {of.a, -of.a}) {
      CAPTURE(of.name);
      tally.hold(of.ours(a), correct(of.right, a), a);
    }
  for (const OfAngle& of : kOfAngle)
    for (const double a : {6381956970095103 * 0x1p797, 22.0, 355.0, 0x1.fffffffffffffp1023, 1024.0,
                           std::nextafter(1024.0, 2000.0), 0x1p-27, std::nextafter(0x1p-27, 0.0)})
      tally.hold(of.ours(a), correct(of.right, a), a);
  tally.hold(maths::atan2(0x1.f2f13711dce75p10, 0x1.d7791e8d80b42p6),
             correct(mpfr_atan2, 0x1.f2f13711dce75p10, 0x1.d7791e8d80b42p6), 0);
  for (int power = -1074; power < 1024; ++power) {
    const double a = std::ldexp(1.0, power);
    tally.hold(maths::atan2(a, 3.0), correct(mpfr_atan2, a, 3.0), a);
    tally.hold(maths::atan2(3.0, -a), correct(mpfr_atan2, 3.0, -a), a);
    tally.hold(maths::atan(1 + a), correct(mpfr_atan, 1 + a), a);
  }
  for (int power = 1; power < 54; ++power) {
    const double a = 1 - std::ldexp(1.0, -power);
    tally.hold(maths::acos(a), correct(mpfr_acos, a), a);
    tally.hold(maths::acos(-a), correct(mpfr_acos, -a), -a);
  }
}

// The square of m^2 + n^2, a number of 54 bits and odd, is that of m^2 - n^2 and of 2 m n, which
// are doubles: the root is the very middle between two doubles. Source: Euclid, Elements X, 29.
TEST_CASE("base: maths (1), hypot in the middle between two doubles goes to the even one") {
  const std::uint64_t from = seed();
  INFO("replay with SWATHE_SEED=" << from);
  std::mt19937_64 rng(from);
  Tally tally("hypot");
  int middles = 0;
  for (int k = 0; k < 20'000; ++k) {
    const std::uint64_t m = 90'000'000 + rng() % 30'000'000, n = 1 + rng() % 60'000'000;
    const std::uint64_t x = m * m - n * n, y = 2 * m * n, root = m * m + n * n;
    constexpr std::uint64_t kLimit = std::uint64_t{1} << 53;
    if (root % 2 == 0 || root < kLimit || root >= 2 * kLimit || x >= kLimit || y / 2 >= kLimit)
      continue;
    ++middles;
    const auto a = static_cast<double>(x), b = static_cast<double>(y);
    tally.hold(maths::hypot(a, b), correct(mpfr_hypot, a, b), a, b);
  }
  CHECK(middles > 1000);
}

// What the quick way leaves open is one in a thousand or fewer: here the slow way takes all.
TEST_CASE("base: maths (1), the slow way alone, held against MPFR") {
  const std::uint64_t from = seed();
  INFO("replay with SWATHE_SEED=" << from);
  const int count = drawn_arguments(100'000) / 20;
  test::Arguments draw(from + 1);
  for (const OfAngle& of : kOfAngle) {
    Tally tally(of.name);
    for (int k = 0; k < count; ++k) {
      const double a = draw.angle();
      tally.hold(of.slow(a), correct(of.right, a), a);
    }
  }
  Tally acos("acos"), atan2("atan2"), below("just_below_quotient"), hypot("hypot"), power("power");
  for (int k = 0; k < count; ++k) {
    const double cosine = draw.cosine();
    if (std::abs(cosine) > 0x1p-100)
      acos.hold(maths::slow::arc_cosine(cosine), correct(mpfr_acos, cosine), cosine);
    const double x = draw.of_size(-10, 10), y = draw.of_size(-130, 100);
    atan2.hold(maths::slow::angle(y, x), correct(mpfr_atan2, y, x), y, x);
    // Subnormal results, where the quotient may be the very middle between two doubles.
    const double small = draw.whole(1, 1000) * 0x1p-1074, over = draw.whole(1, 16);
    below.hold(maths::slow::just_below_quotient(small, over), correct(mpfr_atan2, small, over),
               small, over);
    const double a = draw.coordinate(), b = draw.coordinate(a);
    hypot.hold(maths::slow::hypotenuse(a, b), correct(mpfr_hypot, a, b), a, b);
    const double base = draw.base();
    const int up = draw.whole(1, 16), under = draw.whole(1, 6);
    power.hold(maths::slow::power(base, up, under), test::correct_power(base, up, under), base,
               100 * up + under);
  }
}

namespace {

/// Holds that an estimate is no further off than it says: `right` sets the value in 300 bits.
class ErrorBound {
 public:
  explicit ErrorBound(std::string what) : what_(std::move(what)) {}
  ~ErrorBound() {
    CHECK_MESSAGE(worst_ <= 0.75, fmt::format("{}: {} of its bound, at {:a}", what_, worst_, at_));
    CHECK(worst_ > 0.0);
  }
  template <class Right>
  void hold(const Estimate& estimate, double at, Right right) {
    right(static_cast<mpfr_ptr>(wide_));
    mpfr_sub_d(wide_, wide_, estimate.value.hi, MPFR_RNDN);
    mpfr_sub_d(wide_, wide_, estimate.value.lo, MPFR_RNDN);
    const double share = std::abs(mpfr_get_d(wide_, MPFR_RNDN)) / estimate.error;
    if (share > worst_) {
      worst_ = share;
      at_ = at;
    }
  }

 private:
  std::string what_;
  test::Number wide_{mpfr_prec_t{300}};
  double worst_ = 0, at_ = 0;
};

}  // namespace

TEST_CASE("base: no quick estimate is further off than it says") {
  const std::uint64_t from = seed();
  INFO("replay with SWATHE_SEED=" << from);
  const int count = drawn_arguments(100'000) / 4;
  test::Arguments draw(from + 2);
  for (const OfAngle& of : kOfAngle) {
    ErrorBound bound(of.name);
    for (int k = 0; k < count; ++k) {
      const double a = draw.angle();
      if (std::abs(a) < 0x1p-30 || std::abs(a) > quick::kMostRadians) continue;
      test::Number x(a);
      bound.hold(of.quick(a), a, [&](mpfr_ptr to) { of.right(to, x, MPFR_RNDN); });
    }
  }
  ErrorBound acos("acos"), angle("atan2"), hypot("hypot"), power("power");
  for (int k = 0; k < count; ++k) {
    const double cosine = draw.cosine();
    test::Number c(cosine);
    if (std::abs(cosine) > 0x1p-100)
      acos.hold(quick::arc_cosine(cosine), cosine,
                [&](mpfr_ptr to) { mpfr_acos(to, c, MPFR_RNDN); });
    const double x = draw.of_size(-10, 10), y = draw.of_size(-60, 20);
    test::Number of_x(x), of_y(y);
    angle.hold(quick::angle(y, x), y, [&](mpfr_ptr to) { mpfr_atan2(to, of_y, of_x, MPFR_RNDN); });
    hypot.hold(quick::hypotenuse(x, y), y,
               [&](mpfr_ptr to) { mpfr_hypot(to, of_y, of_x, MPFR_RNDN); });
    const int over = draw.whole(1, 16), under = draw.whole(1, 6);
    const double base = std::abs(x);
    power.hold(quick::power(base, over, under), base, [&](mpfr_ptr to) {
      test::Number raised(mpfr_prec_t{16 * 53});
      mpfr_set_d(raised, base, MPFR_RNDN);
      mpfr_pow_ui(raised, raised, static_cast<unsigned long>(over), MPFR_RNDN);
      mpfr_rootn_ui(to, raised, static_cast<unsigned long>(under), MPFR_RNDN);
    });
  }
}

TEST_CASE("base: the constants of maths") {
  test::Number value(mpfr_prec_t{2000}), part(mpfr_prec_t{2000});
  const auto is = [&](DoubleDouble constant) {
    const double hi = mpfr_get_d(value, MPFR_RNDN);
    mpfr_sub_d(part, value, hi, MPFR_RNDN);
    return constant.hi == hi && constant.lo == mpfr_get_d(part, MPFR_RNDN);
  };
  const auto set_pi = [&](unsigned long times, unsigned long over) {
    mpfr_const_pi(value, MPFR_RNDN);
    mpfr_mul_ui(value, value, times, MPFR_RNDN);
    mpfr_div_ui(value, value, over, MPFR_RNDN);
  };
  for (unsigned long k = 0; k <= 256; ++k) {
    CAPTURE(k);
    set_pi(k, 512);
    if (k == 256)
      mpfr_set_ui(value, 1, MPFR_RNDN);
    else
      mpfr_sin(value, value, MPFR_RNDN);
    CHECK(is(maths::kSines[k]));
  }
  for (unsigned long k = 0; k <= 128; ++k) {
    CAPTURE(k);
    mpfr_set_ui(value, k, MPFR_RNDN);
    mpfr_div_ui(value, value, 128, MPFR_RNDN);
    mpfr_atan(value, value, MPFR_RNDN);
    CHECK(is(maths::kArcTangents[k]));
  }
  set_pi(1, 1);
  CHECK(is(maths::kPi));
  set_pi(1, 2);
  CHECK(is(maths::kHalfPi));

  set_pi(1, 512);
  for (const double& step : maths::kStepParts) {
    CAPTURE(step);
    const bool last = &step == &maths::kStepParts.back();
    test::Number cut(last ? mpfr_prec_t{53} : mpfr_prec_t{36});
    mpfr_set(cut, value, last ? MPFR_RNDN : MPFR_RNDZ);
    CHECK(step == mpfr_get_d(cut, MPFR_RNDN));
    mpfr_sub(value, value, cut, MPFR_RNDN);
  }
  set_pi(1, 512);
  mpfr_ui_div(value, 1, value, MPFR_RNDN);
  CHECK(maths::kStepsPerRadian == mpfr_get_d(value, MPFR_RNDN));

  const auto next_digits = [&] {
    mpfr_mul_2ui(value, value, 32, MPFR_RNDN);
    const unsigned long digits = mpfr_get_ui(value, MPFR_RNDZ);
    mpfr_sub_ui(value, value, digits, MPFR_RNDN);
    return digits;
  };
  set_pi(1, 2);
  mpfr_ui_div(value, 1, value, MPFR_RNDN);
  for (const std::uint32_t digits : maths::kTwoOverPi) CHECK(digits == next_digits());
  set_pi(1, 4);
  for (std::size_t k = maths::kQuarterPi.size(); k-- > 0;)
    CHECK(maths::kQuarterPi[k] == next_digits());
}

// Source: ISO C, Annex F, sections on each function.
TEST_CASE("base: maths (2), zeros, infinities and what is no number") {
  using std::numbers::pi;
  for (const OfAngle& of : kOfAngle) {
    CAPTURE(of.name);
    for (const double a : {kInfinity, -kInfinity, kNoNumber}) CHECK(std::isnan(of.ours(a)));
  }
  for (const auto of : {maths::sin, maths::tan, maths::atan})
    for (const double a : {0.0, -0.0, 0x1p-1074, -0x1p-1074, 0x1p-1022}) CHECK(same_bits(of(a), a));
  CHECK(maths::cos(0.0) == 1);
  CHECK(maths::cos(-0.0) == 1);
  CHECK(same_bits(maths::acos(1.0), 0.0));
  CHECK(maths::acos(-1.0) == pi);
  CHECK(maths::acos(0.0) == 0.5 * pi);
  for (const double a : {std::nextafter(1.0, 2.0), -2.0, kInfinity, -kInfinity, kNoNumber})
    CHECK(std::isnan(maths::acos(a)));
  CHECK(maths::atan(kInfinity) == 0.5 * pi);
  CHECK(maths::atan(-kInfinity) == -0.5 * pi);
  CHECK(std::isnan(maths::atan(kNoNumber)));

  // The four axes and diagonals, from both zeros, and from and to infinity: as MPFR has them too.
  const double values[] = {0.0,   -0.0,   1.0,       -1.0,       0x1p-1074, -0x1p-1074,
                           1e308, -1e308, kInfinity, -kInfinity, 3.0,       kNoNumber};
  Tally atan2("atan2"), hypot("hypot");
  for (const double y : values)
    for (const double x : values) {
      atan2.hold(maths::atan2(y, x), correct(mpfr_atan2, y, x), y, x);
      hypot.hold(maths::hypot(y, x), correct(mpfr_hypot, y, x), y, x);
    }
  CHECK(maths::hypot(kNoNumber, -kInfinity) == kInfinity);
  CHECK(maths::hypot(1e308, 1e308) < kInfinity);
  CHECK(maths::hypot(3e-320, 4e-320) > 0);
  CHECK(same_bits(maths::power(0.0, 12, 5), 0.0));
  CHECK(maths::power(1.0, 12, 5) == 1);
  CHECK(maths::power(32.0, 12, 5) == 4096);
}
