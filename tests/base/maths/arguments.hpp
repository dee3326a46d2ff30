#pragma once

#include <cmath>
#include <cstdint>
#include <numbers>
#include <random>

// Drawn arguments: half of them as drawings have them, half where a function is awkward. They are
// the same everywhere: no statement draws twice, and no function has a hand in it that is not
// exact.
namespace swathe::test {

class Arguments {
 public:
  explicit Arguments(std::uint64_t seed) : rng_(seed) {}

  /// Of two exponents and all between them, either sign.
  double of_size(int least, int most) {
    const int exponent = whole(least, most);
    return either_sign(std::ldexp(1 + fraction(), exponent));
  }

  double angle() {
    switch (rng_() % 6) {
      case 0:  // next to a multiple of a quarter turn, a few doubles off it or a little more
        return beside(0.5 * std::numbers::pi * static_cast<double>(rng_() % 800));
      case 1:
        return of_size(-1074, -20);
      case 2:
        return of_size(9, 1023);
      default:
        return either_sign(8 * fraction());
    }
  }

  double cosine() {
    switch (rng_() % 6) {
      case 0:
        return either_sign(1 - std::abs(of_size(-52, -2)));
      case 1:
        return of_size(-1074, -20);
      default:
        return either_sign(fraction());
    }
  }

  double tangent() { return rng_() % 4 == 0 ? of_size(-1074, 1023) : of_size(-10, 10); }

  /// A coordinate; with `other`, now and then of a size not too far from it.
  double coordinate() {
    return rng_() % 4 == 0 ? of_size(-1074, 1023) : either_sign(2000 * fraction());
  }
  double coordinate(double other) {
    switch (rng_() % 4) {
      case 0:
        return of_size(-1074, 1023);
      case 1:
        return other * of_size(-130, 3);
      default:
        return either_sign(2000 * fraction());
    }
  }

  double base() { return rng_() % 4 == 0 ? std::abs(of_size(-1074, 1023)) : fraction(); }
  int whole(int least, int most) {
    return least + static_cast<int>(rng_() % static_cast<unsigned>(most - least + 1));
  }

 private:
  double fraction() { return std::ldexp(static_cast<double>(rng_() >> 11), -53); }
  double either_sign(double size) { return rng_() % 2 == 0 ? size : -size; }
  double beside(double at) {
    const auto off = static_cast<double>(rng_() % 9) - 4;
    const int near = rng_() % 2 == 0 ? -52 : -30;
    return at * (1 + std::ldexp(off, near)) + std::ldexp(off, -60);
  }

  std::mt19937_64 rng_;
};

}  // namespace swathe::test
