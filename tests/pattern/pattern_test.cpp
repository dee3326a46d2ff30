#include "swathe/pattern.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "pattern/fastening.hpp"
#include "rules/practice.hpp"
#include "support/drawn.hpp"
#include "support/jobs.hpp"
#include "support/patterns.hpp"

namespace swathe {
namespace {

constexpr double kInch = 25.4;

using test::pattern_of;

BracketKeys bracket(const char* bumper, const char* side, double at_in) {
  BracketKeys keys;
  keys.bumper = bumper;
  keys.side = side;
  keys.at = test::from_start(side, inches(at_in));
  keys.width = inches(2);
  keys.height = inches(1.5);
  return keys;
}

Job drawn_job(std::mt19937_64& rng) {
  Job job = test::c_halves(test::drawn(rng, 300, 900), test::drawn(rng, 300, 900));
  job.boards.thickness = mm(test::drawn(rng, 12, 22));
  job.padding.diameter = mm(test::drawn(rng, 45, 70));
  job.cloth.thickness = mm(test::drawn(rng, 0, 2));
  if (rng() % 2 == 0) job.padding.corner = PaddingCorner::Mitred;
  const int brackets = static_cast<int>(rng() % 4);
  for (int k = 0; k < brackets; ++k) {
    const bool on_a = rng() % 2 == 0;
    const char* side = on_a ? "left" : "right";
    BracketKeys keys = bracket(on_a ? "A" : "B", side, test::drawn(rng, 0, 8));
    if (rng() % 2 == 0) keys.bumper.clear();
    if (rng() % 2 == 0) keys.at = test::from_end(side, std::get<FromCorner>(keys.at).distance);
    keys.down = inches(test::drawn(rng, 0, 3));
    keys.cloth = rng() % 2 == 0 ? BracketCloth::Under : BracketCloth::Window;
    keys.holes = {{10, 10}};
    job.brackets.push_back(keys);
  }
  return job;
}

TEST_CASE("drawn jobs: outlines are simple and run counter-clockwise") {
  test::for_drawn_cases("pattern-outline", 300, [](std::mt19937_64& rng) {
    const Job job = drawn_job(rng);
    for (const std::size_t bumper : {0u, 1u}) {
      const Pattern pattern = pattern_of(job, bumper);
      CHECK(is_simple(pattern.outline));
      CHECK(area(pattern.outline) > 0);
      for (const plane::Polygon& hole : pattern.holes) CHECK(is_simple(hole));
    }
  });
}

TEST_CASE("cloth between the back edges less the darts is the surface") {
  // Second method: the surface's area as a fine mesh of true triangles in space.
  const Job job = test::c_halves(28 * kInch, 30 * kInch);
  const Wrap wrap = test::wraps_of(job)[0];
  const Section& section = wrap.section();
  double mesh = 0.0;
  constexpr int kRows = 20000;  // fine enough for the small arcs of the cloth at the board's edges
  const double rise = (section.back_edge_top() - section.back_edge_bottom()) / kRows;
  for (int r = 0; r < kRows; ++r) {
    const double u0 = section.back_edge_bottom() + rise * r, u1 = u0 + rise;
    // One strip a side between its dart edges: a flat quadrilateral in space.
    for (std::size_t k = 0; k < wrap.run().sides.size(); ++k) {
      const auto edge = [&](double u, bool right) {
        if (right ? k == wrap.run().corners.size() : k == 0)
          return *wrap.at({right ? wrap.run().length : 0.0, u});
        const RunCorner& corner = wrap.run().corners[right ? k : k - 1];
        return *wrap.at({corner.s + (right ? -1 : 1) * wrap.dart(corner, u), u});
      };
      const SpacePoint a = edge(u0, false), b = edge(u0, true), c = edge(u1, true),
                       d = edge(u1, false);
      const double low = apart(a, b), high = apart(d, c);
      const double across = [&] {
        // distance between the two level lines
        const SpacePoint m{(b.x - a.x) / low, (b.y - a.y) / low, (b.z - a.z) / low};
        const SpacePoint w{d.x - a.x, d.y - a.y, d.z - a.z};
        const double along = w.x * m.x + w.y * m.y + w.z * m.z;
        return std::sqrt(std::max(0.0, w.x * w.x + w.y * w.y + w.z * w.z - along * along));
      }();
      mesh += 0.5 * (low + high) * across;
    }
  }
  CHECK(pattern_of(job).surface_area == doctest::Approx(mesh).epsilon(2e-6));
}

TEST_CASE("the dart over the board's top: area w^2 tan(theta/2)") {
  // General corner, flap of depth w turned through theta: dart of mouth 2 w tan(theta/2) and area
  // w^2 tan(theta/2); theta 90, w 2: mouth 4, area 4 (exact geometry; the single hem of a mitred
  // square corner). Here w is the flat top, t + r = 2 in deep, and the dart starts where the round
  // ends.
  const Job job = test::worked_job();
  const Wrap wrap = test::wraps_of(job)[0];
  const Section& section = wrap.section();
  const RunCorner& corner = wrap.run().corners[0];
  const double start = wrap.dart(corner, section.top_tangent());
  double surplus = 0.0;
  const double w = section.back_edge_top() - section.top_tangent();
  constexpr int kSteps = 1000;
  for (int k = 0; k < kSteps; ++k)
    surplus += 2 * (wrap.dart(corner, section.top_tangent() + w * (k + 0.5) / kSteps) - start) * w /
               kSteps;
  CHECK(w / kInch == doctest::Approx(2.0));
  CHECK(surplus / (kInch * kInch) == doctest::Approx(4.0).epsilon(1e-9));
}

TEST_CASE("notches: full width by the back edge, never nearer the front than cut_clear") {
  const Job job = test::c_halves(28 * kInch, 30 * kInch);
  const Wrap wrap = test::wraps_of(job)[0];
  const Pattern pattern = pattern_of(job);
  REQUIRE(pattern.corners.size() == 2);
  const double limit = wrap.section().thickness_mm() - job.cloth.cut_clear.mm();
  for (const FlatPoint p : pattern.outline)
    if (p.x >= 0 && p.x <= pattern.length) CHECK(wrap.section().at(p.y).d <= limit + 1e-6);
  const PatternCorner& corner = pattern.corners[0];
  const double half =
      wrap.dart(wrap.run().corners[0], wrap.section().back_edge_top()) + job.cloth.setback.mm();
  for (const plane::Polygon* notch : {&corner.notch_top, &corner.notch_bottom}) {
    const plane::Box box = bounds(*notch);
    CHECK(box.width() == doctest::Approx(2 * half));
    CHECK(box.middle().x == doctest::Approx(corner.s));
  }
  // The cloth is whole between flap and notch: a point just outside a notch's side is on the cloth.
  CHECK(contains(pattern.outline, {corner.s + half + 0.01, wrap.section().cloth_edge_top() - 1}));
  CHECK_FALSE(contains(pattern.outline, {corner.s + half - 0.01,
                                         wrap.section().square_front().back_edge_top() + 0.01}));
}

TEST_CASE("ends: ears that never meet and a tongue that reaches the back") {
  const Job job = test::worked_job();
  const Pattern pattern = pattern_of(job);
  REQUIRE(pattern.ends.size() == 2);
  // d_max + tau (pi - 1) / 2 + reach with tau = 0: 3.25 + 2 in.
  CHECK(pattern.ends[0].tongue / kInch == doctest::Approx(5.25));
  CHECK(2 * pattern.ends[0].ears <= job.boards.height.mm() + 1e-9);
  CHECK(pattern.cloth_length == doctest::Approx(pattern.length + 2 * pattern.ends[0].tongue));
}

TEST_CASE("staples: equal spaces no larger than asked, clear of keep-outs, numbered once") {
  test::for_drawn_cases("staples", test::kDrawnJobs, [](std::mt19937_64& rng) {
    const Job job = drawn_job(rng);
    const Wrap wrap = test::wraps_of(job)[0];
    const Pattern pattern = pattern_of(job);
    std::vector<double> top;
    for (std::size_t k = 0; k < pattern.staples.size(); ++k) {
      const Staple& staple = pattern.staples[k];
      CHECK(staple.order == static_cast<int>(k) + 1);
      CHECK(contains(pattern.outline, staple.at));
      for (const plane::Polygon& hole : pattern.holes) CHECK_FALSE(contains(hole, staple.at));
      for (const BracketOnPattern& bracket : pattern.brackets)
        for (const plane::Path& footprint : bracket.footprints)
          CHECK_FALSE(bounds(footprint).holds(staple.at));
      if (staple.on != Staple::On::Flap) continue;
      for (const RunCorner& corner : wrap.run().corners)
        CHECK(std::abs(staple.at.x - corner.s) >=
              corner.past + practice::kStaplerReach.mm() - 1e-9);
      if (staple.at.y > 0) top.push_back(staple.at.x);
    }
    std::ranges::sort(top);
    // Between two neighbors lies either a space no larger than asked or a keep-out.
    for (std::size_t k = 1; k < top.size(); ++k) {
      if (top[k] - top[k - 1] <= job.cloth.staple_spacing.mm() + 1e-6) continue;
      bool excused = false;
      for (const RunCorner& corner : wrap.run().corners)
        excused = excused || (corner.s > top[k - 1] && corner.s < top[k]);
      for (const BracketOnPattern& bracket : pattern.brackets)
        excused = excused || (bracket.s + bracket.width > top[k - 1] && bracket.s < top[k]);
      CHECK(excused);
    }
  });
}

TEST_CASE("a straight strip takes ceil(L / spacing) + 1 staples in equal steps") {
  // No standard gives a staple spacing: only the count and the equal steps are checked.
  Job job = test::worked_job();
  job.bumpers.resize(1);
  job.bumpers[0].from = {"front", FromCorner{mm(100), "right"}};
  job.bumpers[0].to = {"front", FromCorner{mm(500), "right"}};
  job.bumpers[0].end_clearance = mm(0);
  const Pattern pattern = pattern_of(job);
  const double run = 400 - 2 * practice::kFromFreeEnd.mm();
  const auto top = std::ranges::count_if(pattern.staples, [](const Staple& staple) {
    return staple.on == Staple::On::Flap && staple.at.y > 0;
  });
  CHECK(top == static_cast<int>(std::ceil(run / (1.5 * kInch))) + 1);
  CHECK(pattern.staples[0].at.x == doctest::Approx(200).epsilon(0.05));
  CHECK(pattern.staples[0].at.y > 0);
  CHECK(pattern.staples[1].at.y < 0);
}

TEST_CASE("staples: side by side from the first one's, then ears, then tongues") {
  // A pleat is folded when the staples on this side of it hold, and before those beyond it: the
  // order of work at the bench, common practice, no source.
  test::for_drawn_cases("staple-order", test::kDrawnJobs, [](std::mt19937_64& rng) {
    const Job job = drawn_job(rng);
    const Wrap wrap = test::wraps_of(job)[0];
    const Pattern pattern = pattern_of(job);
    if (pattern.staples.empty()) return;
    const double first = pattern.staples.front().at.x;
    const Staple* before = nullptr;
    for (const Staple& staple : pattern.staples) {
      if (before) CHECK(before->on <= staple.on);
      if (staple.on == Staple::On::Flap) {
        const auto between = std::ranges::count_if(wrap.run().corners, [&](const RunCorner& c) {
          return (c.s > first) != (c.s > staple.at.x);
        });
        CHECK(staple.corners == between);
        if (before) CHECK(before->corners <= staple.corners);
      }
      before = &staple;
    }
  });
}

TEST_CASE("staples: one through each ear, into the middle of the board's end") {
  // Board 3/4 in by 5 in: the section is 3/4 in deep to the board's front, and 3/8 in is its
  // middle; the top of the board is flat, so that 3/8 in of cloth lies between the staple and the
  // back edge. Ears reach 2 1/2 in; half of that is 1 1/4 in.
  const Job job = test::worked_job();
  const Wrap wrap = test::wraps_of(job)[0];
  const Pattern pattern = pattern_of(job);
  const double back = wrap.section().back_edge_top();
  int ears = 0;
  for (const Staple& staple : pattern.staples) {
    if (staple.on != Staple::On::Ear) continue;
    ++ears;
    CHECK((back - std::abs(staple.at.y)) / kInch == doctest::Approx(0.375));
    const double out = staple.at.x < 0 ? -staple.at.x : staple.at.x - pattern.length;
    CHECK(out / kInch == doctest::Approx(1.25));
  }
  CHECK(ears == 4);
}

namespace {

/// The worked job with a bracket at the start of bumper A's front, where its tongue goes.
Pattern with_bracket_at_end(BracketKeys bracket, Length from_end = {}) {
  Job job = test::worked_job();
  bracket.side = "front";
  bracket.at = FromCorner{inches(14.25) + from_end, "right"};  // half of 28 in, and the clearance
  job.brackets = {bracket};
  return pattern_of(job);
}

long on_tongue(const Pattern& pattern, bool start) {
  return std::ranges::count_if(pattern.staples, [&](const Staple& staple) {
    return staple.on == Staple::On::Tongue && (staple.at.x < 0) == start;
  });
}

}  // namespace

TEST_CASE("staples: a tongue's keep clear of a bracket at the bumper's end") {
  BracketKeys bracket;
  bracket.width = inches(3);
  bracket.height = inches(2);
  bracket.down = inches(1.5);  // the middle of a board 5 in high
  bracket.clearance = inches(0.25);
  const Pattern blocked = with_bracket_at_end(bracket);
  CHECK(on_tongue(blocked, true) == 0);  // the tongue is 2 1/2 in high, the bracket and room too
  CHECK(on_tongue(blocked, false) > 0);
  // The tongue reaches 2 in.
  CHECK(on_tongue(with_bracket_at_end(bracket, inches(4)), true) > 0);
}

TEST_CASE("staples keep clear of a hole beside its bracket") {
  Job job = test::worked_job();
  BracketKeys bracket;
  bracket.side = "left";
  bracket.at = FromCorner{inches(11), "front"};
  bracket.width = bracket.height = inches(1);
  bracket.clearance = inches(0.25);
  bracket.holes = {{3 * kInch, 1 * kInch}};  // 2 in right of it, on the staple line
  job.brackets = {bracket};
  const Pattern pattern = pattern_of(job);
  REQUIRE(pattern.brackets.size() == 1);
  REQUIRE(pattern.brackets[0].holes.size() == 1);
  const FlatPoint hole = pattern.brackets[0].holes[0].at;
  // 3 mm of the hole, 1/4 in of room, 5 mm of the crown.
  for (const Staple& staple : pattern.staples)
    if (staple.on == Staple::On::Flap && staple.at.y > 0)
      CHECK(std::abs(staple.at.x - hole.x) >= 3 + 0.25 * kInch + 5 - 1e-6);
}

TEST_CASE("every window maps back to its bracket on the board's back") {
  test::for_drawn_cases("windows", test::kDrawnJobs, [](std::mt19937_64& rng) {
    const Job job = drawn_job(rng);
    for (std::size_t bumper : {0u, 1u}) {
      const Wrap wrap = test::wraps_of(job)[bumper];
      const Pattern pattern = pattern_of(job, bumper);
      for (const BracketOnPattern& bracket : pattern.brackets) {
        const BracketKeys& keys = job.brackets[static_cast<std::size_t>(bracket.keys)];
        const auto leg = std::ranges::find_if(wrap.run().sides, [&](const RunSide& on) {
          return wrap.frame().sides()[static_cast<std::size_t>(on.side)].name == keys.side;
        });
        REQUIRE(leg != wrap.run().sides.end());
        // Where the maker measured: along the frame's own side, which the play (1/16 in) makes
        // longer at both ends, and down from the board's top edge.
        const auto& [distance, corner] = std::get<FromCorner>(keys.at);
        const double from_corner = job.frame.fit.mm() + distance.mm();
        const double left_x = corner == (keys.side == "left" ? "front" : "back")
                                  ? from_corner
                                  : leg->to_x - from_corner - keys.width.mm();
        const double top_z = job.frame.floor_gap.mm() + job.boards.height.mm() - keys.down.mm();
        const FrameSide& side = wrap.frame().sides()[static_cast<std::size_t>(leg->side)];
        // Beside a filled corner the board's edge lies further along the cloth.
        const double taken = taken_at_corners(wrap, job.cloth, bracket.s + 0.5 * bracket.width);
        for (const plane::Path& footprint : bracket.footprints)
          for (const plane::Vertex& v : footprint.vertices) {
            const auto at = wrap.at({v.at.x, v.at.y > 0 ? v.at.y - taken : v.at.y + taken});
            REQUIRE(at.has_value());
            const double x = dot(FlatPoint{at->x, at->y} - side.from, side.along);
            CHECK(x >= left_x - 1e-6);
            CHECK(x <= left_x + keys.width.mm() + 1e-6);
            CHECK(at->z <= top_z + 1e-6);
            CHECK(at->z >= top_z - keys.height.mm() - 1e-6);
          }
        // A window never bares the board's top: it stays behind the back edge.
        for (const plane::Path& window : bracket.windows)
          for (const FlatPoint p : flatten(window, 0.01)) CHECK(wrap.section().at(p.y).d <= 1e-9);
      }
    }
  });
}

TEST_CASE("a window with less than the least strip beyond it is opened to the cloth's edge") {
  Job job = test::worked_job();
  BracketKeys keys = bracket("A", "left", 11);
  keys.cloth = BracketCloth::Window;
  keys.height = inches(1.4);  // and 1/4 in clearance: 0.35 in of flap would be left
  job.brackets = {keys};
  CHECK(pattern_of(job).brackets[0].open_to_edge);
  job.brackets[0].height = inches(0.5);
  CHECK_FALSE(pattern_of(job).brackets[0].open_to_edge);
}

TEST_CASE("a bracket beyond its board, or on a side without one, is refused at its key") {
  Job job = test::worked_job();
  job.brackets = {bracket("A", "left", 29), bracket("A", "right", 2)};
  job.places.set("bracket.0.at", {"job.toml", 40, 6});
  job.places.set("bracket.1.side", {"job.toml", 50, 8});
  const auto pattern = make_pattern(test::wraps_of(job)[0], job);
  REQUIRE_FALSE(pattern.has_value());
  REQUIRE(pattern.error().size() == 2);
  CHECK(pattern.error()[0].why == Why::DoesNotFit);
  CHECK(pattern.error()[0].place.line == 40);
  CHECK(pattern.error()[1].why == Why::UnknownName);
  CHECK(pattern.error()[1].place.line == 50);
}

TEST_CASE("a bracket that names no bumper is on the one whose board is there") {
  Job job = test::worked_job();  // A has the front from 14 1/4 in to 28 in, B up to 13 3/4 in
  BracketKeys keys = bracket("", "front", 0);
  const auto bumper_at = [&](const SidePlace& at) {
    keys.at = at;
    job.brackets = {keys};
    const std::vector<Wrap> wraps = test::wraps_of(job);
    std::string on;
    for (const Wrap& wrap : wraps) {
      const auto pattern = make_pattern(wrap, job);
      REQUIRE(pattern.has_value());
      if (!pattern->brackets.empty()) on += wrap.run().name;
    }
    CHECK(faults_of_brackets(wraps, job).empty() == !on.empty());
    return on;
  };
  CHECK(bumper_at(FromCorner{inches(14.25), "right"}) == "A");
  CHECK(bumper_at(FromCorner{inches(0), "left"}) == "A");
  CHECK(bumper_at(FromCorner{inches(11.75), "right"}) == "B");  // 2 in wide
  CHECK(bumper_at(SideShare{0.25}) == "B");
  CHECK(bumper_at(SideShare{0.5}).empty());  // over the gap
  CHECK(bumper_at(FromCorner{inches(12), "right"}).empty());
  CHECK(faults_of_brackets(test::wraps_of(job), job)[0].sentence ==
        "the bracket ends 14 in from the frame's corner with \"right\", and the board of bumper "
        "\"B\" already at 13 3/4 in, expected at most [\"11 3/4 in\", \"right\"]");
}

TEST_CASE("a centered bracket has its center in the middle of the frame's side") {
  Job job = test::c_halves(28 * kInch, 30 * kInch);  // with its play of 1/16 in
  BracketKeys keys = bracket("", "left", 0);
  keys.at = SideShare{0.5};
  job.brackets = {keys};
  const Wrap wrap = test::wraps_of(job)[0];
  const Pattern pattern = pattern_of(job);
  REQUIRE(pattern.brackets.size() == 1);
  const RunSide& leg = wrap.run().sides[1];
  CHECK(pattern.brackets[0].s + kInch ==  // 2 in wide
        doctest::Approx(0.5 * (leg.from_x + leg.to_x) + leg.s_minus_x));
}

TEST_CASE("holes count along from the bracket's edge nearer the corner that is named") {
  Job job = test::worked_job();
  BracketKeys keys = bracket("", "left", 10);
  keys.holes = {{0.5 * kInch, kInch}};
  const auto hole_s = [&](const SidePlace& at, const char* holes_from) {
    keys.at = at;
    keys.holes_from = holes_from;
    job.brackets = {keys};
    const Pattern pattern = pattern_of(job);
    REQUIRE(pattern.brackets.at(0).holes.size() == 1);
    return (pattern.brackets[0].holes[0].at.x - pattern.brackets[0].s) / kInch;
  };
  // Seen from outside, the side left begins at its left end, which is the corner with front.
  CHECK(hole_s(FromCorner{inches(10), "front"}, "") == doctest::Approx(0.5));
  CHECK(hole_s(FromCorner{inches(10), "back"}, "") == doctest::Approx(1.5));  // of 2 in
  CHECK(hole_s(SideShare{0.5}, "front") == doctest::Approx(0.5));
  CHECK(hole_s(SideShare{0.5}, "back") == doctest::Approx(1.5));
}

// A bumper from near a front's middle all round to its middle: its boards there are 200 mm (by the
// left side, which follows the front) and 460 mm (by the right side).
TEST_CASE("of two boards on one side the bracket is on that which is there") {
  Job job = test::worked_job();
  job.frame = test::rectangle_frame(700, 700);
  job.frame.fit = mm(0);
  job.bumpers = {{"A",
                  {"front", FromCorner{mm(500), "right"}},
                  {"front", FromCorner{mm(460), "right"}},
                  mm(0)}};
  job.brackets = {bracket("A", "front", 2)};
  job.places.set("bracket.0.at", {"job.toml", 40, 6});
  const Run run = test::wraps_of(job)[0].run();
  SUBCASE("each board by the side it lies next to") {
    job.brackets[0].at = FromCorner{mm(520), "right"};
    CHECK(pattern_of(job).brackets[0].s == doctest::Approx(20));
    CHECK(pattern_of(job).brackets[0].leg == 0);
    job.brackets[0].at = FromCorner{inches(2), "right"};
    CHECK(pattern_of(job).brackets[0].s ==
          doctest::Approx(run.length - 460 + 2 * kInch));  // that board ends with the cover
    CHECK(pattern_of(job).brackets[0].leg == 4);
  }
  SUBCASE("over the gap") {
    job.brackets[0].at = FromCorner{mm(450), "right"};
    const auto pattern = make_pattern(test::wraps_of(job)[0], job);
    REQUIRE_FALSE(pattern.has_value());
    REQUIRE(pattern.error().size() == 1);
    CHECK(pattern.error()[0].why == Why::DoesNotFit);
    CHECK(pattern.error()[0].place.line == 40);
  }
}

TEST_CASE("clear stretches hold no dart, notch or end") {
  test::for_drawn_cases("clear", 200, [](std::mt19937_64& rng) {
    const Job job = drawn_job(rng);
    const Wrap wrap = test::wraps_of(job)[0];
    const double half = test::drawn(rng, 10, 60);
    for (const ClearStretch& clear : clear_stretches(wrap, half))
      for (int k = 0; k < 50; ++k) {
        const ClothPoint p{test::drawn(rng, clear.from_s, clear.to_s),
                           test::drawn(rng, -half, half)};
        CHECK(wrap.at(p).has_value());
      }
  });
}

TEST_CASE("sewn corners: cut one allowance inside the stitch line, the point left uncut") {
  Job job = test::worked_job();
  job.cloth.relief = Relief::Sewn;
  job.places.set("cloth.relief", {"job.toml", 33, 10});
  const auto butted = make_pattern(test::wraps_of(job)[0], job);
  REQUIRE_FALSE(butted.has_value());
  CHECK(butted.error()[0].why == Why::NotSupported);
  CHECK(butted.error()[0].place.line == 33);

  job.padding.corner = PaddingCorner::Mitred;
  const Wrap wrap = test::wraps_of(job)[0];
  const Pattern pattern = pattern_of(job);
  CHECK(is_simple(pattern.outline));
  CHECK(pattern.pleats.empty());
  CHECK(pattern.stitches.size() == 8);
  const RunCorner& corner = wrap.run().corners[0];
  const double seam = job.cloth.seam.mm();
  // Just inside and outside the cut, where the dart is wide enough for both allowances.
  for (double u = wrap.section().top_tangent(); u < wrap.section().back_edge_top() - 1; u += 5) {
    const double cut = wrap.dart(corner, u) - seam;
    CHECK(contains(pattern.outline, {corner.s + cut + 0.1, u}));
    CHECK_FALSE(contains(pattern.outline, {corner.s + cut - 0.1, u}));
  }
  // Where the dart is narrower than one allowance the cloth is whole.
  for (double u = 0; wrap.dart(corner, u) < seam - 0.1; u += 1)
    CHECK(contains(pattern.outline, {corner.s, u}));
}

TEST_CASE("a sewn dart narrower than its allowances is stitched, and cut in the flap alone") {
  for (const double turn : {8.0, 12.0, 16.0}) {
    CAPTURE(turn);
    Job job = test::worked_job();
    job.padding.corner = PaddingCorner::Mitred;
    job.boards.joint = Joint::Mitred;
    job.cloth.relief = Relief::Sewn;
    const double rise = 350 * std::tan(degrees(0.5 * turn).radians());
    job.frame.corners = {{700, 700}, {350, 700 + rise}, {0, 700}, {0, 0}, {700, 0}};
    job.frame.sides = {"front", "front left", "left", "back", "right"};
    const Wrap wrap = test::wraps_of(job)[0];
    const Section& section = wrap.section();
    const RunCorner& corner = wrap.run().corners[0];
    CHECK(Angle::from_radians(corner.turn).degrees() == doctest::Approx(turn));
    // d_max tan(theta / 2), 3.25 in deep: less than half an inch up to 17.49 deg.
    const double half = 3.25 * kInch * std::tan(degrees(0.5 * turn).radians());
    REQUIRE(half < job.cloth.seam.mm());
    const Pattern pattern = pattern_of(job);
    CHECK(is_simple(pattern.outline));
    CHECK(pattern.pleats.empty());
    CHECK(pattern.corners[0].sewn);
    // The stitch lines run to the back edge, on cloth as far as there; behind it the flap is cut.
    for (double u = 1; u < section.back_edge_top() - 0.1; u += 2)
      CHECK(contains(pattern.outline, {corner.s, u}));
    const double behind = section.back_edge_top() + 0.1, wide = half + job.cloth.setback.mm();
    CHECK_FALSE(contains(pattern.outline, {corner.s, behind}));
    CHECK_FALSE(contains(pattern.outline, {corner.s + wide - 0.1, behind}));
    CHECK(contains(pattern.outline, {corner.s + wide + 0.1, behind}));
    REQUIRE(pattern.stitches.size() == 12);
    const FlatPoint last = pattern.stitches[0].vertices.back().at;
    CHECK(last.y == doctest::Approx(section.back_edge_top()));
    CHECK(corner.s - last.x == doctest::Approx(half));
  }
}

TEST_CASE(
    "hook-and-loop covers: a hem folded under, strips instead of staples, a stretch of their own") {
  Job job = test::worked_job();
  job.cloth.fixing = Fixing::HookAndLoop;
  job.cloth.hook_and_loop.stretch = 0.0;
  const Wrap wrap = test::wraps_of(job)[0];
  const Pattern pattern = pattern_of(job);
  CHECK(pattern.staples.empty());
  CHECK(is_simple(pattern.outline));
  // Flap 2 1/4 in and hem 1/2 in, top and bottom, beyond the back edges.
  CHECK(pattern.cloth_width / kInch ==
        doctest::Approx(
            (wrap.section().back_edge_top() - wrap.section().back_edge_bottom()) / kInch + 5.5));
  // Three flaps above, three below, two tongues.
  REQUIRE(pattern.strips.size() == 8);
  for (const plane::Path& strip : pattern.strips) {
    const plane::Box box = bounds(strip);
    CHECK(contains(pattern.outline, box.middle()));
    CHECK(std::min(box.width(), box.height()) / kInch == doctest::Approx(1.0));
  }
  // Of three flaps above and three below; each hem is level, half an inch inside the edge.
  CHECK(pattern.hems.size() == 6);
  for (const HemFold& hem : pattern.hems) {
    const double edge =
        hem.top ? wrap.section().cloth_edge_top() : wrap.section().cloth_edge_bottom();
    CHECK(hem.from.y == hem.to.y);
    CHECK(std::abs(edge - hem.from.y) / kInch == doctest::Approx(0.5));
    CHECK(contains(pattern.outline, 0.5 * (hem.from + hem.to)));
    CHECK((hem.under().y < 0) == hem.top);  // the cloth's edge goes in, to the middle
  }
  // A pleat's cloth goes along the cover, and so is no hem's.
  CHECK_FALSE(pattern.pleats.empty());
  for (const PleatLine& pleat : pattern.pleats) CHECK(pleat.under.y == 0);
  job.cloth.hook_and_loop.stretch = 0.02;
  CHECK(pattern_of(job).hems[0].from.y == doctest::Approx(0.98 * pattern.hems[0].from.y));
  CHECK(pattern_of(job).cloth_width == doctest::Approx(0.98 * pattern.cloth_width));
}

TEST_CASE("hook-and-loop: tongues that leave no flap between them are refused") {
  Job job = test::worked_job();
  job.cloth.fixing = Fixing::HookAndLoop;
  job.bumpers = {test::half("A", "front", "front")};
  job.bumpers[0].from.at = RunEnd::Share{0.4};
  job.bumpers[0].to.at = RunEnd::Share{0.6};  // of 28 in: 5.6 in, less 1/4 in at both ends: 5.1 in
  CHECK(pattern_of(job).hems.size() == 2);    // 5.1 - 2 x 2 - 2 x 3 mm: some 7/8 in is left
  job.cloth.end_reach = inches(2.5);
  const auto refused = make_pattern(test::wraps_of(job)[0], job);
  REQUIRE_FALSE(refused.has_value());
  // 10 mm of flap, 3 mm at each tongue: (5.1 in - 10 mm) / 2 - 3 mm = 2.235 in.
  CHECK(refused.error().front().sentence ==
        "tongues that reach 2 1/2 in on to the back of bumper \"A\" leave no flap between them, "
        "expected at most 2 3/16 in, or cloth.fixing = \"staples\"");
  job.cloth.end_reach = inches(2 + 3.0 / 16);
  CHECK(make_pattern(test::wraps_of(job)[0], job).has_value());
}

TEST_CASE("match marks stand where a flap is: on its edge, or on its hem's fold") {
  for (const Fixing fixing : {Fixing::Staples, Fixing::HookAndLoop}) {
    Job job = test::worked_job();
    job.cloth.fixing = fixing;
    const Pattern pattern = pattern_of(job);
    CHECK(pattern.marks.size() >= 12);
    for (const MatchMark& mark : pattern.marks) {
      // A little to the front of it, and to either side, there is cloth.
      const double front = mark.top ? -1.0 : 1.0;
      for (const double aside : {-3.0, 3.0})
        CHECK(contains(pattern.outline, mark.at + FlatPoint{aside, front}));
      const auto on_hem = [&](const HemFold& hem) {
        return hem.top == mark.top && std::abs(hem.from.y - mark.at.y) < 1e-6 &&
               hem.from.x < mark.at.x && mark.at.x < hem.to.x;
      };
      if (fixing == Fixing::HookAndLoop) CHECK(std::ranges::any_of(pattern.hems, on_hem));
    }
  }
}

TEST_CASE("a stapled cover has no hems") { CHECK(pattern_of(test::worked_job()).hems.empty()); }

TEST_CASE("stretch is taken out of the pattern as a fraction") {
  Job job = test::worked_job();
  const Pattern plain = pattern_of(job);
  job.cloth.stretch_along = 0.02;
  job.cloth.stretch_around = 0.05;
  const Pattern pulled = pattern_of(job);
  CHECK(pulled.cloth_length == doctest::Approx(0.98 * plain.cloth_length));
  CHECK(pulled.cloth_width == doctest::Approx(0.95 * plain.cloth_width));
  CHECK(pulled.surface_area == doctest::Approx(plain.surface_area));
}

}  // namespace
}  // namespace swathe
