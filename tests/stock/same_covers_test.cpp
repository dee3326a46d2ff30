#include <doctest/doctest.h>

#include "support/jobs.hpp"
#include "support/patterns.hpp"
#include "swathe/stock.hpp"

namespace swathe {
namespace {

using test::patterns_of;

BracketKeys window(const char* side, const char* corner, double at_in) {
  BracketKeys keys;
  keys.side = side;
  keys.at = FromCorner{inches(at_in), corner};
  keys.width = inches(2);
  keys.height = inches(1);
  keys.cloth = BracketCloth::Window;
  return keys;
}

TEST_CASE("two halves split in the middle are one pattern") {
  const auto same = same_patterns(patterns_of(test::worked_job()), {}, {});
  CHECK_FALSE(same[0].has_value());
  REQUIRE(same[1].has_value());
  CHECK(same[1]->other == 0);
  CHECK(same[1]->how == Sameness::How::Same);
  CHECK(same[1]->but_for.empty());
}

TEST_CASE("a half with a longer leg is the mirror of one with its leg on the other side") {
  Job job = test::worked_job();
  job.bumpers[0].from = {"front",
                         RunEnd::Share{0.4}};  // A: 60 % of the front, then left, half the back
  job.bumpers[1].to = {"front", RunEnd::Share{0.3}};  // B: half the back, right, 30 % of the front
  job.bumpers[0].from = {"front", RunEnd::Share{0.7}};
  const auto same = same_patterns(patterns_of(job), {}, {});
  REQUIRE(same[1].has_value());
  CHECK(same[1]->how ==
        Sameness::How::Turned);  // half a turn, flaps exchanged: top and bottom are alike
}

TEST_CASE(
    "windows at mirrored places make a mirrored pattern; at other places they are a difference") {
  Job job = test::worked_job();
  job.brackets = {window("left", "front", 5), window("right", "front", 5)};
  auto same = same_patterns(patterns_of(job), {}, {});
  REQUIRE(same[1].has_value());
  CHECK(same[1]->how == Sameness::How::Mirrored);
  CHECK(same[1]->but_for.empty());
  job.brackets[1].at = FromCorner{inches(7), "front"};
  same = same_patterns(patterns_of(job), {}, {});
  REQUIRE(same[1].has_value());
  CHECK(same[1]->but_for == std::vector<std::string>{"windows"});
}

TEST_CASE("numerals at the same places are the same, turned or mirrored ones never") {
  const std::vector<Pattern> patterns = patterns_of(test::worked_job());
  PlacedNumeral on_a, on_b;
  on_a.center_s = on_b.center_s = 300;
  on_b.bumper = 1;
  CHECK(same_patterns(patterns, {}, {on_a, on_b})[1]->but_for.empty());
  on_b.center_s = 400;
  CHECK(same_patterns(patterns, {}, {on_a, on_b})[1]->but_for ==
        std::vector<std::string>{"numerals"});
}

/// The names of the marks on each cover, and where they stand.
struct Named {
  const std::vector<Pattern>& patterns;
  std::vector<std::vector<std::string>> names;

  /// Of the mark that stands so far from the left on a side's board.
  std::string on(std::size_t cover, const std::string& side, std::size_t number) const {
    const std::vector<MatchMark>& marks = patterns[cover].marks;
    REQUIRE(names[cover].size() == marks.size());
    std::vector<std::string> found;
    for (std::size_t k = 0; k < marks.size(); ++k)
      if (marks[k].top && marks[k].side == side) found.push_back(names[cover][k]);
    REQUIRE(number < found.size());
    return found[number];
  }
};

TEST_CASE("a cover cut from another's print has the print's mark names on its own boards") {
  Job job = test::worked_job();
  std::vector<Pattern> patterns = patterns_of(job);
  auto same = same_patterns(patterns, {}, {});
  Named named{patterns, shared_mark_names(patterns, same)};
  // Laid as it is: A's front half is B's back half, and so on.
  using Sides = std::vector<std::pair<std::string, std::string>>;
  CHECK(same[1]->sides == Sides{{"front", "back"}, {"left", "right"}, {"back", "front"}});
  CHECK(named.on(0, "front", 0) == "M1");
  CHECK(named.on(1, "back", 0) == "M1");
  CHECK(named.on(1, "front", 2) == named.on(0, "back", 2));

  // Flipped left for right: what is A's first mark is B's last.
  job.brackets = {window("left", "front", 5), window("right", "front", 5)};
  patterns = patterns_of(job);
  same = same_patterns(patterns, {}, {});
  named.names = shared_mark_names(patterns, same);
  REQUIRE(same[1]->how == Sameness::How::Mirrored);
  CHECK(same[1]->sides == Sides{{"front", "front"}, {"left", "right"}, {"back", "back"}});
  CHECK(named.on(1, "front", 2) == named.on(0, "front", 0));
  CHECK(named.on(1, "right", 0) == named.on(0, "left", 2));

  // Half a turn, top and bottom exchanged.
  job.brackets.clear();
  job.bumpers[0].from = {"front", RunEnd::Share{0.7}};
  job.bumpers[1].to = {"front", RunEnd::Share{0.3}};
  patterns = patterns_of(job);
  same = same_patterns(patterns, {}, {});
  named.names = shared_mark_names(patterns, same);
  REQUIRE(same[1]->how == Sameness::How::Turned);
  CHECK(named.on(1, "front", 2) == named.on(0, "front", 0));
}

TEST_CASE("pleats that fold another way are a difference") {
  Job job = test::worked_job();
  job.padding.lapping = {"front", "back"};
  std::vector<Pattern> patterns = patterns_of(job);
  for (PleatLine& pleat : patterns[1].pleats) pleat.under = -1.0 * pleat.under;
  CHECK(same_patterns(patterns, {}, {})[1]->but_for == std::vector<std::string>{"pleats"});
}

}  // namespace
}  // namespace swathe
