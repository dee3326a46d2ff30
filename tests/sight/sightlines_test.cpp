#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "support/drawn.hpp"
#include "support/drawn_jobs.hpp"
#include "support/jobs.hpp"
#include "support/sight.hpp"
#include "swathe/sight.hpp"

namespace swathe {
namespace {

using test::blind_box;
using test::worked_scene;

constexpr double kTurn = 2 * std::numbers::pi;

TEST_CASE("a digit in space: where a ruler finds it") {
  const sight::Scene scene = worked_scene({"left"});
  REQUIRE(scene.numbers.size() == 1);
  CHECK(scene.center.x == doctest::Approx(355.6));
  CHECK(scene.center.y == doctest::Approx(381));
  const DigitInSpace& digit = scene.numbers[0].digits[2];
  // Depth 3.25 in, floor gap 2 in, the middle of a board 5 in high.
  CHECK(digit.middle.x == doctest::Approx(-3.25 * 25.4));
  CHECK(digit.middle.y == doctest::Approx(381).epsilon(1e-3));
  CHECK(digit.middle.z == doctest::Approx(4.5 * 25.4));
  CHECK(digit.normal.x == doctest::Approx(-1));
  CHECK(scene.numbers[0].bearing == doctest::Approx(kTurn / 4));
  // Seen from outside the first digit is the left one: further forward on the machine's left side.
  CHECK(scene.numbers[0].digits[0].middle.y > digit.middle.y);
}

// Two arcs of 2.5 in noodles: 4 in of cloth is seen 3.9116 in high (2.5 + 2 x 1.25 sin 0.6).
TEST_CASE("a digit's seen height on the rounds") {
  const std::vector<Wrap> wraps = test::wraps_of(test::worked_job());
  const sight::Scene scene = make_scene(wraps, test::numbers_on(wraps, {"left"}, 101.6), {});
  CHECK(scene.numbers[0].digits[0].seen_height / 25.4 == doctest::Approx(3.9116).epsilon(1e-4));
}

TEST_CASE("square on, the angles are those of a plain triangle") {
  const sight::Scene scene = worked_scene({"left"});
  const DigitInSpace& digit = scene.numbers[0].digits[2];
  const Sightlines lines(scene, mm(digit.middle.z));
  const DigitSeen seen = lines.digit_from(0, 2, {digit.middle.x - 6096, digit.middle.y});
  CHECK(seen.in_view());
  CHECK(seen.obliquity.degrees() == doctest::Approx(0).epsilon(1e-6));
  CHECK(seen.height.arcmin() == doctest::Approx(3437.747 * digit.seen_height / 6096).epsilon(1e-4));
  CHECK(seen.effective.arcmin() == doctest::Approx(seen.height.arcmin()));
  // At 60 deg half of it is left across, and by the law of equal solid angles 0.7071 to read.
  const FlatPoint at = FlatPoint{digit.middle.x, digit.middle.y} +
                       6096 * FlatPoint{-std::cos(kTurn / 6), std::sin(kTurn / 6)};
  const DigitSeen aside = lines.digit_from(0, 2, at);
  CHECK(aside.obliquity.degrees() == doctest::Approx(60));
  CHECK(aside.effective.arcmin() == doctest::Approx(0.70711 * seen.height.arcmin()).epsilon(1e-4));
}

TEST_CASE("behind the bumper a digit is turned away; high above, its lower edge is") {
  const sight::Scene scene = worked_scene({"left"});
  const DigitInSpace& digit = scene.numbers[0].digits[0];
  const Sightlines low(scene, mm(1200));
  CHECK(low.digit_from(0, 0, {5000, 381}).turned_away);
  CHECK(!low.digit_from(0, 0, {-5000, 381}).turned_away);
  // The lower edge leans back by psi: it faces an eye that rises by less than 1 in tan(psi).
  const double psi = std::abs(std::asin(digit.normals[0].z));
  const double rise = 1200 - digit.corners[0].z;
  const double near = rise * std::tan(psi);
  CHECK(low.digit_from(0, 0, {digit.corners[0].x - 0.999 * near, 381}).turned_away);
  CHECK(!low.digit_from(0, 0, {digit.corners[0].x - 1.001 * near, 381}).turned_away);
}

TEST_CASE("a box hides what lies in line behind it") {
  // Half a meter out from the left side, before the first digits only, and too low to matter from
  // near above.
  const sight::Scene scene = worked_scene({"left"}, {blind_box(-600, 420, 0, -580, 700, 400)});
  const Sightlines lines(scene, mm(300));
  const NumberSeen seen = lines.seen_from({-6000, 381})[0];
  CHECK(seen.digits[0].hidden_by >= 0);
  CHECK(scene.solids[static_cast<std::size_t>(seen.digits[0].hidden_by)].name == "blind box 1");
  CHECK(seen.digits[4].in_view());
  CHECK(!seen.whole());
  CHECK(seen.misleading());
  CHECK(seen.text.size() < 5);
  // From straight above it, and from its far side, the box is not in between.
  const Sightlines high(scene, mm(3000));
  CHECK(high.seen_from({-2500, 381})[0].whole());
}

TEST_CASE("a number whose other digits are only too oblique misleads nobody") {
  const sight::Scene scene = worked_scene({"left"});
  const Sightlines lines(scene, mm(1200));
  bool some = false;
  for (double b = 0; b < kTurn; b += 0.001) {
    const NumberSeen seen = lines.seen_from(scene.center + 2000.0 * towards(b))[0];
    some = some || (!seen.text.empty() && !seen.whole());
    CHECK(!seen.misleading());
  }
  CHECK(some);
}

/// A drawn job that stands, with numbers where they fit, and drawn boxes about it.
std::optional<sight::Scene> drawn_scene(std::mt19937_64& rng, int boxes) {
  const Job job = test::drawn_job(rng);
  const auto stood = test::stand(job);
  if (!stood) return std::nullopt;
  std::vector<BlindKeys> blind;
  for (int k = 0; k < boxes; ++k) {
    const double x = test::drawn(rng, -900, 900), y = test::drawn(rng, -900, 900);
    const double z = test::drawn(rng, 0, 300);
    blind.push_back(blind_box(x, y, z, x + test::drawn(rng, 20, 300), y + test::drawn(rng, 20, 300),
                              z + test::drawn(rng, 20, 500)));
  }
  return make_scene(stood->wraps, test::numbers_on(stood->wraps, job.frame.sides, 60, 200), blind);
}

TEST_CASE("sightlines (1): around() says what seen_from() says, up to its bearings") {
  int looked = 0;
  test::for_drawn_cases("sightlines-1", 60, [&](std::mt19937_64& rng) {
    const auto scene = drawn_scene(rng, 3);
    if (!scene) return;
    const Sightlines lines(*scene, mm(test::drawn(rng, 100, 2000)));
    const double distance = test::drawn(rng, 2000, 20000);
    for (std::size_t n = 0; n < scene->numbers.size(); ++n)
      for (std::size_t d = 0; d < 5; d += 2) {
        const Sightlines::Around around = lines.around(n, d, mm(distance));
        const auto check_at = [&](double bearing) {
          const DigitSeen seen =
              lines.digit_from(n, d, scene->center + distance * towards(bearing));
          CHECK(around.in_view.contains(bearing) == seen.in_view());
          CHECK(around.legible.contains(bearing) == seen.legible);
        };
        for (int k = 0; k < 40; ++k) check_at(test::drawn(rng, 0, kTurn));
        // Just before and just after each change.
        for (const auto* set : {&around.in_view, &around.legible})
          for (const double flip : set->flips())
            for (const double off : {-1e-7, 1e-7}) check_at(flip + off);
        ++looked;
      }
  });
  CHECK(looked > 20);
}

TEST_CASE("sightlines (3): a box more never brings more into view") {
  test::for_drawn_cases("sightlines-3", 40, [](std::mt19937_64& rng) {
    auto scene = drawn_scene(rng, 1);
    if (!scene) return;
    sight::Scene more = *scene;
    const double x = test::drawn(rng, -900, 900), y = test::drawn(rng, -900, 900);
    more.solids.push_back(blind_solid(blind_box(x, y, 0, x + 200, y + 200, 400), 2));
    const Sightlines before(*scene, mm(1400)), after(more, mm(1400));
    for (std::size_t n = 0; n < scene->numbers.size(); ++n) {
      const Bearings gained =
          after.around(n, 1, mm(6000)).in_view & !before.around(n, 1, mm(6000)).in_view;
      CHECK(gained.measure() < 1e-9);
    }
  });
}

// For an eye a height e above the digit's middle the law gives (h / d) sqrt(cos): it falls with the
// level distance r from r = e / sqrt 2 on, so beyond e it always falls.
TEST_CASE("moving away never raises the visual angle, beyond the eye's height above the number") {
  test::for_drawn_cases("sight-away", 100, [](std::mt19937_64& rng) {
    const sight::Scene scene = worked_scene({"front", "left", "back", "right"});
    const double eye = test::drawn(rng, 300, 2500);
    const Sightlines lines(scene, mm(eye));
    const std::size_t n = rng() % scene.numbers.size(), d = rng() % 5;
    const DigitInSpace& digit = scene.numbers[n].digits[d];
    const double turn = test::drawn(rng, -1.1, 1.1);
    const FlatPoint way = towards(scene.numbers[n].bearing + turn);
    double last = 1e300;
    for (double r = eye - digit.middle.z; r < 40000; r *= 1.2) {
      const DigitSeen seen =
          lines.digit_from(n, d, FlatPoint{digit.middle.x, digit.middle.y} + r * way);
      CHECK(seen.effective.arcmin() <= last);
      last = seen.effective.arcmin();
    }
  });
}

}  // namespace
}  // namespace swathe
