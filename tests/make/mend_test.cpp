#include <doctest/doctest.h>

#include <set>

#include "support/examples.hpp"
#include "support/made.hpp"
#include "swathe/job.hpp"

// Every change of keys that a finding is given mends it: the job is changed so and made again.
namespace swathe {
namespace {

using Changes = std::vector<KeyChange>;

std::string changed(std::string text, const Changes& changes) {
  for (const KeyChange& change : changes) {
    CAPTURE(change.key);
    CAPTURE(change.value);
    const auto made = set_value(text, change.key, change.value);
    REQUIRE_MESSAGE(made.has_value(), to_text(made.error().front()));
    text = made->text;
  }
  return text;
}

/// What is asked for, whatever its figures.
std::string without_figures(const std::string& words) {
  std::string kept;
  for (const char c : words)
    if (c < '0' || c > '9') kept += c;
  return kept;
}

bool is_same(const Finding& a, const Finding& b) {
  return a.id == b.id && a.rule == b.rule && a.subject == b.subject &&
         without_figures(a.required) == without_figures(b.required);
}

/// Whether it is gone, or passes; under a rule whose text was not read nothing ever passes.
bool is_mended(const Finding& finding, const std::vector<Finding>& after) {
  for (const Finding& other : after) {
    if (!is_same(other, finding)) continue;
    const bool passes = other.verdict == Verdict::Pass || (other.attested == Attested::Unverified &&
                                                           other.verdict == Verdict::Unknown);
    if (!passes) return false;
  }
  return true;
}

/// Applies the mend of every finding, each by itself; the ids of those that had one.
void prove_mends(const std::string& text, std::set<std::string>& proven) {
  const auto before = test::make_text(text);
  REQUIRE_MESSAGE(before.has_value(), to_text(before.error().front()));
  for (const Finding& finding : before->findings) {
    if (finding.mend.empty()) continue;
    CHECK(finding.verdict != Verdict::Pass);
    CAPTURE(finding.id);
    CAPTURE(finding.subject);
    CAPTURE(finding.required);
    CAPTURE(finding.measured);
    CAPTURE(finding.mend.front().key);
    CAPTURE(finding.mend.front().value);
    const auto after = test::make_text(changed(text, finding.mend));
    CHECK_MESSAGE(after.has_value(), to_text(after.error().front()));
    if (after) CHECK(is_mended(finding, after->findings));
    proven.insert(finding.id);
  }
}

TEST_CASE("mends: of every example") {
  std::set<std::string> proven;
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    prove_mends(test::bytes_of(path), proven);
  }
}

TEST_CASE("mends: of jobs broken in one or two places, under two seasons") {
  // Of the example, but for its sides: so that a place may be given.
  const auto without_sides =
      remove_value(test::bytes_of(test::example("tin-heron")), "numerals.sides");
  REQUIRE(without_sides.has_value());
  const std::string whole = without_sides->text;
  const Changes none;
  const std::vector<Changes> broken = {
      none,
      {{"boards.height", "\"4 1/8 in\""}, {"numerals.sides", "[\"front\"]"}},
      {{"boards.height", "\"5 3/4 in\""}},
      {{"frame.fit", "\"5/16 in\""}},
      {{"frame.floor_gap", "\"5 in\""}},
      {{"frame.floor_gap", "\"1/8 in\""}},
      {{"numerals.height", "\"3 in\""}},
      {{"numerals.height", "\"9 in\""}},
      {{"numerals.height", "\"9 in\""}, {"numerals.sides", "[\"left\", \"front\"]"}},
      {{"numerals.color", "\"#ff8800\""}},
      {{"numerals.color", "\"#ff8800\""}, {"numerals.outline", "\"1/32 in\""}},
      {{"numerals.spacing", "\"-1/8 in\""}},
      {{"padding.diameter", "\"2 in\""}},
      {{"padding.diameter", "\"2 3/4 in\""}},
      {{"padding.stack", "1"}},
      {{"padding.core", "\"hollow\""}},
      {{"boards.thickness", "\"1/2 in\""}},
      {{"frame.backed", "false"}},
      {{"padding.form", "\"block\""},
       {"padding.depth", "\"2 in\""},
       {"padding.height", "\"4 in\""}},
      {{"cloth.colors.green", "\"#108020\""}},
      {{"cloth.colors.red", "\"#ffd0d0\""}, {"cloth.colors.blue", "\"#1b3a93\""}},
      {{"bumper.1.end_clearance", "\"0 in\""}, {"bumper.2.end_clearance", "\"0 in\""}},
      {{"bumper.1.end_clearance", "\"0 in\""}},
      {{"bumper.1.to", "[\"back\", \"6 in\", \"left\"]"}},
      {{"bracket.1.at", "[\"1/16 in\", \"front\"]"}},
      {{"bracket.2.at", "[\"1/8 in\", \"front\"]"}},
      {{"bracket.1.height", "\"2 3/4 in\""}},
      {{"numerals.place.1.bumper", "\"A\""},
       {"numerals.place.1.side", "\"left\""},
       {"numerals.place.1.center", "[\"3 in\", \"front\"]"}},
      {{"job.units", "\"mm\""}, {"numerals.height", "\"220 mm\""}, {"padding.diameter", "51"}},
  };
  std::set<std::string> proven;
  for (const char* season : {"2026", "2019"})
    for (std::size_t k = 0; k < broken.size(); ++k) {
      CAPTURE(season);
      CAPTURE(k);
      Changes changes = broken[k];
      changes.push_back({"job.season", season});
      prove_mends(changed(whole, changes), proven);
    }
  for (const char* id : {"numeral-color", "numeral-spacing", "cover-gap", "bracket", "contrast",
                         "backing-thickness", "support"}) {
    CAPTURE(id);
    CHECK(proven.contains(id));
  }
}

TEST_CASE("mends: of jobs that cannot be made") {
  const auto example = [](const char* name) { return test::bytes_of(test::example(name)); };
  const std::string heron = example("tin-heron"), strips = example("kinds/hook-and-loop"),
                    block = example("kinds/block");
  const std::pair<const std::string*, Changes> refused[] = {
      {&heron, {{"bracket.1.at", "[\"29 in\", \"front\"]"}}},
      {&heron, {{"bracket.2.at", "[\"700 mm\", \"front\"]"}, {"job.units", "\"mm\""}}},
      {&heron, {{"bracket.1.width", "\"31 in\""}}},
      {&heron, {{"bracket.1.down", "\"4 3/4 in\""}}},
      {&heron, {{"bracket.1.height", "\"5 1/8 in\""}, {"bracket.1.down", "\"0 in\""}}},
      {&heron, {{"cloth.flap", "\"4 in\""}}},
      {&heron, {{"cloth.flap", "\"4 in\""}, {"boards.height", "\"4.833 in\""}}},
      {&heron, {{"cloth.staple_line", "\"2 in\""}}},
      {&heron, {{"cloth.flap", "\"1 1/4 in\""}}},
      {&strips, {{"cloth.hook_and_loop.strip", "\"2 7/16 in\""}, {"cloth.end_reach", "\"3 in\""}}},
      {&block, {{"padding.edge_radius", "\"2.75 in\""}}},
  };
  for (const auto& [text, changes] : refused) {
    const std::string broken = changed(*text, changes);
    CAPTURE(broken);
    const auto before = test::make_text(broken);
    REQUIRE_FALSE(before.has_value());
    const Refusal& fault = before.error().front();
    CAPTURE(fault.sentence);
    REQUIRE(!fault.mend.empty());
    CAPTURE(fault.mend.front().value);
    // What was hidden behind it may be wrong, too, and has a mend of its own.
    std::string text_now = changed(broken, fault.mend);
    auto after = test::make_text(text_now);
    if (!after.has_value()) {
      CHECK(after.error().front().sentence != fault.sentence);
      text_now = changed(text_now, after.error().front().mend);
      after = test::make_text(text_now);
    }
    CHECK_MESSAGE(after.has_value(), to_text(after.error().front()));
  }
}

}  // namespace
}  // namespace swathe
