#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "support/drawn.hpp"
#include "support/jobs.hpp"
#include "swathe/bumper.hpp"

namespace swathe {
namespace {

constexpr double kInch = 25.4;
constexpr double kPi = std::numbers::pi;

Job drawn_halves(std::mt19937_64& rng) {
  Job job = test::c_halves(test::drawn(rng, 300, 900), test::drawn(rng, 300, 900));
  job.boards.thickness = mm(test::drawn(rng, 12, 22));
  job.padding.diameter = mm(test::drawn(rng, 45, 75));
  job.cloth.thickness = mm(test::drawn(rng, 0, 2));
  return job;
}

/// A cloth point off the darts and its place in space.
struct OnCloth {
  ClothPoint p;
  SpacePoint at;
};
OnCloth drawn_point(const Wrap& wrap, std::mt19937_64& rng) {
  for (;;) {
    const Section& section = wrap.section();
    const ClothPoint p{test::drawn(rng, 0, wrap.run().length),
                       test::drawn(rng, section.cloth_edge_bottom(), section.cloth_edge_top())};
    if (const auto at = wrap.at(p)) return {p, *at};
  }
}

TEST_CASE("Wrap (1): s is measured in cloth") {
  test::for_drawn_cases("wrap-1", 1000, [](std::mt19937_64& rng) {
    const Wrap wrap = test::wraps_of(drawn_halves(rng))[0];
    const OnCloth a = drawn_point(wrap, rng);
    const ClothPoint q{test::drawn(rng, 0, wrap.run().length), a.p.u};
    const auto at = wrap.at(q);
    if (!at || wrap.side_of(q.s) != wrap.side_of(a.p.s)) return;
    CHECK(std::abs(apart(a.at, *at) - std::abs(q.s - a.p.s)) < kWrapError.mm());
  });
}

TEST_CASE("Wrap (2): so is u, on a flat") {
  const Wrap wrap = test::wraps_of(test::worked_job())[0];
  const Section& section = wrap.section();
  test::for_drawn_cases("wrap-2", 1000, [&](std::mt19937_64& rng) {
    const OnCloth a = drawn_point(wrap, rng);
    double lo = section.front_flat_bottom(), hi = section.front_flat_top();
    if (a.p.u > section.top_tangent()) lo = section.top_tangent(), hi = section.back_edge_top();
    if (a.p.u < lo || a.p.u > hi) return;
    const auto at = wrap.at({a.p.s, test::drawn(rng, lo, hi)});
    if (!at) return;
    const auto back = wrap.cloth_at(*at);
    REQUIRE(back.has_value());
    CHECK(std::abs(apart(a.at, *at) - std::abs(back->u - a.p.u)) < kWrapError.mm());
  });
}

TEST_CASE("Wrap (3): the two edges of a mitred dart are one curve") {
  test::for_drawn_cases("wrap-3", 300, [](std::mt19937_64& rng) {
    const Wrap wrap = test::wraps_of(drawn_halves(rng))[0];
    for (const RunCorner& corner : wrap.run().corners) {
      const double u =
          test::drawn(rng, wrap.section().back_edge_bottom(), wrap.section().back_edge_top());
      const double h = wrap.dart(corner, u);
      const auto before = wrap.at({corner.s - h, u}), after = wrap.at({corner.s + h, u});
      REQUIRE(before.has_value());
      REQUIRE(after.has_value());
      CHECK(apart(*before, *after) < kWrapError.mm());
      if (h > 0.01) CHECK_FALSE(wrap.at({corner.s + 0.9 * h, u}).has_value());
    }
  });
}

TEST_CASE("Wrap (4): back from space to the cloth") {
  test::for_drawn_cases("wrap-4", 1000, [](std::mt19937_64& rng) {
    Job job = drawn_halves(rng);
    if (rng() % 2 == 0) job.padding.corner = PaddingCorner::Bent;
    const Wrap wrap = test::wraps_of(job)[rng() % 2];
    const OnCloth a = drawn_point(wrap, rng);
    const auto back = wrap.cloth_at(a.at);
    REQUIRE(back.has_value());
    CHECK(apart(*wrap.at(*back), a.at) < kWrapError.mm());
    if (wrap.section().at(a.p.u).d > 0.01)  // the flaps lie on one another at inside corners
      CHECK(std::hypot(back->s - a.p.s, back->u - a.p.u) < 1e-4);
  });
}

TEST_CASE("the worked dart: half widths for square and for 60 degree corners") {
  const auto dart_in = [](double turn_deg, double u_in) {
    const Wrap wrap = test::wraps_of(test::worked_job())[0];
    RunCorner corner = wrap.run().corners.front();
    corner.turn = degrees(turn_deg).radians();
    return wrap.dart(corner, u_in * kInch) / kInch;
  };
  // Worked figures, computed independently of the program.
  CHECK(dart_in(90, 1.25) == doctest::Approx(0.0));
  CHECK(dart_in(90, 2.23175) == doctest::Approx(0.36612).epsilon(1e-4));
  CHECK(dart_in(90, 3.21350) == doctest::Approx(1.25).epsilon(1e-5));
  CHECK(dart_in(90, 5.21350) == doctest::Approx(3.25).epsilon(1e-6));
  CHECK(dart_in(60, 2.23175) == doctest::Approx(0.21138).epsilon(1e-4));
  CHECK(dart_in(60, 3.21350) == doctest::Approx(0.72169).epsilon(1e-5));
  CHECK(dart_in(60, 5.21350) == doctest::Approx(1.87639).epsilon(1e-5));
}

TEST_CASE("on the round the dart is a mitred cylinder's cut, r tan(theta/2) (1 - cos(s/r))") {
  // T. M. Apostol and M. A. Mnatsakanian, "Unwrapping Curves from Cylinders and Cones", American
  // Mathematical Monthly 114 (2007) 388-416, section 2; ordinates of the twelve- and sixteen-line
  // elbow at 90 degrees, y/D by sixteenths of the girth.
  const double ordinate[] = {0.0, 0.0381, 0.1464, 0.3087,
                             0.5};  // k = 0..4 of 16: a quarter of the girth
  const Wrap wrap = test::wraps_of(test::worked_job())[0];
  const double diameter = 2.5 * kInch;
  for (int k = 0; k <= 4; ++k) {
    const double u = wrap.section().front_flat_top() + kPi * diameter * k / 16;
    CHECK(std::abs(wrap.dart(wrap.run().corners[0], u) / diameter - ordinate[k]) < 5e-5);
  }
  const double by_twelfths[] = {0.0, 0.0670, 0.25, 0.5};
  for (int k = 0; k <= 3; ++k) {
    const double u = wrap.section().front_flat_top() + kPi * diameter * k / 12;
    CHECK(std::abs(wrap.dart(wrap.run().corners[0], u) / diameter - by_twelfths[k]) < 5e-5);
  }
}

TEST_CASE("the dart's edge over a quarter round is a quarter ellipse") {
  // Ellipse with semi-axes r and r sqrt 2: girth 7.6403955781 r (complete elliptic integral E(1/2)
  // = 1.3506438810).
  const Wrap wrap = test::wraps_of(test::worked_job())[0];
  const Section& section = wrap.section();
  const RunCorner& corner = wrap.run().corners[0];
  constexpr int kSteps = 20000;
  double on_cloth = 0.0;
  for (int k = 0; k < kSteps; ++k) {
    const double a =
        section.front_flat_top() + (section.top_tangent() - section.front_flat_top()) * k / kSteps;
    const double b = section.front_flat_top() +
                     (section.top_tangent() - section.front_flat_top()) * (k + 1) / kSteps;
    on_cloth += std::hypot(b - a, wrap.dart(corner, b) - wrap.dart(corner, a));
  }
  CHECK(on_cloth / (1.25 * kInch) == doctest::Approx(7.6403955781 / 4).epsilon(1e-8));
}

TEST_CASE("the outer face is longer than the board's back by 6.5 in a corner") {
  // Worked figure, computed independently: 2 (t + 2r) tan 45 for 3/4 in and 2.5 in.
  const Wrap wrap = test::wraps_of(test::worked_job())[0];
  CHECK(2 * wrap.run().corners[0].past / kInch == doctest::Approx(6.5));
}

TEST_CASE("boards and noodles of the worked frame") {
  // Worked figures (mm): frame 700 x 820, fit 0, t 18, noodles 63.5, clearance 6.
  Job job = test::c_halves(700, 820);
  job.frame.fit = mm(0);
  job.boards.thickness = mm(18);
  job.padding.diameter = mm(63.5);
  for (BumperKeys& bumper : job.bumpers) bumper.end_clearance = mm(6);
  const std::vector<Wrap> wraps = test::wraps_of(job);
  const auto lengths = [](const std::vector<bumper::Piece>& pieces) {
    std::vector<double> out;
    for (const bumper::Piece& piece : pieces) out.push_back(piece.length_mm);
    return out;
  };
  for (const Wrap& wrap : wraps) {
    const auto boards =
        board_pieces(wrap.frame(), wrap.section(), wrap.run(), job.boards, job.places);
    REQUIRE(boards.has_value());
    const std::vector<double> board = lengths(*boards);
    CHECK(board[0] == doctest::Approx(362));
    CHECK(board[1] == doctest::Approx(820));
    CHECK(board[2] == doctest::Approx(362));
    const auto noodles =
        padding_pieces(wrap.frame(), wrap.section(), wrap.run(), job.padding, job.places);
    REQUIRE(noodles.has_value());
    const std::vector<double> noodle = lengths(*noodles);
    CHECK(noodle[0] == doctest::Approx(425.5));
    CHECK(noodle[1] == doctest::Approx(856));
    CHECK(noodle[2] == doctest::Approx(425.5));
    CHECK((*noodles)[1].count == 2);
  }
}

TEST_CASE("bent noodles are one piece, as long as the cloth's level line over their middle") {
  Job job = test::worked_job();
  job.padding.corner = PaddingCorner::Bent;
  const Wrap wrap = test::wraps_of(job)[0];
  const auto noodles =
      padding_pieces(wrap.frame(), wrap.section(), wrap.run(), job.padding, job.places);
  REQUIRE(noodles.has_value());
  REQUIRE(noodles->size() == 1);
  CHECK((*noodles)[0].side == "front + left + back");
  // The stack is as tall as the board, so the cloth leaves the round right above the noodles'
  // middle.
  const double u = wrap.section().top_tangent();
  double level = wrap.run().length;
  for (const RunCorner& corner : wrap.run().corners) level -= 2 * wrap.dart(corner, u);
  CHECK((*noodles)[0].length_mm == doctest::Approx(level));
}

TEST_CASE("hexagon: mitred boards and noodles are cut at 30 degrees") {
  // Joint-line angle for a 120 degree elbow: 30 degrees off square (E. A. Atkins, Practical Sheet
  // and Plate Metal Work, ch. VI, fig. 26: square pipe 5 in wide, AC = 5 tan 30 = 2.9 in,
  // exactly 2.8868).
  Job job = test::worked_job();
  job.frame.corners.clear();
  job.frame.sides.clear();
  for (int k = 0; k < 6; ++k) {
    job.frame.corners.push_back(500.0 * plane::direction(k * kPi / 3));
    job.frame.sides.push_back(std::string(1, static_cast<char>('a' + k)));
  }
  job.bumpers = {test::half("A", "a", "d"), test::half("B", "d", "a")};
  job.boards.joint = Joint::Mitred;
  job.padding.corner = PaddingCorner::Mitred;
  job.boards.thickness = inches(2.5);
  job.padding.diameter = inches(2.5);
  const Wrap wrap = test::wraps_of(job)[0];
  const auto noodles =
      padding_pieces(wrap.frame(), wrap.section(), wrap.run(), job.padding, job.places);
  REQUIRE(noodles.has_value());
  CHECK((*noodles)[1].start.angle_deg == doctest::Approx(30.0));
  // The noodles' outer face lies 5 in out: each end is 2.8868 in longer than the frame's side.
  CHECK(((*noodles)[1].length_mm - 500.0) / (2 * kInch) == doctest::Approx(2.8868).epsilon(1e-4));
}

TEST_CASE("voids: four grooves a noodle fill its square box") {
  const Job job = test::worked_job();
  const Wrap wrap = test::wraps_of(job)[0];
  const auto voids = corner_voids(wrap.frame(), wrap.section(), wrap.run(), job.padding);
  REQUIRE(voids.size() == 2);
  CHECK(voids[0].strips == 8);
  CHECK(voids[0].length / kInch == doctest::Approx(2.5));
  const double box = 2.5 * 2.5 * kInch * kInch, round = kPi * 1.25 * 1.25 * kInch * kInch;
  CHECK(4 * voids[0].section_area == doctest::Approx(box - round));
  // A strip's long side touches the round: it is r from its middle on the square's diagonal, whose
  // half is r sqrt(2).
  CHECK(voids[0].leg / std::sqrt(2.0) / kInch == doctest::Approx(1.25 * (std::sqrt(2.0) - 1.0)));
  Job open = job;
  open.padding.filled = false;
  const Wrap left_open = test::wraps_of(open)[0];
  CHECK(
      corner_voids(left_open.frame(), left_open.section(), left_open.run(), open.padding).empty());
  // Worked lengths: the front noodle passes its board's end by its own diameter, the side noodle by
  // the board's thickness.
  const auto boards =
      board_pieces(wrap.frame(), wrap.section(), wrap.run(), job.boards, job.places);
  const auto noodles =
      padding_pieces(wrap.frame(), wrap.section(), wrap.run(), job.padding, job.places);
  const auto past = overhangs(*boards, *noodles);
  REQUIRE(past.size() == 3);
  CHECK(past[0].at_end / kInch == doctest::Approx(2.5));
  CHECK(past[0].at_start == doctest::Approx(0.0));
  CHECK(past[1].at_start / kInch == doctest::Approx(0.75));
}

TEST_CASE("both sides of a corner cannot lap") {
  Job job = test::worked_job();
  job.boards.lapping = {"front", "left", "back", "right"};
  job.places.set("boards.lapping", {"job.toml", 7, 11});
  const Wrap wrap = test::wraps_of(job)[0];
  const auto boards =
      board_pieces(wrap.frame(), wrap.section(), wrap.run(), job.boards, job.places);
  REQUIRE_FALSE(boards.has_value());
  CHECK(boards.error().size() == 2);
  CHECK(boards.error()[0].why == Why::DoesNotFit);
  CHECK(boards.error()[0].place.line == 7);
}

}  // namespace
}  // namespace swathe
