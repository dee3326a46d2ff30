#include <doctest/doctest.h>
#include <fmt/format.h>

#include <set>
#include <string_view>
#include <utility>

#include "check/check.hpp"
#include "make/checked_set.hpp"
#include "support/examples.hpp"
#include "support/made_examples.hpp"
#include "swathe/check.hpp"

namespace swathe {
namespace {

/// A job's card by a season, as the tool makes it.
struct Card {
  Made made;
  std::vector<CardRow> rows;

  explicit Card(const std::string& text) : made(test::made(text)) {
    REQUIRE(made.season.has_value());
    rows = card_rows(check_to_measure(checked_set(made)), *made.season);
    REQUIRE(rows.size() > 10);
  }
  Outcome<std::vector<MeasuredRow>> by(const std::string& text) const {
    return check_measured(rows, text, "m.toml", made.job.units);
  }
  /// The one row whose words begin so.
  const CardRow& row(std::string_view what) const {
    const CardRow* found = nullptr;
    for (const CardRow& row : rows) {
      if (!row.what.starts_with(what)) continue;
      REQUIRE_MESSAGE(found == nullptr, "two rows begin " << what);
      found = &row;
    }
    REQUIRE_MESSAGE(found != nullptr, what);
    return *found;
  }
  /// What that row comes to with a value in a file of that row alone.
  MeasuredRow judged(std::string_view what, const std::string& value) const {
    const std::string words = row(what).what;
    const auto read = by(fmt::format("[[row]]\nwhat = '{}'\nmeasured = {}\n", words, value));
    REQUIRE_MESSAGE(read.has_value(), to_text(read.error().front()));
    for (const MeasuredRow& row : *read)
      if (row.row.what == words) return row;
    FAIL("the row is gone");
    return {};
  }
  Verdict verdict(std::string_view what, const std::string& value) const {
    return judged(what, value).verdict;
  }
};

std::string of_season(std::string text, const std::string& season) {
  const std::string key = "season = \"";
  const auto at = text.find(key);
  REQUIRE(at != std::string::npos);
  const auto value = at + key.size();
  return text.replace(value, text.find('"', value) - value, season);
}

const Card& tin_heron() {
  static const Card card(test::bytes_of(test::example("tin-heron")));
  return card;
}

}  // namespace

// The limits are those of the season's manual, section 8.4, rules R401 to R412 and the grace of
// inspection of 1/4 in; an inch is 25.4 mm, a pound 453.59237 g.

TEST_CASE("measured: a length that is asked for, in any unit, with the grace of inspection") {
  const Card& card = tin_heron();
  const auto height = [&](const char* value) { return card.verdict("backing", value); };
  CHECK(height("'4 1/2 in'") == Verdict::Pass);  // at least 4 1/2 in
  CHECK(height("'114.3 mm'") == Verdict::Pass);  // 4.5 x 25.4
  CHECK(height("'11.43 cm'") == Verdict::Pass);
  CHECK(height("4.5") == Verdict::Pass);          // the job is in inches
  CHECK(height("'4 3/8\"'") == Verdict::Warn);    // 1/8 in too little
  CHECK(height("'4 1/4 in'") == Verdict::Warn);   // all of the grace
  CHECK(height("'4 3/16 in'") == Verdict::Fail);  // 5/16 in
  CHECK(height("'107 mm'") == Verdict::Fail);     // 114.3 - 107 = 7.3 mm; the grace is 6.35 mm
  CHECK(card.judged("backing", "'4 3/16 in'").advice == "5/16 in too little");
  CHECK(card.judged("backing", "'4 3/8 in'").advice ==
        "1/8 in too little; an inspector may allow 1/4 in, but do not count on it");
  CHECK(card.judged("backing", "'127 mm'").measured == "5 in");
  CHECK(card.judged("backing", "'5 in'").advice.empty());
}

TEST_CASE("measured: numerals have no grace; a guideline warns at worst") {
  const Card& card = tin_heron();
  CHECK(card.verdict("digit height", "'3 3/4 in'") == Verdict::Pass);
  CHECK(card.verdict("digit height", "'3 11/16 in'") == Verdict::Fail);
  CHECK(card.verdict("digit stroke", "'1/2 in'") == Verdict::Pass);
  CHECK(card.verdict("digit stroke", "'12 mm'") == Verdict::Fail);  // 12.7 mm
  CHECK(card.verdict("space between digits", "'4 in'") == Verdict::Pass);
  CHECK(card.verdict("space between digits", "'6 in'") == Verdict::Warn);  // "about"
  CHECK(card.verdict("places of the number", "3") == Verdict::Pass);
  CHECK(card.verdict("places of the number", "'2'") == Verdict::Fail);
  CHECK(card.judged("places of the number", "1").advice == "2 too few");
}

TEST_CASE("measured: a gap has to be less than its limit") {
  const Card& card = tin_heron();
  CHECK(card.verdict("gap between covers", "'1 3/16 in'") == Verdict::Pass);  // less than 1 1/4 in
  CHECK(card.judged("gap between covers", "'1 1/4 in'").advice == "it has to be less");
  CHECK(card.verdict("gap between covers", "'1 1/4 in'") == Verdict::Warn);
  CHECK(card.verdict("gap between covers", "'1 1/2 in'") == Verdict::Warn);  // all of the grace
  CHECK(card.verdict("gap between covers", "'1 9/16 in'") == Verdict::Fail);
}

TEST_CASE("measured: two heights above the floor") {
  const Card& card = tin_heron();
  const std::string row = "height above the floor";  // fills 2 1/2 in to 5 3/4 in
  CHECK(card.verdict(row, "['2 1/2 in', '5 3/4 in']") == Verdict::Pass);
  CHECK(card.judged(row, "['2 in', '178 mm']").measured == "2 in to 7.008 in");  // 178 / 25.4
  CHECK(card.verdict(row, "['2 5/8 in', '7 in']") == Verdict::Warn);
  CHECK(card.judged(row, "['3 in', '7 in']").advice == "1/2 in too high at the bottom");
  CHECK(card.verdict(row, "['3 in', '7 in']") == Verdict::Fail);
  CHECK(card.judged(row, "['2 in', '5 in']").advice == "3/4 in too low at the top");
  CHECK(card.judged(row, "['', '']").measured.empty());
  // In 2020 the bumper stays within 0 in to 7 1/2 in above the floor (that season's manual, R18).
  const Card other(of_season(test::bytes_of(test::example("tin-heron")), "2020"));
  std::string within;
  for (const CardRow& row_of : other.rows)
    if (row_of.limit.of == Limit::Of::Within) within = row_of.what;
  REQUIRE_FALSE(within.empty());
  CHECK(other.verdict(within, "['1/2 in', '7 1/2 in']") == Verdict::Pass);
  CHECK(other.verdict(within, "['1/2 in', '8 in']") == Verdict::Fail);
}

TEST_CASE("measured: a weight, and what is only looked at") {
  const Card& card = tin_heron();
  CHECK(card.verdict("weight", "'135 lb'") == Verdict::Pass);
  CHECK(card.verdict("weight", "'61.2 kg'") == Verdict::Pass);  // 61200 / 453.59237 = 134.92 lb
  CHECK(card.verdict("weight", "'61.3 kg'") == Verdict::Fail);  // 135.14 lb
  CHECK(card.verdict("fastening", "'Yes'") == Verdict::Pass);
  CHECK(card.verdict("fastening", "true") == Verdict::Pass);
  CHECK(card.verdict("fastening", "'no'") == Verdict::Fail);
  CHECK(card.judged("fastening", "false").advice.find("bolts") != std::string::npos);
}

TEST_CASE("measured: of a rule that nobody has read, nothing passes and nothing fails") {
  const auto season = read_season(
      "season = \"made up\"\n[backing]\n"
      "height = { value = \"4 in\", rule = \"R1\", attested = \"unverified\" }\n",
      "rules.toml");
  REQUIRE(season.has_value());
  Finding finding;
  finding.id = "backing-height";
  finding.rule = "made up R1";
  finding.attested = Attested::Unverified;
  Limit limit{Limit::Of::Length, 101.6};  // 4 in
  limit.missed = Verdict::Warn;           // as Findings has it
  const auto rows = card_rows(std::vector<Measurable>{{finding, limit}}, *season);
  REQUIRE(rows.size() == 1);
  const auto by = [&](const std::string& value) {
    const auto read = check_measured(
        rows, "[[row]]\nwhat = '" + rows[0].what + "'\nmeasured = '" + value + "'\n", "m", {});
    REQUIRE(read.has_value());
    return read->front();
  };
  CHECK(by("5 in").verdict == Verdict::Unknown);
  CHECK(by("3 in").verdict == Verdict::Warn);
  CHECK(by("5 in").advice.find("look it up there") != std::string::npos);
}

TEST_CASE("measured: the file that is written has the card's rows, all empty, and is read back") {
  for (const auto& path : test::example_jobs())
    for (const std::string& season : season_names()) {
      CAPTURE(path.filename().string());
      CAPTURE(season);
      const Made made = test::made(of_season(test::bytes_of(path), season));
      const auto rows = card_rows(check_to_measure(checked_set(made)), *made.season);
      const std::string text = measured_text(rows, *made.season, made.job.units);
      const auto read = check_measured(rows, text, "m.toml", made.job.units);
      REQUIRE_MESSAGE(read.has_value(), to_text(read.error().front()));
      REQUIRE(read->size() == rows.size());
      std::set<std::pair<std::string, std::string>> names;
      for (std::size_t k = 0; k < rows.size(); ++k) {
        CHECK((*read)[k].row.what == rows[k].what);
        CHECK((*read)[k].measured.empty());
        CHECK((*read)[k].verdict == Verdict::Unknown);
        names.emplace(rows[k].what, rows[k].finding.required);
      }
      CHECK(names.size() == rows.size());  // each row can be told from the others
    }
}

TEST_CASE("measured: what the plan gives passes where the plan does") {
  for (const char* const name : {"tin-heron", "kinds/block", "kinds/hexagon"}) {
    CAPTURE(name);
    const Card card(test::bytes_of(test::example(name)));
    int lengths = 0;
    for (const CardRow& row : card.rows) {
      if (row.limit.of != Limit::Of::Length) continue;
      if (!parse_length(row.finding.measured, Units::Inches)) continue;  // with words beside it
      ++lengths;
      CAPTURE(row.what);
      const auto judged =
          card.by(fmt::format("[[row]]\nwhat = '{}'\nasks = '{}'\nmeasured = '{}'\n", row.what,
                              row.finding.required, row.finding.measured));
      REQUIRE(judged.has_value());
      for (const MeasuredRow& one : *judged)
        if (!one.measured.empty() && row.finding.verdict != Verdict::Unknown)
          CHECK(one.verdict == row.finding.verdict);
    }
    CHECK(lengths >= 5);
  }
}

TEST_CASE("measured: every fault at once, each at its place") {
  const Card& card = tin_heron();
  const auto read = card.by(
      "title = 1\n"                                  // 1
      "[[row]]\n"                                    // 2
      "what = \"backing (board) hight: boards\"\n"   // 3
      "[[row]]\n"                                    // 4
      "what = \"backing (board) height: boards\"\n"  // 5
      "masured = \"5 in\"\n"                         // 6
      "[[row]]\n"                                    // 7
      "what = \"backing (board) height: boards\"\n"  // 8
      "measured = \"5 inn\"\n"                       // 9
      "[[row]]\n"                                    // 10
      "measured = \"5 in\"\n"                        // 11
      "[[row]]\n"                                    // 12
      "what = \"" +
      card.row("padding depth").what +
      "\"\n"                    // 13
      "measured = \"5 inn\"\n"  // 14
      "[[row]]\n"               // 15
      "what = \"" +
      card.row("height above the floor").what +
      "\"\n"                               // 16
      "measured = [\"7 in\", \"2 in\"]\n"  // 17
      "[[row]]\n"                          // 18
      "what = \"" +
      card.row("weight").what +
      "\"\n"             // 19
      "measured = 52\n"  // 20
      "asks = 1\n");     // 21
  REQUIRE_FALSE(read.has_value());
  std::vector<std::pair<int, Why>> places;
  for (const Refusal& fault : read.error()) places.emplace_back(fault.place.line, fault.why);
  CHECK(places == std::vector<std::pair<int, Why>>{{1, Why::UnknownKey},
                                                   {3, Why::UnknownName},
                                                   {6, Why::UnknownKey},
                                                   {8, Why::UnknownName},
                                                   {10, Why::Missing},
                                                   {14, Why::Malformed},
                                                   {17, Why::Malformed},
                                                   {20, Why::Malformed},
                                                   {21, Why::WrongType}});
  CHECK(read.error()[1].sentence.find("the nearest is \"backing (board) height: boards\"") !=
        std::string::npos);
  CHECK(read.error()[7].sentence.find("like \"118 lb\"") != std::string::npos);
  CHECK_FALSE(card.by("[[row]").has_value());  // no TOML
  CHECK_FALSE(card.by("row = 3").has_value());
}

TEST_CASE("measured: a value measured for one season is read for another") {
  const Card& card = tin_heron();
  const auto read = card.by(
      "[[row]]\nwhat = 'backing (board) height: boards'\nasks = 'at least 4 3/4 in'\n"
      "measured = '5 in'\n");
  REQUIRE(read.has_value());
  CHECK(read->front().measured == "5 in");
}

}  // namespace swathe
