#include <doctest/doctest.h>

#include "support/checked.hpp"
#include "support/jobs.hpp"

// The limits are the published rules' (manuals of 2026, 2023 and 2020, the numbers beside each).
namespace swathe {
namespace {

using test::made;
using test::of;
using test::worst;

Job halves() { return test::c_halves(711.2, 762); }  // 28 x 30 in

Verdict verdict(const Job& job, std::string_view season, std::string_view id) {
  return worst(made(job).by(season), id).verdict;
}

}  // namespace

// 2026 R401
TEST_CASE("gaps: under 1.25 in pass, one larger needs 5 in beside its corners, two fail") {
  Job job = halves();
  CHECK(verdict(job, "2026", "cover-gap") == Verdict::Pass);  // two of 1/2 in
  job.bumpers[0].end_clearance = inches(1.5);
  const auto two = of(made(job).by("2026"), "cover-gap");
  REQUIRE(two.size() == 2);
  CHECK(two[0].verdict == Verdict::Fail);
  CHECK(two[1].verdict == Verdict::Fail);

  job = halves();
  job.bumpers[0].from.at = RunEnd::Share{0.6};  // 2.8 in and a half, middle of the front
  const Finding one = worst(made(job).by("2026"), "cover-gap");
  CHECK(one.verdict == Verdict::Pass);
  CHECK(of(made(job).by("2026"), "cover-gap").size() == 1);
  CHECK(verdict(job, "2025", "cover-gap") == Verdict::Fail);  // none larger then

  // The end face stands 1/4 in after `from`, the frame's corner 28 in along: 5 in are left at
  // 22 3/4 in, and 4 3/4 in, which the inspector's grace allows, at 23 in.
  job.bumpers[0].from.at = FromCorner{inches(22.74), "right"};
  CHECK(verdict(job, "2026", "cover-gap") == Verdict::Pass);
  job.bumpers[0].from.at = FromCorner{inches(22.76), "right"};
  CHECK(verdict(job, "2026", "cover-gap") == Verdict::Warn);
  job.bumpers[0].from.at = FromCorner{inches(23.01), "right"};
  CHECK(verdict(job, "2026", "cover-gap") == Verdict::Fail);
}

TEST_CASE("one bumper all round has its one gap with itself") {
  Job job = halves();
  job.bumpers = {{"A", {"front", RunEnd::Share{0.55}}, {"front", RunEnd::Share{0.45}}, mm(3)}};
  const Finding middle = worst(made(job).by("2026"), "cover-gap");
  CHECK(middle.verdict == Verdict::Pass);  // 10 in or so are left on either side
  CHECK(middle.subject.find("between the ends of A, the one wider gap") == 0);
  job.bumpers[0].from.at = RunEnd::Share{0.85};
  CHECK(verdict(job, "2026", "cover-gap") == Verdict::Fail);
  CHECK(verdict(job, "2025", "cover-gap") == Verdict::Fail);
}

// Our own advice: bare gap less the layers of cloth on both ends
TEST_CASE("bumpers whose cloth would touch are told to keep apart, under no rule") {
  Job job = halves();
  job.bumpers[0].end_clearance = job.bumpers[1].end_clearance = mm(1);
  job.cloth.thickness = mm(0.5);
  const Finding finding = worst(made(job).by(nullptr), "cover-gap");
  CHECK(finding.verdict == Verdict::Warn);
  CHECK(finding.rule.empty());
}

// 2023 R401, 2020 R17: 6 in each side of each corner, to within 1/4 in; a side under 12 in whole
TEST_CASE("bumpers reach 6 in each side of each corner") {
  Job job = halves();
  CHECK(verdict(job, "2023", "corner-reach") == Verdict::Pass);
  CHECK(of(made(job).by("2026"), "corner-reach").empty());
  // The front of a 28 in frame: 6 in from the left corner, the rest bare.
  job.bumpers[0].from.at = FromCorner{inches(6.25), "left"};  // less 1/4 in at the end
  CHECK(verdict(job, "2023", "corner-reach") == Verdict::Pass);
  job.bumpers[0].from.at = FromCorner{inches(6), "left"};
  const Finding finding = worst(made(job).by("2023"), "corner-reach");
  CHECK(finding.verdict == Verdict::Fail);
  CHECK(finding.subject == "front side at the front-left corner");

  Job narrow = test::c_halves(11 * 25.4, 762);
  narrow.bumpers[0].end_clearance = narrow.bumpers[1].end_clearance = mm(1);
  CHECK(verdict(narrow, "2023", "corner-reach") == Verdict::Pass);
  narrow.bumpers[0].end_clearance = inches(0.5);
  CHECK(verdict(narrow, "2023", "corner-reach") == Verdict::Fail);
}

// 2026 R402-A; the grace of section 8.4 is for the inspector
TEST_CASE(
    "check (3): padding depth and height: nominal passes, within the grace warns, below fails") {
  Job job = halves();
  job.padding.diameter = inches(2.25);
  CHECK(verdict(job, "2026", "padding-depth") == Verdict::Pass);
  CHECK(verdict(job, "2026", "padding-height") == Verdict::Pass);
  job.padding.diameter = inches(2.2);
  const Finding thin = worst(made(job).by("2026"), "padding-depth");
  CHECK(thin.verdict == Verdict::Warn);
  CHECK(thin.required == "at least 2 1/4 in");
  CHECK(thin.measured == "2 3/16 in");
  CHECK(thin.advice.find("the inspector may allow 1/4 in") != std::string::npos);
  CHECK(verdict(job, "2026", "padding-height") == Verdict::Warn);
  job.padding.diameter = inches(1.99);
  CHECK(verdict(job, "2026", "padding-depth") == Verdict::Fail);
}

TEST_CASE("only padding with board behind it counts as height") {
  Job job = halves();
  job.boards.height = inches(4.25);  // 5 in of noodles before it
  CHECK(verdict(job, "2026", "padding-height") == Verdict::Warn);
  CHECK(verdict(job, "2026", "backing-height") == Verdict::Warn);
  job.boards.height = inches(4);
  CHECK(verdict(job, "2026", "padding-height") == Verdict::Fail);
  CHECK(verdict(job, "2026", "backing-height") == Verdict::Fail);
}

// 2026 R402-A: solid noodles only; 2025: hollow ones too
TEST_CASE("the core of the noodles: unknown until it is stated") {
  Job job = halves();
  CHECK(verdict(job, "2026", "padding-core") == Verdict::Unknown);
  CHECK(verdict(job, "2025", "padding-core") == Verdict::Pass);
  job.padding.core = Core::Hollow;
  CHECK(verdict(job, "2026", "padding-core") == Verdict::Fail);
  CHECK(verdict(job, "2025", "padding-core") == Verdict::Pass);
  job.padding.core = Core::Solid;
  CHECK(verdict(job, "2026", "padding-core") == Verdict::Pass);
}

// 2023 R408-C, 2020 R24: a stacked pair of round noodles, nominal 2.5 in
TEST_CASE("earlier seasons want a pair of round noodles, later ones only no wedge") {
  Job job = halves();
  CHECK(verdict(job, "2026", "padding-form") == Verdict::Pass);
  CHECK(verdict(job, "2023", "padding-form") == Verdict::Pass);
  job.padding.form = PaddingForm::Block;
  CHECK(verdict(job, "2026", "padding-form") == Verdict::Pass);
  CHECK(verdict(job, "2023", "padding-form") == Verdict::Fail);
  job = halves();
  job.padding.diameter = inches(2.75);
  CHECK(verdict(job, "2023", "padding-form") == Verdict::Warn);
}

// 2020 R24: at most 2.5 in past the board
TEST_CASE("padding that laps runs past its board by its own depth") {
  Job job = halves();
  const auto found = of(made(job).by("2020"), "padding-form");
  REQUIRE(found.size() == 2);
  CHECK(found[1].required == "at most 2 1/2 in");
  CHECK(found[1].measured == "2 1/2 in");
  CHECK(found[1].verdict == Verdict::Pass);
}

// 2023 R408-A: 5 in, more or less 1/2 in; 3/4 in nominal. PS 1: sheets sold as 23/32 and 3/4 in
// are made 1/32 in thicker or thinner, 11/16 to 25/32 in.
TEST_CASE("boards of 2023: height within half an inch, thickness as sold") {
  Job job = halves();
  for (const double height : {4.5, 5.0, 5.5}) {
    job.boards.height = inches(height);
    CHECK(verdict(job, "2023", "backing-height") == Verdict::Pass);
  }
  job.boards.height = inches(5.6);
  CHECK(verdict(job, "2023", "backing-height") == Verdict::Fail);
  job = halves();
  for (const double thickness : {11.0 / 16, 23.0 / 32, 25.0 / 32}) {
    job.boards.thickness = inches(thickness);
    CHECK(verdict(job, "2023", "backing-thickness") == Verdict::Pass);
  }
  const Finding thickest = worst(made(job).by("2023"), "backing-thickness");
  CHECK(thickest.required == "sold as 3/4 in: 11/16 in to 25/32 in measured");
  CHECK(thickest.measured == "25/32 in");
  for (const double thickness : {0.687, 0.782}) {
    job.boards.thickness = inches(thickness);
    CHECK(verdict(job, "2023", "backing-thickness") == Verdict::Warn);
  }
  job.boards.thickness = inches(0.5);
  CHECK(verdict(job, "2023", "backing-thickness") == Verdict::Fail);
  CHECK(of(made(job).by("2026"), "backing-thickness").empty());  // no thickness is named
}

// 2026 R403: from the true frame; fit, boards, padding and cloth count
TEST_CASE("extension counts the fit and the cloth") {
  Job job = test::worked_job();  // 3/4 + 2 1/2 in, no fit, no cloth
  CHECK(worst(made(job).by("2026"), "extension").measured == "3 1/4 in");
  job.frame.fit = inches(0.5);
  job.cloth.thickness = mm(2.54);
  CHECK(worst(made(job).by("2026"), "extension").measured == "3 7/8 in");  // 3.85
  job.frame.fit = inches(0.7);
  CHECK(verdict(job, "2026", "extension") == Verdict::Warn);
  job.frame.fit = inches(0.95);
  CHECK(verdict(job, "2026", "extension") == Verdict::Fail);
}

// 2026 R404: bolt heads as well as boards
TEST_CASE("hard parts: unknown while no bolt head is declared") {
  Job job = test::worked_job();
  const auto none = of(made(job).by("2026"), "hard-parts");
  REQUIRE(none.size() == 2);
  CHECK(none[0].verdict == Verdict::Unknown);
  CHECK(none[1].verdict == Verdict::Unknown);
  job.boards.hard_depth = inches(0.5);  // 3/4 + 1/2 = 1 1/4 out, 2 1/2 - 1/2 = 2 beyond
  CHECK(verdict(job, "2026", "hard-parts") == Verdict::Pass);
  job.boards.hard_depth = inches(0.6);
  CHECK(verdict(job, "2026", "hard-parts") == Verdict::Warn);
  job.boards.hard_depth = inches(0.8);
  const auto deep = of(made(job).by("2026"), "hard-parts");
  CHECK(deep[0].verdict == Verdict::Fail);
  CHECK(deep[1].verdict == Verdict::Fail);
  job.boards.hard_depth = mm(0);
  job.boards.thickness = inches(1.75);  // the boards alone are too far out
  CHECK(verdict(job, "2026", "hard-parts") == Verdict::Fail);
}

// 2026 R404, measured the way a board's end faces: at most 1 1/4 in past the frame, at least 2 in
// of padding beyond.
TEST_CASE("hard parts: a board's end past the frame's corner is one") {
  Job job = test::worked_job();
  job.frame.fit = inches(1.0 / 16);
  job.boards.thickness = inches(23.0 / 32);
  const auto ends_of = [](const test::Checked& c) {
    std::vector<Finding> ends;
    for (const Finding& finding : of(c.by("2026"), "hard-parts"))
      if (finding.subject.find(", end by ") != std::string::npos) ends.push_back(finding);
    return ends;
  };
  // Halves: the front board laps over the side board's end, 1/16 + 23/32 = 25/32 in out;
  // the padding goes round with it, as deep as on the faces.
  const auto halves = made(job);
  CHECK(ends_of(halves).empty());
  CHECK(worst(halves.by("2026"), "hard-parts").measured ==
        "25/32 in, boards only, screw heads sunk");

  job.bumpers.clear();
  for (const char* side : {"front", "left", "back", "right"})
    job.bumpers.push_back({side, {side, RunEnd::Corner{}}, {side, RunEnd::Corner{}}, inches(0.25)});
  // One a side: 1/4 in shorter, 17/32 in out, under the 2 1/2 in that its own padding runs
  // past it.
  test::Checked straight = made(job);
  auto ends = ends_of(straight);
  CHECK(ends.empty());
  // 1/2 in more is 1 1/32 in out, further than the faces; of its own padding 2 in are left, of the
  // neighbor's 3 9/32 - 1 1/32 = 2 1/4 in.
  straight.boards[0].from_x -= inches(0.5).mm();
  ends = ends_of(straight);
  REQUIRE(ends.size() == 2);
  CHECK(ends[0].verdict == Verdict::Pass);
  CHECK(ends[0].measured == "1 1/32 in");
  CHECK(ends[1].verdict == Verdict::Pass);
  CHECK(ends[1].measured == "2 1/4 in");
  straight.boards[0].from_x += inches(0.5).mm();
  // A board sawn as long as its padding: 17/32 + 2 1/2 = 3 1/32 in out, with no padding of its own;
  // the neighbor's comes 1/16 + 23/32 + 2 1/2 = 3 9/32 in out, 1/4 in further.
  straight.boards[0].from_x -= inches(2.5).mm();
  ends = ends_of(straight);
  REQUIRE(ends.size() == 2);
  for (const Finding& end : ends) {
    CHECK(end.verdict == Verdict::Fail);
    CHECK(end.subject.starts_with("bumper front, front board, end by right"));
  }
  CHECK(ends[0].measured == "3 1/32 in");
  CHECK(ends[1].measured == "1/4 in");
  // Within the grace of 1/4 in: 17/32 + 0.74 = 1.271 in out. Of its own padding 2 1/2 - 0.74
  // = 1.76 in is left, of the neighbor's 3.281 - 1.271 = 2.01 in lies before it: to 1/32 in it
  // would read as the 2 in that are asked for.
  straight.boards[0].from_x += inches(2.5 - 0.74).mm();
  ends = ends_of(straight);
  CHECK(ends[0].verdict == Verdict::Warn);
  CHECK(ends[1].measured == "2 1/64 in");

  // Ends in the middle of sides stand out past nothing.
  for (BumperKeys& bumper : job.bumpers) {
    bumper.from.at = RunEnd::Share{0.2};
    bumper.to.at = RunEnd::Share{0.8};
  }
  CHECK(ends_of(made(job)).empty());
}

// 2026 R405: padding on backing fills 2.5 to 5.75 in; 2020 R18: the bumper stays below 7.5 in
TEST_CASE("zone: backed padding fills it, and the whole bumper stays inside the older one") {
  Job job = test::worked_job();
  const auto at = [&](double floor_gap, std::string_view season) {
    job.frame.floor_gap = inches(floor_gap);
    return verdict(job, season, "zone");
  };
  CHECK(at(2.0, "2026") == Verdict::Pass);  // 2 to 7 in
  CHECK(at(2.5, "2026") == Verdict::Pass);
  CHECK(at(2.7, "2026") == Verdict::Warn);
  CHECK(at(2.8, "2026") == Verdict::Fail);
  CHECK(at(0.75, "2026") == Verdict::Pass);
  CHECK(at(0.6, "2026") == Verdict::Warn);
  CHECK(at(0.4, "2026") == Verdict::Fail);
  CHECK(at(2.5, "2020") == Verdict::Pass);
  CHECK(at(2.51, "2020") == Verdict::Fail);
}

// 2026 R406: 2.25 in of uncompressed padding; 2023 R409: filled
TEST_CASE("corners: mitres and foam strips fill them, hollows left open are to be looked at") {
  Job job = halves();
  CHECK(verdict(job, "2026", "corner-fill") == Verdict::Pass);
  CHECK(verdict(job, "2023", "corner-fill") == Verdict::Pass);
  job.padding.diameter = inches(1.9);  // filled, but no deeper than the noodles
  CHECK(verdict(job, "2026", "corner-fill") == Verdict::Fail);
  job = halves();
  job.padding.filled = false;
  const Finding butted = worst(made(job).by("2026"), "corner-fill");
  CHECK(butted.verdict == Verdict::Unknown);
  const std::size_t mitred = butted.advice.find("padding.corner to \"mitred\"");
  CHECK(mitred != std::string::npos);
  CHECK(mitred < butted.advice.find("padding.filled to true"));  // what needs no strips comes first
  CHECK(butted.mend == std::vector<KeyChange>{{"padding.corner", "\"mitred\""}});
  CHECK(butted.subject.find("front-left corner") != std::string::npos);
  CHECK(verdict(job, "2023", "corner-fill") == Verdict::Unknown);
  job.padding.corner = PaddingCorner::Mitred;
  CHECK(verdict(job, "2026", "corner-fill") == Verdict::Pass);
  CHECK(verdict(job, "2023", "corner-fill") == Verdict::Pass);
  job.padding.diameter = inches(2.1);
  CHECK(verdict(job, "2026", "corner-fill") == Verdict::Warn);
  job.padding.corner = PaddingCorner::Butted;
  job.padding.diameter = inches(1.9);
  CHECK(verdict(job, "2026", "corner-fill") == Verdict::Fail);
}

TEST_CASE("one bumper a side: corners where two meet are looked at too") {
  Job job = halves();
  job.bumpers.clear();
  for (const char* side : {"front", "left", "back", "right"}) {
    BumperKeys keys;
    keys.name = side;
    keys.from = {side, RunEnd::Corner{}};
    keys.to = {side, RunEnd::Corner{}};
    job.bumpers.push_back(keys);
  }
  const Finding fill = worst(made(job).by("2026"), "corner-fill");
  CHECK(fill.verdict == Verdict::Unknown);
  // In plain words what to do, in what the inspector's card shows too.
  CHECK(fill.measured.find("fill the hollows by hand") != std::string::npos);
  CHECK(fill.advice.find("strips of the same foam") != std::string::npos);
  CHECK(fill.advice.find("ask the inspector") != std::string::npos);
  CHECK(verdict(job, "2026", "cover-gap") == Verdict::Pass);
  CHECK(verdict(job, "2023", "corner-reach") == Verdict::Pass);
  job.padding.form = PaddingForm::Block;
  CHECK(verdict(job, "2026", "corner-fill") == Verdict::Pass);
}

// 2026 R402-C; 2020 R24-D: over the wood too
TEST_CASE("the cloth covers the padding: cuts stay behind it") {
  const Finding covered = worst(made(halves()).by("2026"), "cover-cloth");
  CHECK(covered.verdict == Verdict::Pass);
  CHECK(covered.measured == "covered: cuts stay 1/4 in behind the padding");
  CHECK(verdict(halves(), "2020", "cover-cloth") == Verdict::Unknown);  // the relief's corner
  test::Checked cut = made(halves());
  cut.patterns[0].corners[0].notch_top[2].y -= 20;  // drawn over the padding
  CHECK(worst(cut.by("2026"), "cover-cloth").verdict == Verdict::Fail);
}

// A sewn dart's cut is closed by its seam: the cloth covers the padding there.
TEST_CASE("cuts that a seam closes bare nothing") {
  Job job = halves();
  job.padding.corner = PaddingCorner::Mitred;
  job.cloth.relief = Relief::Sewn;
  CHECK(verdict(job, "2026", "cover-cloth") == Verdict::Pass);
  CHECK(verdict(job, "2020", "cover-cloth") == Verdict::Pass);  // over the wood too
  job.cloth.seam = inches(4);  // wider than the dart, 3.25 in: stitched uncut
  CHECK(worst(made(job).by("2026"), "cover-cloth").measured ==
        "covered: every open cut is on the boards' backs");
}

TEST_CASE("stretch taken out of a cover that comes off again moves no cut on the bumper") {
  Job job = halves();
  job.cloth.fixing = Fixing::HookAndLoop;
  for (const double stretch : {0.0, 0.01, 0.05}) {
    job.cloth.hook_and_loop.stretch = stretch;
    CHECK(worst(made(job).by("2026"), "cover-cloth").measured ==
          "covered: cuts stay 1/4 in behind the padding");
  }
}

TEST_CASE("a tongue longer than its board is told of, under no rule") {
  Job job = halves();
  test::Checked c = made(job);
  CHECK(of(c.by(nullptr), "cover-cloth").empty());
  c.job.cloth.end_reach = inches(20);  // the half board of the front has some 14 in
  const Finding finding = worst(c.by(nullptr), "cover-cloth");
  CHECK(finding.verdict == Verdict::Warn);
  CHECK(finding.rule.empty());
}

// 2026 R411, 2020 R21
TEST_CASE("cloth is red or blue") {
  Job job = halves();
  const auto found = of(made(job).by("2026"), "cloth-color");
  REQUIRE(found.size() == 2);
  CHECK(found[1].verdict == Verdict::Pass);
  job.cloth.colors = {{"red", {1, 0, 0}}};
  CHECK(verdict(job, "2026", "cloth-color") == Verdict::Unknown);  // and the blue set?
  job.cloth.colors = {{"red", {0, 0.6, 0.1}}, {"blue", {0, 0, 1}}};
  CHECK(verdict(job, "2026", "cloth-color") == Verdict::Fail);  // a name dyes nothing
}

// 2023 R410, 2020 R26: half an inch behind each end, a gap of at most 1/4 in
TEST_CASE("support stands on the job's word and on the fit") {
  Job job = halves();
  CHECK(verdict(job, "2020", "support") == Verdict::Pass);
  CHECK(of(made(job).by("2026"), "support").empty());  // no rule on support
  job.frame.fit = inches(0.26);
  CHECK(verdict(job, "2020", "support") == Verdict::Fail);
  job = halves();
  job.frame.backed = false;
  CHECK(verdict(job, "2020", "support") == Verdict::Fail);
}

// 2026 R408: the machine's 135 lb; 2023 R407: a set's 15 lb
TEST_CASE("weight: never passed, for densities are no scale and the machine is not known") {
  test::Checked c = made(halves());
  CHECK(of(c.by("2026"), "weight").empty());  // stock was not planned
  c.stock = Stock();
  c.stock->set.boards_g = 6000;
  CHECK(worst(c.by("2026"), "weight").verdict == Verdict::Unknown);
  const Finding light = worst(c.by("2023"), "weight");
  CHECK(light.verdict == Verdict::Unknown);
  CHECK(light.measured == "13.2 lb");
  CHECK(light.advice.find("1.8 lb are left") != std::string::npos);
  c.stock->set.unknown_brackets = 2;
  CHECK(worst(c.by("2023"), "weight").measured == "13.2 lb, not counting 2 brackets");
  c.stock->set.boards_g = 6900;  // 15 lb are 6804 g
  CHECK(worst(c.by("2023"), "weight").verdict == Verdict::Fail);
}

}  // namespace swathe
