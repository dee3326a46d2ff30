#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "support/examples.hpp"
#include "support/made.hpp"
#include "swathe/bumper.hpp"

// Examples worked out by hand: corners filled and open, and covers held by hook-and-loop.
namespace swathe {
namespace {

constexpr double kInch = 25.4;

/// Where the notch has its full width: the upright sides' inner ends.
double full_width_at(const plane::Polygon& notch) {
  const plane::Box box = bounds(notch);
  double u = 1e300;
  for (const FlatPoint p : notch)
    if (std::abs(p.x - box.lo.x) < 1e-6) u = std::min(u, std::abs(p.y));
  return u;
}

}  // namespace

// The main example: boards 23/32 in thick, 5 in high, noodles 2 1/2 in, cloth 0.5 mm.
TEST_CASE("the main example, filled and open") {
  const auto corner = [](const char* filled) {
    std::string text = test::bytes_of(SWATHE_SOURCE "/examples/tin-heron.toml");
    const std::string at = "diameter = \"2.5 in\"\n";
    text.replace(text.find(at), at.size(), at + "filled = " + filled + "\n");
    return test::made(text);
  };
  const Made filled = corner("true"), open = corner("false");
  // mm along the cloth's middle: half the front 63.5; a bend of a quarter circle of 0.25 is 0.3927;
  // the top 18.25625 + 63.5; a bend again. 63.5 + 0.3927 + 81.7563 + 0.3927 = 146.0417.
  CHECK(full_width_at(filled.patterns[0].corners[0].notch_top) ==
        doctest::Approx(146.0417).epsilon(1e-6));
  // Half the flat 31.75; a quarter circle of 31.75 + 0.25 is 50.2655; the top 18.25625 + 31.75; the
  // bend: 132.4144. The filled corner takes 13.6273 more, above and below.
  CHECK(full_width_at(open.patterns[0].corners[0].notch_top) ==
        doctest::Approx(132.4144).epsilon(1e-6));
  CHECK(filled.patterns[0].corners[0].filled);
  CHECK_FALSE(open.patterns[0].corners[0].filled);

  const auto strips = [](const Made& made) {
    std::vector<CornerVoid> all;
    for (const Wrap& wrap : made.wraps)
      for (const CornerVoid& hollow :
           corner_voids(made.frame, made.section, wrap.run(), made.job.padding))
        all.push_back(hollow);
    return all;
  };
  CHECK(strips(open).empty());
  const auto fill = strips(filled);
  REQUIRE(fill.size() == 4);  // corners of the frame
  for (const CornerVoid& hollow : fill) {
    CHECK(hollow.strips == 8);                               // four round each of two noodles
    CHECK(hollow.length / kInch == doctest::Approx(2.5));    // the noodles' depth
    CHECK(hollow.leg / kInch == doctest::Approx(0.732233));  // 1.25 (2 - 1.414214)
    CHECK(hollow.section_area == doctest::Approx(216.332).epsilon(1e-5));  // 31.75^2 (1 - pi/4)
  }
}

// examples/kinds/hook-and-loop.toml: 28 by 30 in, boards 23/32 in, noodles 2 1/2 in, cloth 0.5 mm;
// flaps 2 1/4 in, hem 5/8 in, strips 1 in, tongues reach 2 in, 1/4 in clear of the gaps' middles.
TEST_CASE("the hook-and-loop example, worked out by hand") {
  const std::string text = test::bytes_of(SWATHE_SOURCE "/examples/kinds/hook-and-loop.toml");
  const Made made = test::made(text);
  // The play is this kind's own: two layers of 0.5 mm and 2.5 mm of closed strip need 3.5 mm.
  CHECK(made.job.frame.fit == inches(3.0 / 16));
  const auto plays = [](const Made& of) {
    return std::ranges::count(of.findings, std::string("play"), &Finding::id);
  };
  CHECK(plays(made) == 0);

  // Once round, closed: flat 63.5, two quarter circles 100.5310, top and bottom 100.0125, the bends
  // 0.7854: 264.8289; flaps and hems 2 x 73.025. Of 410.8789 mm 1 % is taken: 406.7701.
  CHECK(made.patterns[0].cloth_width == doctest::Approx(406.7701).epsilon(1e-6));

  // The frame with its play: 28 3/8 by 30 3/8 in. A front half: 14 3/16 - 1/4 in; its strip begins
  // 2 in and 3 mm inside the end face, where the flap does, and ends 1 in before the corner: 10
  // 15/16 in less 3 mm, 274.8125 mm. The left side's: 30 3/8 - 2 in, 720.725 mm.
  std::vector<double> lengths;
  double all = 0;
  for (const plane::Path& strip : made.patterns[0].strips) {
    const plane::Box box = bounds(strip);
    lengths.push_back(std::max(box.width(), box.height()));
    all += lengths.back();
  }
  std::ranges::sort(lengths);
  REQUIRE(lengths.size() == 8);
  for (const std::size_t k : {2u, 3u, 4u, 5u}) CHECK(lengths[k] == doctest::Approx(274.8125));
  for (const std::size_t k : {6u, 7u}) CHECK(lengths[k] == doctest::Approx(720.725));
  // Two tongues, each across a front flat of 2 1/2 in less 1 %.
  for (const std::size_t k : {0u, 1u}) CHECK(lengths[k] == doctest::Approx(62.865));
  CHECK(all == doctest::Approx(4 * 274.8125 + 2 * 720.725 + 2 * 62.865));

  // No flap lies where a tongue holds: none nearer the end face than the tongue reaches.
  for (const Pattern& pattern : made.patterns) {
    CHECK(pattern.ends[0].flaps == doctest::Approx(2 * kInch + 3.0));
    const double edge = bounds(pattern.outline).hi.y;
    for (const FlatPoint p : pattern.outline)
      if (std::abs(p.y - edge) < 1e-6) {
        CHECK(p.x > 2 * kInch);
        CHECK(p.x < pattern.length - 2 * kInch);
      }
    // Match marks stand on the hem's fold, which is still there when the cover is sewn.
    for (const MatchMark& mark : pattern.marks) {
      CHECK(std::abs(mark.at.y) == doctest::Approx(0.99 * (132.4144 + 2.25 * kInch)).epsilon(1e-6));
      CHECK(contains(pattern.outline, mark.at));
    }
  }
}

TEST_CASE(
    "hook-and-loop wider than a tongue reaches is refused, and the reach that it names does") {
  const std::string text = test::bytes_of(SWATHE_SOURCE "/examples/kinds/hook-and-loop.toml");
  const auto with = [&](const std::string& reach) {
    std::string own = text;
    const std::string strip = "strip = \"1 in\"", table = "[cloth]\n";
    REQUIRE(own.find(strip) != std::string::npos);
    own.replace(own.find(strip), strip.size(), "strip = \"1 1/4 in\"");
    REQUIRE(own.find(table) != std::string::npos);
    own.insert(own.find(table) + table.size(), "end_reach = " + reach + "\n");
    return test::make_text(own);
  };
  const auto short_of = with("\"1 in\"");
  REQUIRE_FALSE(short_of.has_value());
  const Refusal& fault = short_of.error().front();
  CHECK(fault.place.key == "cloth.hook_and_loop.strip");
  CHECK(fault.sentence.find("expected at most 1 in, or cloth.end_reach of at least 1 1/4 in") !=
        std::string::npos);
  REQUIRE(fault.mend.size() == 1);
  CHECK(fault.mend[0].key == "cloth.end_reach");
  CHECK(with(fault.mend[0].value).has_value());
}

TEST_CASE("hook-and-loop with too little play is told of, with the play that does") {
  std::string text = test::bytes_of(SWATHE_SOURCE "/examples/kinds/hook-and-loop.toml");
  const std::string at = "depth = \"30 in\"\n";
  text.replace(text.find(at), at.size(), at + "fit = \"1/8 in\"\n");
  const Made tight = test::made(text);  // 3.175 mm for 3.5 mm
  CHECK(tight.job.frame.fit == inches(1.0 / 8));
  const auto found = std::ranges::find(tight.findings, std::string("play"), &Finding::id);
  REQUIRE(found != tight.findings.end());
  CHECK(found->verdict == Verdict::Warn);
  REQUIRE(found->mend.size() == 1);
  CHECK(found->mend[0].key == "frame.fit");
  CHECK(found->mend[0].value == "\"3/16 in\"");
}

}  // namespace swathe
