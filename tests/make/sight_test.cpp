#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <regex>
#include <tuple>
#include <utility>

#include "sight/demand.hpp"
#include "support/drawn.hpp"
#include "support/made.hpp"
#include "swathe/base.hpp"

// Places chosen, and changes advised, by sweeping again: what is said, done, must do.
namespace swathe {
namespace {

std::string job_text(const std::string& season, const std::string& more = "",
                     const std::string& numerals = "") {
  return fmt::format(R"([job]
title = "Test"
number = "20486"
season = "{}"
[frame]
width = "32 in"
depth = "28 in"
[boards]
thickness = "3/4 in"
[[bumper]]
name = "A"
from = ["right", "80%"]
to = ["left", "80%"]
[[bumper]]
name = "B"
from = ["left", "80%"]
to = ["right", "80%"]
[numerals]
font = "Anton"
{}
{})",
                     season, numerals, more);
}

std::vector<std::string> sides_of(const Made& made) {
  std::vector<std::string> sides;
  for (const PlacedNumeral& placed : made.numerals->placed) sides.push_back(placed.side);
  return sides;
}

double share_of(const Made& made) { return least_fraction(made.sight->demanded); }

const std::string kWall =  // before all of the left side, higher than any eye
    "[[sight.blind]]\nbox = [[\"-12 in\", \"-6 in\", \"0 in\"], [\"-8 in\", \"34 in\", \"120 "
    "in\"]]\n";

TEST_CASE("auto: every viewpoint takes all four sides of a box, most takes the three it counts") {
  CHECK(sides_of(test::made(job_text("2023"))).size() == 4);
  CHECK(sides_of(test::made(job_text("2026"))).size() == 3);
  CHECK(share_of(test::made(job_text("2023"))) == doctest::Approx(1));
}

TEST_CASE("auto: a side that nobody sees is passed over") {
  const Made blind = test::made(job_text("2026", "[sight]\n" + kWall));
  const auto sides = sides_of(blind);
  CHECK(sides.size() == 3);
  CHECK(std::ranges::find(sides, "left") == sides.end());
}

TEST_CASE("auto: no choice of as many or fewer sides does better") {
  const std::vector<std::string> all = {"front", "left", "back", "right"};
  const Made chosen = test::made(job_text("2026"));
  for (const auto& left_out : all) {
    std::string list;
    for (const auto& side : all)
      if (side != left_out) list += fmt::format("\"{}\", ", side);
    // Choices within 2 % count as alike.
    CHECK(share_of(test::made(job_text("2026", "", fmt::format("sides = [{}]", list)))) <=
          share_of(chosen) + 0.02);
  }
  // Fewer than three never meet "most" by so much, nor the count of places.
  CHECK(test::made(job_text("2026", "", "sides = [\"front\"]")).sight->advice != "");
}

/// The job with the advice's change of keys done, made again.
Made mended(std::string text) {
  const Made before = test::made(text);
  REQUIRE_MESSAGE(!before.sight->mend.empty(), before.sight->advice);
  for (const KeyChange& change : before.sight->mend) {
    const auto set = set_value(text, change.key, change.value);
    REQUIRE_MESSAGE(set.has_value(), (change.key + " = " + change.value));
    text = set->text;
  }
  return test::made(text);
}

/// Its change of keys meets the season, and every part of it counts.
void check_mend(const std::string& text, const std::vector<std::string>& keys) {
  const Made before = test::made(text), after = mended(text);
  std::vector<std::string> changed;
  for (const KeyChange& change : before.sight->mend) changed.push_back(change.key);
  CHECK(changed == keys);
  CHECK(after.sight->advice == "");
  CHECK(after.notices.size() == before.notices.size());
  const auto of_sight = [](const Finding& finding) { return finding.id == "sight"; };
  const auto finding = std::ranges::find_if(before.findings, of_sight);
  REQUIRE(finding != before.findings.end());
  CHECK(finding->mend == before.sight->mend);
}

/// The side a "put the number on the S side too" names.
std::string side_in(const std::string& advice) {
  std::smatch found;
  REQUIRE_MESSAGE(std::regex_search(advice, found, std::regex("on the (\\w+) side too")), advice);
  return found[1];
}

TEST_CASE("advice: one side more, done, meets the season") {
  const Made one = test::made(job_text("2026", "", "sides = [\"front\"]"));
  CHECK(share_of(one) < kMost);
  const std::string side = side_in(one.sight->advice);
  const Made more =
      test::made(job_text("2026", "", fmt::format("sides = [\"front\", \"{}\"]", side)));
  CHECK(share_of(more) > kMost);
  CHECK(more.sight->advice == "");
  check_mend(job_text("2026", "", "sides = [\"front\"]"), {"numerals.sides"});
  const std::string place = "[[numerals.place]]\nside = \"front\"\n";
  check_mend(job_text("2026", "", place), {"numerals.place.2.side", "numerals.place.2.bumper"});
}

TEST_CASE("advice: one move, done, shows the whole number again") {
  // A post beside the left side's first digit.
  const std::string post =
      "[sight]\n[[sight.blind]]\nbox = [[\"-8 in\", \"23.5 in\", \"0 in\"], [\"-4 in\", \"24.5 "
      "in\", "
      "\"20 in\"]]\n";
  const Made hidden = test::made(job_text("2026", post, "sides = [\"front\", \"left\", \"back\"]"));
  std::smatch found;
  const std::string advice = hidden.sight->advice;
  REQUIRE_MESSAGE(std::regex_search(advice, found,
                                    std::regex("move the left number (.*) toward the (\\w+) side")),
                  advice);
  const double by = parse_length(found[1].str(), Units::Inches)->mm();
  // Counter-clockwise the left side lies between front and back: seen from outside, front is at its
  // left.
  const double sense = found[2] == "front" ? -1 : 1;
  // By hand, from the frame's own corner with front.
  const auto placed = std::ranges::find(hidden.numerals->placed, "left", &PlacedNumeral::side);
  const auto& run = hidden.wraps[static_cast<std::size_t>(placed->bumper)].run();
  const auto leg = std::ranges::find_if(run.sides, [&](const RunSide& one) {
    return hidden.frame.sides()[static_cast<std::size_t>(one.side)].name == "left";
  });
  const double x = placed->center_s + sense * by - leg->s_minus_x;
  const double center = hidden.frame.from_corner(leg->side, x, "front").mm();
  const auto place = [](const char* bumper, const char* side, const std::string& at) {
    return fmt::format("[[numerals.place]]\nbumper = \"{}\"\nside = \"{}\"\n{}", bumper, side, at);
  };
  const Made mended =
      test::made(job_text("2026", post,
                          place("A", "front", "") +
                              place(run.name.c_str(), "left",
                                    fmt::format("center = [\"{:.3f} mm\", \"front\"]\n", center)) +
                              place("B", "back", "")));
  CHECK(mended.sight->advice == "");
  for (const SightRing& ring : mended.sight->rings)
    CHECK(ring.widest(Reads::Another, mended.sight->step) == nullptr);  // none that is told of

  // By keys: of places by hand the one that moves, from the corner that the job measures it from.
  const std::string by_hand =
      place("A", "front", "") +
      place(
          run.name.c_str(), "left",
          fmt::format("center = [\"{:.3f} mm\", \"back\"]\n",
                      hidden.frame.from_corner(leg->side, placed->center_s - leg->s_minus_x, "back")
                          .mm())) +
      place("B", "back", "");
  check_mend(job_text("2026", post, by_hand), {"numerals.place.2.center"});
  CHECK(test::made(job_text("2026", post, by_hand)).sight->mend[0].value.ends_with("\"back\"]"));
  // One that a list of sides puts in the middle cannot move.
  CHECK(hidden.sight->mend.empty());
}

TEST_CASE("advice: where the program has chosen the sides, a move puts every number by hand") {
  // All four, where no season asks for anything; a post beside the left one's first digit.
  const std::string post =
      "[sight]\n[[sight.blind]]\nbox = [[\"-8 in\", \"23.5 in\", \"0 in\"], "
      "[\"-4 in\", \"24.5 in\", \"20 in\"]]\n";
  const Made before = test::made(job_text("none", post));
  CHECK(before.sight->advice.starts_with("move the left number "));
  std::vector<std::string> keys;
  const auto sides = sides_of(before);
  for (std::size_t k = 0; k < sides.size(); ++k) {
    const std::string place = fmt::format("numerals.place.{}.", k + 1);
    keys.insert(keys.end(), {place + "side", place + "bumper"});
    if (sides[k] == "left") keys.push_back(place + "center");
  }
  check_mend(job_text("none", post), keys);
}

TEST_CASE("advice: digits tall enough for the distance, done, meet the season") {
  const std::string far = "[sight]\nleast_angle = \"17.4 arcmin\"\n";
  const std::string sides = "sides = [\"front\", \"left\", \"back\", \"right\"]\n";
  const Made small = test::made(job_text("2026", far, sides + "height = \"3.75 in\""));
  std::smatch found;
  const std::string advice = small.sight->advice;
  REQUIRE_MESSAGE(std::regex_search(advice, found, std::regex("make the digits (.*) high")),
                  advice);
  const Made tall =
      test::made(job_text("2026", far, sides + fmt::format("height = \"{}\"", found[1].str())));
  CHECK(tall.sight->advice == "");
  CHECK(share_of(tall) > kMost);
  check_mend(job_text("2026", far, sides + "height = \"3.75 in\""), {"numerals.height"});
}

TEST_CASE("advice: two changes together, done, meet the season where neither does") {
  // Only front and back have room for the number, which is seen too small from too far round.
  const std::string text =
      "[job]\nnumber = \"20486\"\nseason = \"2026\"\n[frame]\nwidth = \"32 in\"\ndepth = \"12 "
      "in\"\n"
      "[boards]\nthickness = \"3/4 in\"\n[[bumper]]\nname = \"A\"\nfrom = [\"right\", \"50%\"]\n"
      "to = [\"left\", \"50%\"]\n[[bumper]]\nname = \"B\"\nfrom = [\"left\", \"50%\"]\n"
      "to = [\"right\", \"50%\"]\n[numerals]\nfont = \"Anton\"\nheight = \"3.75 in\"\nsides = "
      "[\"front\"]\n"
      "[sight]\nleast_angle = \"15.3 arcmin\"\n";
  const Made before = test::made(text);
  CHECK_MESSAGE(
      before.sight->advice.starts_with("put the number on the back side too, and make the "
                                       "digits "),
      before.sight->advice);
  check_mend(text, {"numerals.height", "numerals.sides"});
  // Either of them alone is not enough.
  for (const KeyChange& change : before.sight->mend) {
    const Made half = test::made(set_value(text, change.key, change.value)->text);
    CHECK(half.sight->advice != "");
  }
}

/// Sixteen sides of two bumpers each, all observers allowed, and a post before every side.
std::string crowded_job() {
  const auto at = [](int k, double radius) {
    const double turn = 2 * std::numbers::pi * k / 32;
    return std::pair(radius * std::cos(turn), radius * std::sin(turn));
  };
  std::string corners, sides, bumpers, posts, far, eyes;
  for (int k = 0; k < 16; ++k) {
    const auto [x, y] = at(2 * k, 6000);
    corners += fmt::format("[{:.0f}, {:.0f}], ", x, y);
    sides += fmt::format("\"s{}\", ", k);
    for (const auto& [name, from, to] : {std::tuple("a", 5, 46), std::tuple("b", 52, 98)})
      bumpers += fmt::format(
          "[[bumper]]\nname = \"{0}{1}\"\nfrom = [\"s{1}\", \"{2}%\"]\nto = [\"s{1}\", \"{3}%\"]\n",
          name, k, from, to);
  }
  for (int k = 0; k < 32; ++k) {
    const auto [x, y] = at(k, 6700);
    posts += fmt::format("[[sight.blind]]\nbox = [[{:.0f}, {:.0f}, 0], [{:.0f}, {:.0f}, 700]]\n",
                         x - 30, y - 30, x + 30, y + 30);
  }
  for (int k = 0; k < 8; ++k) {
    far += fmt::format("{}, ", 9000 + 2000 * k);
    eyes += fmt::format("{}, ", 900 + 150 * k);
  }
  return fmt::format(
      "[job]\ntitle = \"crowded\"\nnumber = \"20486\"\nunits = \"mm\"\nseason = \"none\"\n"
      "[frame]\ncorners = [{}]\nsides = [{}]\n[boards]\nthickness = 18\nheight = 127\n"
      "[padding]\ndiameter = 60\n[cloth]\nroll_width = 1500\n{}"
      "[numerals]\nmethod = \"iron-on\"\nheight = 95\n"
      "sides = [\"s0\", \"s3\", \"s5\", \"s7\", \"s9\", \"s11\"]\n"
      "[sight]\ndistance = [{}]\neye_height = [{}]\nstep = \"0.1 deg\"\n{}",
      corners, sides, bumpers, far, eyes, posts);
}

TEST_CASE("advice: a search that stops early says so, and says the same again") {
  const std::string advice = test::made(crowded_job()).sight->advice;
  CHECK_MESSAGE(advice.find("the search stopped early") != std::string::npos, advice);
  CHECK(test::made(crowded_job()).sight->advice == advice);
}

TEST_CASE("a blind box's place is the frame's") {
  const Made wall = test::made(job_text("2026", "[sight]\n" + kWall, "sides = [\"left\"]"));
  for (const SightRing& ring : wall.sight->rings) CHECK(ring.fraction(Reads::Number) < 0.05);
}

}  // namespace
}  // namespace swathe
