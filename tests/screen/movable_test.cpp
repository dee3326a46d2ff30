#include "screen/movable.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <string>
#include <vector>

#include "support/examples.hpp"
#include "support/label_font.hpp"
#include "support/made.hpp"
#include "swathe/job.hpp"

// What can be moved, and that its key moves it as the handle says.
namespace swathe {
namespace {

using screen::Handle;

constexpr double kIn = 25.4;

std::vector<Handle> of_kind(const ScreenPicture& picture, Handle::Kind kind) {
  std::vector<Handle> some;
  std::ranges::copy_if(picture.handles, std::back_inserter(some),
                       [&](const Handle& one) { return one.kind == kind; });
  return some;
}

const Handle& handle_of(const ScreenPicture& picture, const Subjects& shows) {
  const auto found = std::ranges::find(picture.handles, shows, &Handle::shows);
  REQUIRE(found != picture.handles.end());
  return *found;
}

TEST_CASE("movable (1): distances are what the job says, or what its shares come to") {
  const Font labels = test::label_font();
  const Made made = test::made(test::bytes_of(test::example("tin-heron")));
  const ScreenPicture plan = screen_plan(made, labels);
  const auto brackets = of_kind(plan, Handle::Kind::Bracket);
  REQUIRE(brackets.size() == 4);
  const Handle& first = handle_of(plan, Subject::bracket(1));
  CHECK(first.side == "left");
  CHECK(first.corner == "front");
  CHECK(first.mm == doctest::Approx(9 * kIn));
  CHECK(first.least == doctest::Approx(0));
  CHECK(first.most == doctest::Approx((30 - 3) * kIn));  // 3 in wide on a side of 30 in
  CHECK(first.keys == std::vector<std::string>{"bracket.1.at"});
  const Handle& third = handle_of(plan, Subject::bracket(3));
  CHECK(third.corner == "back");
  CHECK(third.mm == doctest::Approx(5 * kIn));
  // From the front corner the way is down on the left side, from the back corner up.
  CHECK(first.way.y == doctest::Approx(1));
  CHECK(third.way.y == doctest::Approx(-1));

  // Both bumpers end in the middle of 28 in, at one place: a gap.
  CHECK(of_kind(plan, Handle::Kind::End).empty());
  const auto gaps = of_kind(plan, Handle::Kind::Gap);
  REQUIRE(gaps.size() == 2);
  CHECK(gaps[0].mm == doctest::Approx(14 * kIn));
  CHECK(gaps[0].keys == std::vector<std::string>{"bumper.1.to", "bumper.2.from"});
  CHECK(gaps[1].keys == std::vector<std::string>{"bumper.2.to", "bumper.1.from"});

  const auto numbers = of_kind(plan, Handle::Kind::Numeral);
  REQUIRE(numbers.size() == 4);
  for (const Handle& one : numbers) {
    CHECK(one.least < one.mm);
    CHECK(one.mm < one.most);
  }
}

TEST_CASE("movable (1): ends told from a corner, and openings") {
  const Font labels = test::label_font();
  const Made legs = test::made(test::bytes_of(test::example("kinds/short-leg")));
  const ScreenPicture plan = screen_plan(legs, labels);
  const Handle& from = handle_of(plan, Subject::end("A", true));
  CHECK(from.kind == Handle::Kind::End);
  CHECK(from.corner == "left");
  CHECK(from.mm == doctest::Approx(7 * kIn));
  CHECK(from.way.x == doctest::Approx(1));  // away from the left corner, the machine's front is up
  const Handle& to = handle_of(plan, Subject::end("B", false));
  CHECK(to.corner == "right");
  CHECK(to.mm == doctest::Approx(10 * kIn));
  CHECK(to.way.x == doctest::Approx(-1));

  const Made opened = test::made(test::bytes_of(test::example("kinds/opening")));
  const auto openings = of_kind(screen_plan(opened, labels), Handle::Kind::Opening);
  REQUIRE(openings.size() == 1);
  CHECK(openings[0].mm == doctest::Approx(14 * kIn));
  CHECK(openings[0].least == doctest::Approx(7 * kIn));  // half of 14 in
  CHECK(openings[0].most == doctest::Approx(21 * kIn));
  CHECK(openings[0].keys == std::vector<std::string>{"opening.1.center"});
}

TEST_CASE("movable: on a cover a bracket's handle lies on the bracket") {
  const Font labels = test::label_font();
  int looked_at = 0;
  for (const char* name : {"tin-heron", "kinds/hexagon", "kinds/one-a-side"}) {
    CAPTURE(std::string(name));
    const Made made = test::made(test::bytes_of(test::example(name)));
    for (std::size_t b = 0; b < made.patterns.size(); ++b) {
      const ScreenPicture cover = screen_cover(made, b, labels);
      for (const BracketOnPattern& bracket : made.patterns[b].brackets) {
        const Handle& handle = handle_of(cover, Subject::bracket(bracket.keys + 1));
        const FlatPoint at = cover.map->to_mm(handle.at_px);
        bool on_it = false;
        for (const plane::Path& footprint : bracket.footprints)
          on_it |= plane::bounds(footprint).holds(at);
        CHECK(on_it);
        ++looked_at;
      }
    }
  }
  CHECK(looked_at >= 4);
}

/// The value of a key that puts the thing an inch further from its corner.
std::string further(const Handle& handle, const std::string& key) {
  const std::string place =
      "\"" + std::to_string(handle.mm + kIn) + " mm\", \"" + handle.corner + "\"]";
  return (key.starts_with("bumper.") ? "[\"" + handle.side + "\", " : "[") + place;
}

TEST_CASE("movable (2): given an inch more, the thing moves by an inch along its way") {
  const Font labels = test::label_font();
  struct Case {
    const char* name;
    std::string more;
  };
  const std::string by_hand = R"(
[[numerals.place]]
side = "left"
center = ["14 in", "front"]
)";
  for (const Case& one : {Case{"tin-heron", ""}, Case{"kinds/short-leg", ""},
                          Case{"kinds/opening", ""}, Case{"kinds/hexagon", by_hand}}) {
    CAPTURE(one.name);
    std::string text = test::bytes_of(test::example(one.name));
    if (!one.more.empty()) {
      const auto sides = text.find("sides = [", text.find("[numerals]"));
      if (sides != std::string::npos) text.erase(sides, text.find('\n', sides) - sides);
      text += one.more;
      text.replace(text.find("side = \"left\"\ncenter"), 13, "side = \"front left\"");
      text.replace(text.find("[\"14 in\""), 8, "[\"7.5 in\"");
    }
    const Made before = test::made(text);
    const ScreenPicture plan = screen_plan(before, labels);
    int moved = 0;
    for (const Handle& handle : plan.handles) {
      // A number placed by rule has no place of its own to change.
      if (handle.kind == Handle::Kind::Numeral && before.job.numerals.places.empty()) continue;
      CAPTURE(to_text(handle.shows));
      std::string changed = text;
      for (const std::string& key : handle.keys) {
        const auto change = set_value(changed, key, further(handle, key));
        REQUIRE_MESSAGE(change.has_value(), to_text(change.error().front()));
        changed = change->text;
      }
      const auto after = test::make_text(changed);
      REQUIRE_MESSAGE(after.has_value(), to_text(after.error().front()));
      const ScreenPicture then = screen_plan(*after, labels);
      const Handle& now = handle_of(then, handle.shows);
      CHECK(now.mm == doctest::Approx(handle.mm + kIn));
      // The plan is the same size: its bumpers reach as far.
      REQUIRE(then.map->mm_per_px == doctest::Approx(plan.map->mm_per_px));
      const FlatPoint went = now.at_px - handle.at_px;
      CHECK(dot(went, handle.way) * handle.mm_per_px == doctest::Approx(kIn));
      CHECK(std::abs(cross(went, handle.way)) < 1e-6);
      ++moved;
    }
    CHECK(moved >= 1);
  }
}

TEST_CASE("movable: on its cover a thing moves along the cloth, mirrored as printed") {
  const Font labels = test::label_font();
  const Made made = test::made(test::bytes_of(test::example("tin-heron")));
  const ScreenPicture out = screen_cover(made, 0, labels);
  const ScreenPicture in = screen_cover(made, 0, labels, {}, CoverShown::AsPrinted);
  const Handle& outside = handle_of(out, Subject::bracket(1));
  const Handle& inside = handle_of(in, Subject::bracket(1));
  // Seen from outside, front is left of the left side.
  CHECK(outside.way.x == doctest::Approx(1));
  CHECK(inside.way.x == doctest::Approx(-1));
  CHECK(out.map->to_mm(outside.at_px).x == doctest::Approx(in.map->to_mm(inside.at_px).x));
  // Of the bumpers' own, no other's: bracket 2 is on B.
  CHECK(std::ranges::find(out.handles, Subjects(Subject::bracket(2)), &Handle::shows) ==
        out.handles.end());
  CHECK(of_kind(out, Handle::Kind::Numeral).size() == 3);
}

}  // namespace
}  // namespace swathe
