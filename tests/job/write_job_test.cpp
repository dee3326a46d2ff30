#include <doctest/doctest.h>

#include "support/examples.hpp"
#include "swathe/job.hpp"

using namespace swathe;

namespace {

/// Reads, writes, reads again: no fault (1), and the same text again (2).
Job again(std::string_view text) {
  const JobReading first = read_job(text, "job");
  for (const Refusal& fault : first.faults) FAIL_CHECK(to_text(fault));
  const std::string written = job_text(first.job);
  const JobReading second = read_job(written, "job");
  for (const Refusal& fault : second.faults) FAIL_CHECK(to_text(fault) << "\n" << written);
  CHECK(job_text(second.job) == written);
  return second.job;
}

/// Every key away from its default, in every manner of saying it.
constexpr std::string_view kEverything = R"toml(
job = { title = "Quote \" and back\\slash, ü", number = "00007", season = "none", units = "mm" }
[frame]
corners = [["2 ft 6 in", 0], [700.125, "81.9 cm"], [-1e-7, 820], [-0e-7, 0], [300, "-1/64 in"]]
sides = ["se", "ne", "n \"w\"", "w", "sw"]
fit = 0.1
floor_gap = "1/3 in"
backed = false
[boards]
thickness = 18
height = "127.0001 mm"
lapping = []
stock = [1220, 2440]
kerf = "3/32 in"
hard_depth = 1e-9
density = 650.5
[padding]
diameter = "2.25 in"
stack = 3
core = "hollow"
depth = 60
height = 130
edge_radius = 12
corner = "mitred"
lapping = ["ne", "sw"]
stock = 1600
density = 1
[cloth]
thickness = 0
roll_width = "1.5 m"
buy_step = "1/2 yd"
colors = { "z z" = "#123", a = "#fedcba" }
flap = 55
staple_line = 20
staple_spacing = 40
stretch_along = 0.01
stretch_around = 1e-7
setback = 4
cut_clear = 5
seam = 11
end_reach = 45
may_lie_across = true
one_way = true
density = 0.4
staple_mass = 0.2
fixing = "hook-and-loop"
hook_and_loop = { flap = 60, hem = 14, strip = "3/4 in", stretch = 0.02, density = 0.65 }
[[bumper]]
name = "one"
from = ["se", "corner"]
to = ["n \"w\"", "33.3%"]
end_clearance = 7
[[bumper]]
name = "two"
from = ["w", "1/3 in", "n \"w\""]
to = ["sw", "100%"]
[[bracket]]
bumper = "two"
side = "w"
at = [12.7, "sw"]
width = 50
height = 40
down = 3
holes = [[0, 0], [50, 40], ["1/7 in", 1]]
cloth = "window"
clearance = 2
corner_radius = 3
mass = 310.5
[numerals]
font = "faces/my \"own\".ttf"
axes = { wght = 650.5, "a b " = -3 }
height = 105
sides = ["se", "w"]
spacing = "-1/32 in"
color = "#fef"
bridge = 5
spares = 2
[sight]
distance = [1000, "1 yd"]
eye_height = [0]
step = "1.7 deg"
least_angle = "0.01 rad"
[paper]
sheet = [333, "20 in"]
margin = 9
overlap = 8
face = "outside"
measured = ["99.2 mm", "4 in"]
)toml";

}  // namespace

TEST_CASE("job_text (1) (2): what was read is written and read again") {
  again(new_job_text());
  again(test::bytes_of(test::example("tin-heron")));
  const Job job = again(kEverything);
  CHECK(job.title == "Quote \" and back\\slash, \xc3\xbc");
  CHECK(job.units == Units::Millimeters);
  CHECK(job.frame.corners[2] == FlatPoint{-1e-7, 820});
  CHECK(job.frame.sides[2] == "n \"w\"");
  CHECK_FALSE(job.frame.backed);
  CHECK(job.boards.lapping.empty());
  CHECK(job.boards.hard_depth == mm(1e-9));
  CHECK(job.padding.stack == 3);
  CHECK(job.padding.corner == PaddingCorner::Mitred);
  CHECK(job.cloth.colors[0].name == "z z");  // in the order of the file
  CHECK(job.cloth.stretch_around == 1e-7);
  CHECK(job.cloth.fixing == Fixing::HookAndLoop);
  CHECK(job.cloth.hook_and_loop.flap == mm(60));
  CHECK(job.cloth.hook_and_loop.hem == mm(14));
  CHECK(job.cloth.hook_and_loop.strip == inches(0.75));
  CHECK(job.cloth.hook_and_loop.stretch == 0.02);
  CHECK(job.cloth.hook_and_loop.density_kg_m2 == 0.65);
  CHECK(job.cloth.may_lie_across);
  CHECK(job.cloth.one_way);
  CHECK(job.cloth.staple_g == 0.2);
  CHECK(job.brackets[0].mass_g == 310.5);
  CHECK(std::get<RunEnd::Share>(job.bumpers[0].to.at).fraction == doctest::Approx(0.333));
  CHECK(std::holds_alternative<RunEnd::Corner>(job.bumpers[0].from.at));
  CHECK(job.brackets[0].holes.size() == 3);
  CHECK(std::get<FromCorner>(job.brackets[0].at).neighbor == "sw");
  CHECK(std::get<FromCorner>(job.bumpers[1].from.at).neighbor == "n \"w\"");
  CHECK(job.numerals.axes.at("a b ") == -3);
  CHECK(job.numerals.spacing.extra == inches(-1.0 / 32));
  CHECK(job.numerals.sides->size() == 2);
  CHECK(job.sight.distance[1].mm() == doctest::Approx(914.4));
  CHECK(job.paper.sheet == "own size");
  CHECK(job.paper.height.mm() == doctest::Approx(508));
}
