#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "support/examples.hpp"
#include "support/label_font.hpp"
#include "support/made.hpp"
#include "swathe/form.hpp"
#include "swathe/screen.hpp"

// What a handle that was moved comes to in the job's text.
namespace swathe {
namespace {

using screen::Handle;

constexpr double kIn = 25.4;

std::vector<Handle> handles_of(const Made& made) {
  return screen_plan(made, test::label_font()).handles;
}
const Handle& handle_of(const std::vector<Handle>& handles, const std::string& shows) {
  const auto found = std::ranges::find_if(
      handles, [&](const Handle& handle) { return to_text(handle.shows) == shows; });
  REQUIRE_MESSAGE(found != handles.end(), shows);
  return *found;
}
const Handle& first_of(const std::vector<Handle>& handles, Handle::Kind kind) {
  const auto found = std::ranges::find(handles, kind, &Handle::kind);
  REQUIRE(found != handles.end());
  return *found;
}

Moved move(const Made& made, const std::string& text, const Handle& handle, double mm_,
           Snap snap = Snap::Coarse) {
  auto out = moved(made, text, to_text(handle.shows), mm(mm_), snap);
  REQUIRE_MESSAGE(out.has_value(), to_text(out.error().front()));
  return *std::move(out);
}

/// Lines of `b` that `a` has not.
std::vector<std::string> new_lines(const std::string& a, const std::string& b) {
  std::vector<std::string> all;
  for (std::size_t at = 0; at < b.size();) {
    const auto end = std::min(b.find('\n', at), b.size() - 1);
    const std::string line = b.substr(at, end - at + 1);
    if (a.find(line) == std::string::npos) all.push_back(line);
    at = end + 1;
  }
  return all;
}

TEST_CASE("moved (1, 3): each handle of the examples, by a little more than an inch") {
  int count = 0;
  for (const std::string name : {"tin-heron", "kinds/short-leg", "kinds/opening", "kinds/hexagon",
                                 "kinds/one-a-side", "kinds/c-halves"}) {
    CAPTURE(name);
    const std::string text = test::bytes_of(test::example(name));
    const Made made = test::made(text);
    const bool in_inches = made.job.units == Units::Inches;
    const double coarse = in_inches ? kIn / 4 : 5, fine = in_inches ? kIn / 16 : 1;
    for (const Handle& handle : handles_of(made)) {
      CAPTURE(to_text(handle.shows));
      const double to = handle.mm + 1.13 * kIn;
      const Moved out = move(made, text, handle, to);
      const double distance = out.distance.mm();
      const bool at_limit = to + coarse > handle.most;
      const double steps = distance / (at_limit ? fine : coarse);
      CHECK(std::abs(steps - std::round(steps)) < 1e-9);
      CHECK(distance > handle.least - 1e-9);
      CHECK(distance < handle.most + 1e-9);
      CHECK((at_limit ? handle.most - distance : std::abs(distance - to)) < coarse);
      const auto after = test::make_text(out.text);
      if (!after) continue;  // a bracket that now runs over an end, say
      ++count;
      if (handle.kind == Handle::Kind::Numeral) {
        bool there = false;
        for (const Handle& now : handles_of(*after))
          there |= now.kind == handle.kind && now.side == handle.side &&
                   std::abs(now.mm - distance) < 1e-3;
        CHECK(there);
        continue;
      }
      const Handle now = handle_of(handles_of(*after), to_text(handle.shows));
      CHECK(now.mm == doctest::Approx(distance).epsilon(1e-6));
    }
  }
  CHECK(count >= 20);
}

TEST_CASE("moved (2): a bracket's place alone is another, and the comment stays") {
  const std::string text = test::bytes_of(test::example("tin-heron"));
  const Made made = test::made(text);
  const auto handles = handles_of(made);
  const Handle& bracket = handle_of(handles, to_text(Subjects(Subject::bracket(1))));
  const Moved out = move(made, text, bracket, 10.1 * kIn);
  CHECK(out.changes == std::vector<KeyChange>{{"bracket.1.at", "[\"10 in\", \"front\"]"}});
  CHECK(out.words == "10 in from the corner of left and front");
  CHECK(new_lines(text, out.text).size() == 1);
  CHECK(move(made, text, bracket, 10.1 * kIn, Snap::Fine).words ==
        "10 1/8 in from the corner of left and front");
  // It stays on its side: 30 in, 3 in wide.
  CHECK(move(made, text, bracket, 1e5).distance.mm() == doctest::Approx(27 * kIn));
  CHECK(move(made, text, bracket, -50).distance.mm() == doctest::Approx(0));
}

TEST_CASE("moved: both ends at a gap, and undone by the text before") {
  const std::string text = test::bytes_of(test::example("tin-heron"));
  const Made made = test::made(text);
  const auto handles = handles_of(made);
  const Handle& gap = first_of(handles, Handle::Kind::Gap);
  const Moved out = move(made, text, gap, 15 * kIn);
  REQUIRE(out.changes.size() == 2);
  CHECK(out.changes[0].key == "bumper.1.to");
  CHECK(out.changes[1].key == "bumper.2.from");
  CHECK(out.changes[0].value == out.changes[1].value);
  const auto after = handles_of(test::made(out.text));
  CHECK(std::ranges::count(after, Handle::Kind::Gap, &Handle::kind) == 2);
  CHECK(first_of(after, Handle::Kind::Gap).mm == doctest::Approx(15 * kIn));
}

TEST_CASE("from_corner: what a key places is said from a corner, and stays") {
  const std::string text = test::bytes_of(test::example("tin-heron"));
  const Made made = test::made(text);
  // Half of the back, 28 in wide; the job's other bumper begins there.
  const auto out = from_corner(made, text, "bumper.1.to");
  REQUIRE(out.has_value());
  CHECK(out->changes ==
        std::vector<KeyChange>{{"bumper.1.to", "[\"back\", \"14 in\", \"left\"]"},
                               {"bumper.2.from", "[\"back\", \"14 in\", \"left\"]"}});
  const auto before = handles_of(made), after = handles_of(test::made(out->text));
  REQUIRE(before.size() == after.size());
  for (std::size_t k = 0; k < before.size(); ++k)
    CHECK(after[k].mm == doctest::Approx(before[k].mm).epsilon(1e-9));

  CHECK_FALSE(from_corner(made, text, "frame.width").has_value());
  CHECK_FALSE(from_corner(made, text, "").has_value());
}

TEST_CASE("moved: of numbers placed by rule all places are written, and the others stay") {
  const std::string text = test::bytes_of(test::example("tin-heron"));
  const Made made = test::made(text);
  REQUIRE(made.job.numerals.places.empty());
  const auto before = handles_of(made);
  const Handle& number = first_of(before, Handle::Kind::Numeral);
  const Moved out = move(made, text, number, number.mm + kIn);
  const Made then = test::made(out.text);
  CHECK(then.job.numerals.places.size() == made.numerals->placed.size());
  CHECK_FALSE(then.job.numerals.sides.has_value());
  const auto after = handles_of(then);
  std::size_t stayed = 0;
  for (const Handle& handle : before) {
    if (handle.kind != Handle::Kind::Numeral) continue;
    for (const Handle& now : after)
      stayed += now.kind == handle.kind && now.side == handle.side && now.corner == handle.corner &&
                std::abs(now.mm - handle.mm) < 0.01;
  }
  CHECK(stayed == made.numerals->placed.size() - 1);
}

TEST_CASE("moved: a centered bracket whose holes are measured from a corner") {
  std::string text = test::bytes_of(test::example("tin-heron"));
  text = set_value(text, "bracket.1.at", "50%")->text;
  text = set_value(text, "bracket.1.holes_from", "front")->text;
  const Made made = test::made(text);
  const auto handles = handles_of(made);
  const Handle& bracket = handle_of(handles, to_text(Subjects(Subject::bracket(1))));
  CHECK(bracket.corner == "front");
  const Moved out = move(made, text, bracket, 12 * kIn);
  const Made then = test::made(out.text);
  CHECK(then.job.brackets[0].holes_from.empty());
  CHECK(measured_from(then.job.brackets[0]) == "front");
}

TEST_CASE("moved: what cannot be moved is refused in words") {
  const std::string text = test::bytes_of(test::example("tin-heron"));
  const auto out = moved(test::made(text), text, "cloth", mm(10));
  REQUIRE_FALSE(out.has_value());
  CHECK(out.error().front().why == Why::UnknownName);
}

}  // namespace
}  // namespace swathe
