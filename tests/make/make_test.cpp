#include "swathe/make.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "support/drawn_jobs.hpp"
#include "support/examples.hpp"
#include "support/jobs.hpp"
#include "support/made.hpp"
#include "swathe/job.hpp"
#include "swathe/write.hpp"

// The whole pass, from a job's text to its report.
namespace swathe {
namespace {

/// What a run says, made or refused, byte for byte.
std::string said(const Outcome<Made>& made) {
  if (made) return report_json(*made, {});
  std::string lines;
  for (const Refusal& fault : made.error()) lines += to_text(fault) + "\n";
  return lines;
}

/// A drawn job with more of what a file may say: seasons, a number, lapped corners, brackets.
Job drawn_file(std::mt19937_64& rng) {
  static const std::vector<std::string> kSeasons = {"none", "2026", "2025", "2023", "2019", "2013"};
  Job job = test::drawn_job(rng);
  job.season = kSeasons[rng() % kSeasons.size()];
  job.units = rng() % 2 == 0 ? Units::Inches : Units::Millimeters;
  if (rng() % 8 == 0) job.number = rng() % 2 == 0 ? "20486" : "7";
  job.boards.lapping.clear();
  for (std::size_t k = 0; k + 1 < job.frame.sides.size(); k += 2)
    job.boards.lapping.push_back(job.frame.sides[k]);
  job.padding.lapping = job.boards.lapping;
  if (rng() % 3 == 0) job.boards.joint = Joint::Lapped;
  if (rng() % 3 == 0) job.padding.corner = PaddingCorner::Butted;
  if (rng() % 4 == 0) job.cloth.fixing = Fixing::HookAndLoop;
  if (rng() % 6 == 0) job.bumpers.back().to.at = RunEnd::Corner{};
  if (rng() % 2 == 0) {
    BracketKeys bracket;
    bracket.bumper = "A";
    bracket.side = job.frame.sides[rng() % job.frame.sides.size()];
    bracket.at = SideShare{test::drawn(rng, 0, 1)};
    bracket.width = mm(test::drawn(rng, 5, 90));
    bracket.height = mm(test::drawn(rng, 5, 90));
    bracket.down = mm(test::drawn(rng, 0, 60));
    bracket.cloth = rng() % 2 == 0 ? BracketCloth::Under : BracketCloth::Window;
    job.brackets.push_back(bracket);
  }
  return job;
}

TEST_CASE("drawn jobs through make: made, or refused with a place; the same bytes twice") {
  int stood = 0, drawn = 0;
  test::for_drawn_cases("drawn-files", test::kDrawnJobs, [&](std::mt19937_64& rng) {
    const std::string text = job_text(drawn_file(rng));
    const Outcome<Made> made = test::make_text(text, "drawn.toml");
    CAPTURE(text);
    ++drawn;
    if (made) {
      ++stood;
      CHECK(made->patterns.size() == made->job.bumpers.size());
    } else {
      CHECK_FALSE(made.error().empty());
    }
    for (const Refusal& fault : made ? Refusals() : made.error()) {
      CAPTURE(to_text(fault));
      CHECK(fault.place.file == "drawn.toml");
      CHECK(fault.place.line > 1);  // line 1 is [job]: nothing is wrong with that
      CHECK(fault.place.line <= std::ranges::count(text, '\n') + 1);
      CHECK(fault.place.column > 0);
      CHECK(fault.sentence.find("expected") != std::string::npos);
    }
    CHECK(said(test::make_text(text, "drawn.toml")) == said(made));
  });
  CHECK(stood > drawn / 5);
  CHECK(stood < drawn);  // refusals are among them
}

TEST_CASE("every job among the examples is made, and meets its season's rules") {
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Outcome<Made> made = test::make_text(test::bytes_of(path), path.filename().string());
    REQUIRE_MESSAGE(made.has_value(), to_text(made.error().front()));
    CHECK(made->season.has_value());
    for (const Finding& finding : made->findings) {
      CAPTURE(finding.id);
      CHECK(finding.verdict != Verdict::Fail);
    }
  }
}

constexpr std::string_view kWrong = R"([job]
title = "Wrong in every way"
number = "20486"

[frame]
width = "28 in"
depth = "30 in"

[[bumper]]
name = "A"
from = ["front", "50%"]
to = ["back", "60%"]

[[bumper]]
name = "B"
from = ["back", "50%"]
to = ["front", "45%"]

[[bracket]]
bumper = "A"
side = "left"
at = ["29 in", "front"]
width = "3 in"
height = "2 in"

[numerals]
font = "no/such/face.ttf"

[sight]
step = "0 deg"

[paper]
shet = "letter"
)";

TEST_CASE("a wrong job: faults of keys, values and geometry in one run, by line") {
  const auto made = test::make_text(kWrong);
  REQUIRE_FALSE(made.has_value());
  std::vector<std::pair<int, int>> places;
  for (const Refusal& fault : made.error()) {
    CAPTURE(to_text(fault));
    CHECK_FALSE(fault.sentence.empty());
    places.emplace_back(fault.place.line, fault.place.column);
  }
  const std::vector<std::pair<int, int>> expected = {
      {16, 8},  // B overlaps A
      {22, 6},  // the bracket ends beyond its board
      {27, 8},  // no such font
      {30, 8},  // a step of nothing
      {33, 1},  // "shet"
  };
  CHECK(places == expected);
}

TEST_CASE("a bracket on a side its bumper does not cover is told of those it covers") {
  Job job = test::c_halves(711.2, 762);
  BracketKeys bracket;
  bracket.bumper = "A";
  bracket.side = "right";
  bracket.width = bracket.height = mm(20);
  job.brackets = {bracket};
  const auto made = test::make_text(job_text(job));
  REQUIRE_FALSE(made.has_value());
  REQUIRE(made.error().size() == 1);
  CHECK(
      made.error()[0].sentence ==
      R"(bumper "A" has no board on side "right", expected "front", "left" or "back", or no bumper named: it follows from side and place)");
}

// The girth of a convex section is the integral of its width of support over all directions
// (Cauchy's formula; Santalo, Integral Geometry and Geometric Probability, I.1).
double girth_by_support(const std::vector<std::pair<FlatPoint, double>>& discs) {
  constexpr int kSteps = 200000;
  double sum = 0.0;
  for (int k = 0; k < kSteps; ++k) {
    const double angle = 2 * std::numbers::pi * k / kSteps;
    double support = -1e300;
    for (const auto& [center, radius] : discs)
      support = std::max(support, center.x * std::cos(angle) + center.y * std::sin(angle) + radius);
    sum += support;
  }
  return sum * 2 * std::numbers::pi / kSteps;
}

/// Two noodles against a board, every disc grown by half the cloth.
double girth_of_noodles(double t, double height, double noodle, double cloth) {
  const double r = 0.5 * cloth;
  return girth_by_support({{{0, 0}, r},
                           {{t, 0}, r},
                           {{t, height}, r},
                           {{0, height}, r},
                           {{t + 0.5 * noodle, 0.5 * height - 0.5 * noodle}, 0.5 * noodle + r},
                           {{t + 0.5 * noodle, 0.5 * height + 0.5 * noodle}, 0.5 * noodle + r}});
}

void check_extreme(double height, double noodle, double cloth) {
  Job job = test::c_halves(711.2, 762);
  job.season = "none";
  job.boards.thickness = mm(18);
  job.boards.height = mm(height);
  job.padding.diameter = mm(noodle);
  job.cloth.thickness = mm(cloth);
  CAPTURE(height);
  CAPTURE(noodle);
  CAPTURE(cloth);
  const auto made = test::make_text(job_text(job));
  REQUIRE_MESSAGE(made.has_value(), to_text(made.error().front()));
  CHECK(made->section.closed_girth_mm() ==
        doctest::Approx(girth_of_noodles(18, height, noodle, cloth)).epsilon(1e-8));
  CHECK(made->section.depth_mm() == doctest::Approx(18 + noodle + 0.5 * cloth));
  for (const Pattern& pattern : made->patterns) CHECK(is_simple(pattern.outline));
}

TEST_CASE("noodles a tenth of the board, and cloth thicker than the padding, are made right") {
  check_extreme(127, 63.5, 0.5);
  check_extreme(127, 12.7, 0.5);
  check_extreme(127, 5, 10);
  check_extreme(1000, 5, 0);
}

/// Two halves of mitred boards and padding round a frame of no fit and no season.
Job mitred(plane::Polygon corners, std::vector<std::string> sides) {
  Job job = test::c_halves(700, 700);
  job.season = "none";
  job.frame.fit = mm(0);
  job.boards.stock[1] = mm(20000);  // sheets as long as any side
  job.frame.corners = std::move(corners);
  job.frame.sides = std::move(sides);
  job.boards.joint = Joint::Mitred;
  job.padding.corner = PaddingCorner::Mitred;
  return job;
}

/// Made, every cover simple, every piece longer than nothing, and the cloth's far end where the
/// frame says.
void check_made(const Job& job) {
  const auto made = test::make_text(job_text(job));
  REQUIRE_MESSAGE(made.has_value(), to_text(made.error().front()));
  for (std::size_t k = 0; k < made->patterns.size(); ++k) {
    const Pattern& pattern = made->patterns[k];
    CHECK(is_simple(pattern.outline));
    CHECK(area(pattern.outline) > 0.0);
    for (const Staple& staple : pattern.staples) CHECK(contains(pattern.outline, staple.at));
    // Cloth coordinates and space agree at the far end: the end face is square to its side.
    const Wrap& wrap = made->wraps[k];
    const RunSide& last = wrap.run().sides.back();
    const FrameSide& side = made->frame.sides()[static_cast<std::size_t>(last.side)];
    const auto far = wrap.at({wrap.run().length, 0.0});
    REQUIRE(far.has_value());
    CHECK(dot(FlatPoint{far->x, far->y} - side.from, side.along) == doctest::Approx(last.to_x));
  }
  for (const bumper::Piece& piece : made->boards) CHECK(piece.length_mm > 0.0);
  for (const bumper::Piece& piece : made->padding) CHECK(piece.length_mm > 0.0);
}

Refusals faults_of(const Job& job) {
  const auto made = test::make_text(job_text(job), "job.toml");
  REQUIRE_FALSE(made.has_value());
  for (const Refusal& fault : made.error()) {
    CHECK(fault.place.file == "job.toml");
    CHECK(fault.place.line > 1);
    CHECK(fault.sentence.find("expected") != std::string::npos);
  }
  return made.error();
}

TEST_CASE("long and short, through the whole pass: made right or refused with a place") {
  const double c = std::sqrt(0.5);
  const std::vector<std::string> five = {"front", "chamfer", "left", "back", "right"};
  SUBCASE("a chamfer of 1 mm, and one shorter than any side may be") {
    check_made(mitred({{700, 700}, {c, 700}, {0, 700 - c}, {0, 0}, {700, 0}}, five));
    // A side of under half a millimeter is a slip of the pen.
    const double tip = 0.4 * c;
    CHECK(faults_of(mitred({{700, 700}, {tip, 700}, {0, 700 - tip}, {0, 0}, {700, 0}}, five))[0]
              .why == Why::DoesNotFit);
  }
  SUBCASE("a corner that turns by 1 degree") {
    const double rise = 350 * std::tan(degrees(1).radians() / 2);
    Job job = mitred({{700, 700}, {350, 700 + rise}, {0, 700}, {0, 0}, {700, 0}}, five);
    check_made(job);
    job.cloth.relief = Relief::Sewn;
    check_made(job);
    job.padding.corner = PaddingCorner::Bent;
    check_made(job);
    // Square strips lapped there would be cut 89 deg off square.
    job.cloth.relief = Relief::Fold;
    job.padding.corner = PaddingCorner::Butted;
    job.padding.lapping = {"front", "left", "right"};
    CHECK(faults_of(job)[0].why == Why::DoesNotFit);
    job.padding.corner = PaddingCorner::Mitred;
    job.boards.joint = Joint::Lapped;
    job.boards.lapping = {"front", "left", "right"};
    CHECK(faults_of(job)[0].why == Why::DoesNotFit);
  }
  SUBCASE("sides of 10 m and of 20 m, the most a length may be") {
    for (const double length : {10000.0, 20000.0}) {
      Job job = test::c_halves(length, 762);
      job.season = "none";
      job.boards.stock[1] = mm(20000);  // sheets as long as any side
      check_made(job);
      job.number = "20486";
      check_made(job);
    }
    const std::string too_long = job_text(test::c_halves(20001, 762));
    REQUIRE_FALSE(test::make_text(too_long).has_value());
    CHECK(test::make_text(too_long).error()[0].why == Why::OutOfRange);
  }
  SUBCASE("a frame 50 mm wide: covered on its long sides; no room to turn a corner on the short") {
    Job job = test::c_halves(50, 762);
    job.season = "none";
    for (const Refusal& fault : faults_of(job)) CHECK(fault.why == Why::DoesNotFit);
    job.bumpers = {test::half("A", "left", "left")};
    job.bumpers[0].from.at = RunEnd::Share{0.1};
    job.bumpers[0].to.at = RunEnd::Share{0.9};
    check_made(job);
    // Or right round it: no end stands on a short side.
    job.bumpers = {test::half("A", "left", "left")};
    job.bumpers[0].from.at = RunEnd::Share{0.6};
    job.bumpers[0].to.at = RunEnd::Share{0.4};
    check_made(job);
  }
}

TEST_CASE("make: covers that take too many sheets of paper are refused at the paper") {
  Job job = test::c_halves(5000, 5000);
  job.boards.stock[1] = mm(6000);  // longer than the boards
  job.paper.margin = mm(10);
  job.paper.overlap = mm(10);
  const auto tiles_on = [&](const char* sheet, double width, double height) {
    job.paper.sheet = sheet;
    job.paper.width = mm(width);
    job.paper.height = mm(height);
    return test::make_text(job_text(job));
  };
  CHECK(tiles_on("a4", 210, 297));
  const auto small = tiles_on("own size", 120, 120);
  REQUIRE_FALSE(small);
  REQUIRE(small.error().size() == 1);
  const Refusal& fault = small.error().front();
  CHECK(fault.why == Why::TooLarge);
  CHECK(fault.place.line == read_job(job_text(job), "job").job.places.of("paper.sheet").line);
  CHECK(fault.place.line > 1);
  CHECK(fault.sentence.find("expected at most 500") != std::string::npos);
}

TEST_CASE("make: a font or a rule file too large is refused at its key, or in itself") {
  Job job = test::c_halves(700, 760);
  job.number = "7";
  job.numerals.font = "mine.ttf";
  const auto holding = [&](std::size_t bytes) {
    const std::string text = job_text(job);
    NamedFiles files;
    for (const std::string& name : files_named(text)) files.emplace(name, std::string(bytes, '#'));
    CHECK(files.size() == 1);
    return make(text, "job.toml", files);
  };
  const auto font = holding((std::size_t{16} << 20) + 1);
  REQUIRE_FALSE(font);
  CHECK(font.error().front().why == Why::TooLarge);
  CHECK(font.error().front().place.line ==
        read_job(job_text(job), "job").job.places.of("numerals.font").line);
  job.numerals.font = "Anton";
  job.season = "mine.toml";
  const auto rules = holding((std::size_t{1} << 18) + 1);
  REQUIRE_FALSE(rules);
  CHECK(rules.error().front().why == Why::TooLarge);
  CHECK(rules.error().front().place.file == "mine.toml");
}

}  // namespace
}  // namespace swathe
