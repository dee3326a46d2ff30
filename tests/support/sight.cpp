#include "support/sight.hpp"

#include <cstddef>

#include "support/jobs.hpp"

namespace swathe::test {
namespace {

/// Five boxes of digits with their middle at `center_s`, ink 300 mm wide in all.
SightNumber number_at(int bumper, const std::string& side, double center_s, double height,
                      double width) {
  constexpr double kSpace = 10;
  const std::string text = "20486";
  const double one = (width - 4 * kSpace) / 5;
  SightNumber number{text, side, kSpace, {}};
  for (std::size_t k = 0; k < text.size(); ++k) {
    const double from = center_s - 0.5 * width + static_cast<double>(k) * (one + kSpace);
    number.digits.push_back({text[k], bumper, from, from + one, -0.5 * height, 0.5 * height, 16});
  }
  return number;
}

}  // namespace

std::vector<SightNumber> numbers_on(const std::vector<Wrap>& wraps,
                                    const std::vector<std::string>& sides, double height,
                                    double width) {
  std::vector<SightNumber> numbers;
  for (const std::string& side : sides) {
    int bumper = -1;
    ClearStretch longest;
    for (std::size_t b = 0; b < wraps.size(); ++b)
      for (const ClearStretch& clear : clear_stretches(wraps[b], 0.5 * height))
        if (clear.side == side &&
            clear.to_s - clear.from_s > longest.to_s - longest.from_s + 1e-6) {
          longest = clear;
          bumper = static_cast<int>(b);
        }
    if (bumper >= 0 && longest.to_s - longest.from_s > width)
      numbers.push_back(
          number_at(bumper, side, 0.5 * (longest.from_s + longest.to_s), height, width));
  }
  return numbers;
}

sight::Scene worked_scene(const std::vector<std::string>& sides,
                          const std::vector<BlindKeys>& blind) {
  const std::vector<Wrap> wraps = wraps_of(worked_job());
  return make_scene(wraps, numbers_on(wraps, sides), blind);
}

BlindKeys blind_box(double x0, double y0, double z0, double x1, double y1, double z1) {
  return {{mm(x0), mm(y0), mm(z0)}, {mm(x1), mm(y1), mm(z1)}};
}

}  // namespace swathe::test
