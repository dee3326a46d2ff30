#pragma once

#include <string>
#include <vector>

#include "swathe/bumper.hpp"
#include "swathe/job.hpp"
#include "swathe/sight.hpp"

namespace swathe::test {

/// Numbers in the middle of the longest clear stretch of each of these sides.
std::vector<SightNumber> numbers_on(const std::vector<Wrap>& wraps,
                                    const std::vector<std::string>& sides, double height = 98.4,
                                    double width = 300);

/// The worked bumpers on all four sides; frame 711.2 mm by 762 mm, one number a side asked for.
sight::Scene worked_scene(const std::vector<std::string>& sides,
                          const std::vector<BlindKeys>& blind = {});

/// A box from one corner to the other, mm.
BlindKeys blind_box(double x0, double y0, double z0, double x1, double y1, double z1);

}  // namespace swathe::test
