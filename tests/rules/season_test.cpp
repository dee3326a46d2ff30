#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "swathe/rules.hpp"

// The values are facts of the published manuals: the section of each manual is named beside them.
namespace swathe {
namespace {

Season season(std::string_view name) {
  auto read = bundled_season(name);
  REQUIRE_MESSAGE(read.has_value(), to_text(read.error().front()));
  return *read;
}

Refusals faults_of(std::string_view text) {
  const auto read = read_season(text, "own.toml");
  return read ? Refusals() : read.error();
}

const Refusal* fault_at(const Refusals& faults, int line, int column) {
  const auto found = std::ranges::find_if(faults, [&](const Refusal& r) {
    return r.place.file == "own.toml" && r.place.line == line && r.place.column == column;
  });
  return found == faults.end() ? nullptr : &*found;
}

template <class T>
bool stands(const Ruled<T>& value, std::string_view rule, Attested attested) {
  return value && value->rule == rule && value->attested == attested;
}

}  // namespace

TEST_CASE("every season built in reads without fault, newest first") {
  const auto names = season_names();
  REQUIRE(names.size() >= 4);
  CHECK(names.front() == "2026");
  CHECK(std::ranges::is_sorted(names, std::ranges::greater()));
  CHECK(newest_season() == names.front());
  for (const auto& name : names) {
    CAPTURE(name);
    CHECK(season(name).name == name);
    CHECK_FALSE(entries(season(name)).empty());
  }
}

TEST_CASE("2026 as its manual has it") {  // manual of 2026, section 8.4, kickoff version
  const Season s = season("2026");
  CHECK(s.cover_gap->value.inches() == doctest::Approx(1.25));
  CHECK(stands(s.cover_gap, "R401", Attested::Official));
  CHECK(s.padding_depth->value.inches() == doctest::Approx(2.25));
  CHECK(s.padding_height->value.inches() == doctest::Approx(4.5));
  CHECK(s.extension_most->value.inches() == doctest::Approx(4.0));
  CHECK(s.hard_parts_past_frame->value.inches() == doctest::Approx(1.25));
  CHECK(s.hard_parts_under_padding->value.inches() == doctest::Approx(2.0));
  CHECK(s.zone_filled->value.from.inches() == doctest::Approx(2.5));
  CHECK(s.zone_filled->value.to.inches() == doctest::Approx(5.75));
  CHECK(s.weight_machine->value.pounds() == doctest::Approx(135));
  CHECK(s.numerals_height->value.inches() == doctest::Approx(3.75));
  CHECK(stands(s.numerals_height, "R412", Attested::Official));
  CHECK(s.numerals_corner->value.degrees() == doctest::Approx(135));
  CHECK(s.numerals_places->value == 3);
  CHECK(s.numerals_read_from->value.inches() == doctest::Approx(720));
  CHECK(s.numerals_spacing->guideline);
  CHECK_FALSE(s.padding_hollow->value);
  CHECK_FALSE(s.backing_nominal_thickness);  // no thickness is named
  CHECK_FALSE(s.support_end_backed);         // no rule on support
}

TEST_CASE("2025 differs where it is known to") {  // manual of 2025, section 8.4; changes for 2026
  const Season s = season("2025");
  CHECK_FALSE(s.cover_larger_gap);
  CHECK_FALSE(s.numerals_places);
  CHECK(s.padding_hollow->value);
  CHECK(stands(s.padding_hollow, "R402-A", Attested::Official));
  CHECK(stands(s.cover_gap, "R401", Attested::Quoted));
  CHECK(stands(s.numerals_height, "R412", Attested::Inferred));
}

TEST_CASE("2023 and 2020 as their manuals have them") {  // 2023: section 9; 2020: section 9.5
  const Season later = season("2023"), earlier = season("2020");
  for (const Season& s : {later, earlier}) {
    CHECK(s.cover_reach->value.inches() == doctest::Approx(6));
    CHECK(s.numerals_height->value.inches() == doctest::Approx(4));
    CHECK(s.numerals_corner->value.degrees() == doctest::Approx(160));
    CHECK(s.weight_set->value.grams == doctest::Approx(6803.8855));  // 15 international pounds
    CHECK_FALSE(s.cover_gap);
    CHECK_FALSE(s.general_grace);
  }
  CHECK_FALSE(later.numerals_white_outline);
  CHECK(earlier.numerals_white_outline->value.inches() == doctest::Approx(0.0625));
  CHECK(stands(later.zone_inside, "R402", Attested::Quoted));
  CHECK(stands(earlier.zone_inside, "R18", Attested::Official));
}

TEST_CASE("a season that was not read is unverified throughout") {
  for (const char* name : {"2022", "2021", "2019"}) {
    for (const SeasonEntry& entry : entries(season(name))) {
      CAPTURE(entry.key);
      CHECK(entry.attested == Attested::Unverified);
    }
  }
}

TEST_CASE("an unknown season names those that are known") {
  const auto read = bundled_season("1926");
  REQUIRE_FALSE(read);
  CHECK(read.error().front().why == Why::UnknownName);
  CHECK(read.error().front().sentence.find("2026, 2025") != std::string::npos);
}

TEST_CASE("entries say a value in words") {
  const auto list = entries(season("2026"));
  const auto height = std::ranges::find(list, "numerals.height", &SeasonEntry::key);
  REQUIRE(height != list.end());
  CHECK(height->value == "3 3/4 in");
  CHECK(height->rule == "R412");
  const auto zone = std::ranges::find(list, "zone.filled", &SeasonEntry::key);
  REQUIRE(zone != list.end());
  CHECK(zone->value == "2 1/2 in to 5 3/4 in");
}

TEST_CASE("every fault of a rule file is told with its place") {
  const auto faults = faults_of(
      "[numerals]\n"
      "hight = { value = \"4 in\", rule = \"1\", attested = \"official\" }\n"
      "height = { value = \"4\", rule = \"1\", attested = \"official\" }\n"
      "stroke = { value = 4, rule = \"1\", attested = \"official\" }\n"
      "white = { value = true, attested = \"sure\" }\n"
      "[numbers]\n");
  REQUIRE(faults.size() == 7);
  CHECK(faults.front().why == Why::Missing);  // season
  REQUIRE(fault_at(faults, 2, 1));
  CHECK(fault_at(faults, 2, 1)->why == Why::UnknownKey);
  CHECK(fault_at(faults, 2, 1)->sentence.find("numerals.height") != std::string::npos);
  REQUIRE(fault_at(faults, 3, 20));
  CHECK(fault_at(faults, 3, 20)->why == Why::OutOfRange);  // 4 of what?
  REQUIRE(fault_at(faults, 4, 20));
  CHECK(fault_at(faults, 4, 20)->why == Why::WrongType);
  REQUIRE(fault_at(faults, 5, 9));
  CHECK(fault_at(faults, 5, 9)->why == Why::Missing);  // rule
  REQUIRE(fault_at(faults, 5, 36));
  CHECK(fault_at(faults, 5, 36)->why == Why::OutOfRange);
  REQUIRE(fault_at(faults, 6, 2));
  CHECK(fault_at(faults, 6, 2)->sentence.find("\"numerals\"") != std::string::npos);
}

TEST_CASE("every fault of a rule file says what was found and what was expected") {
  const auto told = [](const std::string& value) {
    const Refusals faults = faults_of("season = \"own\"\n" + value + "\n");
    REQUIRE(faults.size() == 1);
    return faults[0].sentence;
  };
  const auto entry = [](const std::string& value) {
    return " = { value = " + value + ", rule = \"1\", attested = \"quoted\" }";
  };
  CHECK(told("cloth = 1") == "cloth is 1, expected the table [cloth]");
  CHECK(told("[cloth]\nplain = true") ==
        "cloth.plain is true, expected { value = ..., rule = \"...\", attested = \"...\" }");
  CHECK(told("[cloth]\nplain = { value = true, rule = \"1\" }") ==
        "cloth.plain.attested is missing, expected value, rule and attested");
  CHECK(told("[cloth]\nplain" + entry("1")) == "cloth.plain.value is 1, expected true or false");
  CHECK(told("[cloth]\nsets" + entry("\"red\"")) ==
        "cloth.sets.value is \"red\", expected a list of names, like [\"red\", \"blue\"]");
  CHECK(told("[numerals]\nplaces" + entry("\"3\"")) ==
        "numerals.places.value is \"3\", expected a whole number, 1 to 1000");
  CHECK(told("[numerals]\nheight" + entry("4")) == "numerals.height.value is 4, expected a string");
  CHECK(told("[zone]\nfilled" + entry("\"4 in\"")) ==
        "zone.filled.value is \"4 in\", expected a pair of heights, like [\"0 in\", \"7 1/2 in\"]");
  CHECK(told("[zone]\nfilled" + entry("[\"4 in\", \"2 in\"]")) ==
        "zone.filled.value goes from 4 in to 2 in, expected the lower height first");
  const Refusals none = faults_of("");
  REQUIRE(none.size() == 1);
  CHECK(none[0].sentence == "season is missing, expected the season's name, like \"2026\"");
}

TEST_CASE("any bytes are read, or refused with a place") {
  const std::string whole(bundled_season_text("2026"));
  REQUIRE(whole.size() > 1000);
  for (std::size_t cut = 0; cut < whole.size(); cut += 7) {
    std::string spoiled = whole;
    spoiled[cut] = static_cast<char>(cut * 37 % 256);
    for (const std::string& text : {whole.substr(0, cut), spoiled}) {
      for (const Refusal& fault : faults_of(text)) {
        CHECK(fault.place.file == "own.toml");
        CHECK(fault.place.line >= 1);
        CHECK_FALSE(fault.sentence.empty());
      }
    }
  }
}

TEST_CASE("text that is not TOML is refused alone, with its place") {
  const auto faults = faults_of("season = \"own\"\nx = = 1\n");
  REQUIRE(faults.size() == 1);
  CHECK(faults[0].why == Why::Malformed);
  CHECK(faults[0].place.line == 2);
}

TEST_CASE("lengths in a rule file need their unit, but zero does not") {
  const auto with = [](std::string value) {
    return faults_of("season = \"own\"\n[zone]\ninside = { value = " + value +
                     ", rule = \"1\", attested = \"quoted\" }\n");
  };
  CHECK(with("[\"0\", \"190 mm\"]").empty());
  CHECK(with("[\"0 in\", \"7.5\"]").size() == 1);
  CHECK(with("[\"7 in\", \"1 in\"]").size() == 1);
  CHECK(with("[\"7 in\"]").size() == 1);
  CHECK(with("[\"-1 in\", \"1 in\"]").size() == 1);
}

TEST_CASE("a rule file too long, too deep or with names too long is refused where it is") {
  const std::string head = "season = \"own\"\n";
  const auto only = [](const std::string& text, Why why, int line, int column) {
    const Refusals faults = faults_of(text);
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].why == why);
    CHECK(faults[0].place.line == line);
    CHECK(faults[0].place.column == column);
    return faults[0].sentence;
  };
  CHECK(only(std::string((1 << 18) + 1, '#'), Why::TooLarge, 1, 1) ==
        "the rule file is 262145 bytes long, expected at most 262144");
  std::string dots = "a";
  for (int i = 0; i < 100000; ++i) dots += ".a";
  CHECK(only(head + dots + " = 1\n", Why::TooLarge, 2, 1).find("200 dots") != std::string::npos);
  const std::string name(25, 'n');
  CHECK(only("season = \"" + name + "\"\n", Why::OutOfRange, 1, 10).find("1 to 24") !=
        std::string::npos);
  only(head + "section = \"" + name + "\"\n", Why::OutOfRange, 2, 11);
  const auto value = [&](const std::string& words) {
    return head + "[cloth]\nsets = { value = " + words +
           ", rule = \"1\", attested = \"quoted\" }\n";
  };
  CHECK(only(value("[\"1\",\"2\",\"3\",\"4\",\"5\",\"6\",\"7\",\"8\",\"9\"]"), Why::TooLarge, 3,
             18) == "cloth.sets.value is a list of 9, expected at most 8");
  only(value("[\"" + name + "\"]"), Why::OutOfRange, 3, 19);
  CHECK(only(value("[\"red\\u0007\"]"), Why::OutOfRange, 3, 23).find("U+0007") !=
        std::string::npos);
  CHECK(only("season = \"o\u200bwn\"\n", Why::OutOfRange, 1, 12).find("U+200B") !=
        std::string::npos);
  only(head + "[cloth]\nfaces = { value = true, rule = \"" + name + "\", attested = \"quoted\" }\n",
       Why::OutOfRange, 3, 32);
}

TEST_CASE("a column of a rule file counts bytes") {
  const Refusals faults = faults_of("season = \"\xc3\xbc\"\nx = { \"\xc3\xbc\" = 1, y = = 2 }\n");
  REQUIRE(faults.size() == 1);
  CHECK(faults[0].place.line == 2);
  CHECK(faults[0].place.column == 21);  // the twentieth character
}

}  // namespace swathe
