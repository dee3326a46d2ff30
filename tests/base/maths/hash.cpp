// Prints one number for the results of all functions of maths on 60,000 arguments each; for
// compilers_test.py.
#include <bit>
#include <cstdio>

#include "arguments.hpp"
#include "base/maths.hpp"

int main() {
  namespace maths = swathe::maths;
  swathe::test::Arguments draw(20486);
  std::uint64_t hash = 0;
  const auto take = [&](double result) {
    // No number has one form here, whichever way it was made.
    const std::uint64_t bits = result != result ? 1 : std::bit_cast<std::uint64_t>(result);
    hash = (hash ^ bits) * 0x100000001b3u;
    hash ^= hash >> 29;
  };
  for (int k = 0; k < 60000; ++k) {
    const double angle = draw.angle(), tangent = draw.tangent(), cosine = draw.cosine();
    take(maths::sin(angle));
    take(maths::cos(angle));
    take(maths::tan(angle));
    take(maths::atan(tangent));
    take(maths::acos(cosine));
    const double y = draw.coordinate(), x = draw.coordinate(y);
    take(maths::atan2(y, x));
    take(maths::hypot(x, y));
    const double base = draw.base();
    const int over = draw.whole(1, 16), under = draw.whole(1, 6);
    take(maths::power(base, over, under));
  }
  std::printf("%016llx\n", static_cast<unsigned long long>(hash));
}
