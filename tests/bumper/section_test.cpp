#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <type_traits>

#include "support/drawn.hpp"
#include "support/jobs.hpp"
#include "swathe/bumper.hpp"

// Worked figures: computed independently of the program, analytically and as the hull of 40 000
// points.
namespace swathe {
namespace {

constexpr double kPi = std::numbers::pi;
constexpr double kInch = 25.4;

// What has no sides or no outline cannot be asked for a place, so neither comes but from make().
static_assert(!std::is_default_constructible_v<Frame>);
static_assert(!std::is_default_constructible_v<Section>);

TEST_CASE(
    "the worked section: 3/4 in board, 5 in high, two noodles of 2.5 in, no cloth thickness") {
  const Section section = test::section_of(test::worked_job());
  CHECK(section.closed_girth_mm() / kInch == doctest::Approx(15.42699).epsilon(1e-6));
  CHECK(section.depth_mm() / kInch == doctest::Approx(3.25));
  CHECK(section.front_flat_top() / kInch == doctest::Approx(1.25));
  CHECK(section.front_flat_bottom() / kInch == doctest::Approx(-1.25));
  CHECK(std::abs(section.top_tangent() / kInch - 3.21350) < 1e-5);
  CHECK(std::abs(section.back_edge_top() / kInch - 5.21350) < 1e-5);
  CHECK(section.back_edge_bottom() == doctest::Approx(-section.back_edge_top()));
  const SectionPoint p = section.at(2.23175 * kInch);
  CHECK(p.d / kInch == doctest::Approx(2.88388).epsilon(1e-5));
  CHECK(p.z / kInch == doctest::Approx(4.63388).epsilon(1e-5));
}

TEST_CASE("published girths of a plank with two stacked noodles") {
  const auto girth_in = [](double noodle, double height) {
    Job job = test::worked_job(noodle, height);
    return test::section_of(job).closed_girth_mm() / kInch;
  };
  CHECK(girth_in(2.5, 5.0) == doctest::Approx(15.426991).epsilon(1e-7));
  CHECK(girth_in(2.5, 4.5) == doctest::Approx(14.958970).epsilon(1e-7));
  CHECK(girth_in(2.25, 5.0) == doctest::Approx(14.585783).epsilon(1e-7));
  CHECK(girth_in(2.75, 5.0) == doctest::Approx(16.349781).epsilon(1e-7));
}

TEST_CASE("a block as round as it is deep: the board's back and edges, and half a circle") {
  Job job = test::worked_job();  // the board 3/4 in thick, 5 in high
  job.padding.form = PaddingForm::Block;
  job.padding.depth = job.padding.edge_radius = inches(2.5);
  job.padding.height = inches(5);
  const Section section = test::section_of(job);
  CHECK(section.closed_girth_mm() / kInch == doctest::Approx(2 * 0.75 + 5 + 2.5 * kPi));
  CHECK(section.top_tangent() / kInch == doctest::Approx(1.25 * kPi));
  CHECK(section.back_edge_top() / kInch == doctest::Approx(1.25 * kPi + 0.75));
  const SectionPoint p = section.at(1.25 * kPi / 2 * kInch);  // halfway up
  CHECK(p.d / kInch == doctest::Approx(0.75 + 2.5 * std::cos(kPi / 4)));
  // A radius of 2 in on a block 2 1/2 in deep and 5 in high: quarters of a circle, and flats.
  job.padding.edge_radius = inches(2);
  CHECK(test::section_of(job).closed_girth_mm() / kInch ==
        doctest::Approx(2 * 0.75 + 5 + 2 * 0.5 + 1 + 2 * kPi));
}

Job drawn_job(std::mt19937_64& rng) {
  Job job = test::worked_job();
  job.boards.thickness = mm(test::drawn(rng, 10, 25));
  job.boards.height = mm(test::drawn(rng, 105, 150));
  job.padding.stack = std::uniform_int_distribution<int>(1, 4)(rng);
  job.padding.diameter = mm(test::drawn(rng, 10, 90));
  job.cloth.thickness = mm(test::drawn(rng, 0, 3));
  if (std::uniform_int_distribution<int>(0, 2)(rng) == 0) {
    job.padding.form = PaddingForm::Block;
    job.padding.depth = mm(test::drawn(rng, 20, 90));
    job.padding.height = mm(test::drawn(rng, 60, 180));
    job.padding.edge_radius = mm(test::drawn(rng, 0, 19));
    if (job.padding.edge_radius > mm(15))  // as round as can be
      job.padding.edge_radius = std::min(job.padding.depth, 0.5 * job.padding.height);
  }
  return job;
}

TEST_CASE("Section (1): the cloth is walked at unit speed") {
  test::for_drawn_cases("section-1", 200, [](std::mt19937_64& rng) {
    const Section section = test::section_of(drawn_job(rng));
    for (int k = 0; k < 200; ++k) {
      const double u =
          test::drawn(rng, section.cloth_edge_bottom(), section.cloth_edge_top() - 0.002);
      const SectionPoint a = section.at(u), b = section.at(u + 0.001);
      const double step = std::hypot(b.d - a.d, b.z - a.z);
      CHECK(step < 0.001 * (1 + 1e-6));
      // Only a sharp bend cuts a step short.
      if (std::abs(b.tilt - a.tilt) < 0.01) CHECK(step > 0.001 * (1 - 1e-4));
    }
  });
}

TEST_CASE("Section (3): thickness tau adds pi tau to the closed girth (Steiner)") {
  test::for_drawn_cases("section-3", 200, [](std::mt19937_64& rng) {
    Job job = drawn_job(rng);
    const double tau = test::drawn(rng, 0, 4);
    job.cloth.thickness = mm(0);
    const double bare = test::section_of(job).closed_girth_mm();
    job.cloth.thickness = mm(tau);
    CHECK(test::section_of(job).closed_girth_mm() ==
          doctest::Approx(bare + kPi * tau).epsilon(1e-9));
  });
}

TEST_CASE("depth and place on the section are inverse to the girth coordinate") {
  test::for_drawn_cases("section-inverse", 200, [](std::mt19937_64& rng) {
    const Section section = test::section_of(drawn_job(rng));
    const double u = test::drawn(rng, section.cloth_edge_bottom(), section.cloth_edge_top());
    const SectionPoint p = section.at(u);
    const Section::Foot foot = section.nearest(p.d, p.z);
    CHECK(foot.off_mm < 1e-9);
    CHECK(std::hypot(section.at(foot.u).d - p.d, section.at(foot.u).z - p.z) < 1e-9);
    const double d = test::drawn(rng, 0, section.depth_mm() - 0.01);
    for (const bool above : {true, false}) {
      const auto at_depth = section.u_at_depth(d, above);
      REQUIRE(at_depth.has_value());
      CHECK(section.at(*at_depth).d == doctest::Approx(d).epsilon(1e-6));
      CHECK((*at_depth > 0) == above);
    }
  });
}

TEST_CASE(
    "the square end takes r (2 - pi/2) more at top and bottom where the stack is as tall as the "
    "board") {
  const Section section = test::section_of(test::worked_job());
  CHECK(section.square_end_allowance_mm() / kInch == doctest::Approx(0.5365).epsilon(1e-4));
  // Where hollows are filled it goes round a box of 3.25 by 5 in: 2.5 + 3.25 in to the back edge.
  const Section& square = section.square_front();
  CHECK(square.closed_girth_mm() / kInch == doctest::Approx(16.5));
  CHECK(square.front_flat_top() / kInch == doctest::Approx(2.5));
  CHECK(square.back_edge_top() / kInch == doctest::Approx(5.75));
  CHECK(square.depth_mm() == doctest::Approx(section.depth_mm()));
}

TEST_CASE("neutral axis: cloth on a round follows the mean diameter") {
  // TAFE NSW toolbox 905, "What is meant by mean diameter?": 10 mm plate, outside diameter 650 mm,
  // mean diameter 640, length 2010.62 mm. A board of no size with one noodle of 630 mm, cloth 10
  // mm.
  CHECK(plane::girth(plane::hull_of_discs({{{0, 0}, 0.5 * 630 + 0.5 * 10}})) ==
        doctest::Approx(2010.62).epsilon(1e-5));
}

TEST_CASE("Section refuses what cannot be covered, each at its key") {
  const auto why_at = [](const Job& job) {
    const auto section = Section::make(job.boards, job.padding, job.cloth, job.places);
    REQUIRE_FALSE(section.has_value());
    return section.error();
  };
  Job job = test::worked_job();
  job.places.set("cloth.flap", {"job.toml", 12, 8});
  job.cloth.flap = inches(2.6);
  CHECK(why_at(job).front().why == Why::DoesNotFit);
  CHECK(why_at(job).front().place.line == 12);
  job.cloth.cut_clear = inches(1);
  job.cloth.staple_line = inches(2.5);
  CHECK(why_at(job).size() == 3);
}

}  // namespace
}  // namespace swathe
