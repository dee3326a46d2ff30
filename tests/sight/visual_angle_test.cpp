#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>

#include "swathe/sight.hpp"

namespace swathe {
namespace {

Length feet(double ft) { return inches(12.0 * ft); }

// United Kingdom, eyesight test for drivers: a plate of 79 mm characters, strokes of 14 mm (2001
// regulations), read at 20 m. The angles are these by h = 2 d tan(x / 2), computed apart from
// this program.
TEST_CASE("visual angle: a number plate at the distance of the driver's eyesight test") {
  CHECK(visual_angle(mm(79), mm(20000)).arcmin() == doctest::Approx(13.58).epsilon(4e-4));
  CHECK(visual_angle(mm(14), mm(20000)).arcmin() == doctest::Approx(2.41).epsilon(2e-3));
}

TEST_CASE("visual angle: published sizes") {
  // Snellen's letters, 5' high: 6 m 8.727 mm; 20 ft 0.349 in.
  CHECK(visual_angle(mm(8.727), mm(6000)).arcmin() == doctest::Approx(5).epsilon(1e-4));
  CHECK(visual_angle(inches(0.349), feet(20)).arcmin() == doctest::Approx(5).epsilon(1e-3));
  // U.S. Nuclear Regulatory Commission, NUREG-0700 rev. 2, 1.3.1-4: 6096 mm at 20' is 35.4640 mm
  // by its own formula 6.283 D MA / 21600, whose pi is rounded (35.4652 mm).
  CHECK(visual_angle(mm(35.4652), mm(6096)).arcmin() == doctest::Approx(20).epsilon(1e-5));
  // NUREG-0700 rev. 3, 11.4.1.5-1: 15' is 0.004 of the distance, 20' 0.006, both rounded to a
  // digit; 3437.747' to a radian (FAA Human Factors Design Standard).
  CHECK(distance_of(mm(1), Angle::from_arcmin(15)).mm() ==
        doctest::Approx(3437.747 / 15).epsilon(1e-5));
  CHECK(1000 / distance_of(mm(1), Angle::from_arcmin(15)).mm() == doctest::Approx(4).epsilon(0.1));
  // FAA: 1/200 of the distance is 17.19'.
  CHECK(visual_angle(mm(1), mm(200)).arcmin() == doctest::Approx(17.19).epsilon(1e-3));
}

// What each published rule makes of a 4 in numeral: the ratios of distance to height, and how far
// it is good to.
TEST_CASE("visual angle: how far 4 in is good to") {
  struct Row {
    const char* rule;
    double arcmin, good_to_ft;
  };
  for (const Row& row :
       {Row{"Snellen limit 20/20", 5, 229.2}, Row{"UK plate 79 mm at 20 m", 13.58, 84.4},
        Row{"NUREG-0700, least", 15, 76.4}, Row{"ISO 9241-3, least", 16, 71.6},
        Row{"FAA 1/200, ISO 3864-1 Z = 200", 17.19, 66.7},
        Row{"NUREG-0700 and ISO 9241-3, preferred", 20, 57.3},
        Row{"ANSI Z535.4, one in 150", 22.92, 50}, Row{"ISO 3864-1 Z = 100", 34.38, 33.3}}) {
    INFO(row.rule);
    const double ft = distance_of(inches(4), Angle::from_arcmin(row.arcmin)).inches() / 12;
    CHECK(std::abs(ft - row.good_to_ft) < 0.06);
  }
  CHECK(distance_of(inches(4), Angle::from_arcmin(15)).mm() ==
        doctest::Approx(23280).epsilon(3e-4));
  // ADA Standards 703.5.5: 4 in at 33 ft.
  CHECK(visual_angle(inches(4), feet(33)).arcmin() == doctest::Approx(34.72).epsilon(1e-3));
}

// Cai and Green, LEUKOS 5 (2009): the square root of the cosine at these angles.
TEST_CASE("oblique viewing: what is kept of a character's size") {
  CHECK(oblique_factor(degrees(0)) == 1.0);
  CHECK(oblique_factor(degrees(30)) == doctest::Approx(0.9306).epsilon(1e-4));
  CHECK(oblique_factor(degrees(45)) == doctest::Approx(0.8409).epsilon(1e-4));
  CHECK(oblique_factor(degrees(60)) == doctest::Approx(0.7071).epsilon(1e-4));
  CHECK(oblique_factor(degrees(120)) == 0.0);
  CHECK(kWidestObliquity < degrees(65.7));  // where the law was found to fail
}

}  // namespace
}  // namespace swathe
