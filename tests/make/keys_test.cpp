#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <string>
#include <vector>

#include "support/examples.hpp"
#include "support/label_font.hpp"
#include "support/made.hpp"
#include "support/made_examples.hpp"
#include "swathe/job.hpp"
#include "swathe/write.hpp"

// What each key of the job file changes, and in which jobs it changes nothing and is told to.
namespace swathe {
namespace {

using Keys = std::map<std::string, std::string>;  // "cloth.flap" to its value; "" takes it away

constexpr const char* kBumperB =
    "[[bumper]]\nname = \"B\"\nfrom = [\"back\", \"50%\"]\nto = [\"front\", \"50%\"]\n";

/// A job with one bumper round half a frame, these keys changed, and more text below.
std::string job_of(const Keys& changed, const std::string& below = "") {
  Keys keys = {{"job.title", "\"Covers\""},
               {"job.number", "\"20486\""},
               {"frame.width", "\"28 in\""},
               {"frame.depth", "\"30 in\""},
               {"bumper.name", "\"A\""},
               {"bumper.from", "[\"front\", \"50%\"]"},
               {"bumper.to", "[\"back\", \"50%\"]"}};
  for (const auto& [key, value] : changed) keys[key] = value;
  std::map<std::string, std::string> tables;
  for (const auto& [key, value] : keys) {
    if (value.empty()) continue;
    const auto dot = key.rfind('.');
    tables[key.substr(0, dot)] += key.substr(dot + 1) + " = " + value + "\n";
  }
  std::string text;
  for (const auto& [table, lines] : tables) {
    const bool list = table == "opening" || table == "bumper" || table == "bracket" ||
                      table == "numerals.place" || table == "sight.blind";
    text += (list ? "[[" + table + "]]\n" : "[" + table + "]\n") + lines;
  }
  return text + below;
}

Keys with(Keys keys, const Keys& more) {
  for (const auto& [key, value] : more) keys[key] = value;
  return keys;
}

/// A job that is refused makes that of it.
std::string refusal_of(const Outcome<Made>& made) {
  std::string lines;
  for (const Refusal& fault : made.error()) lines += fault.sentence + "\n";
  return lines;
}

/// The report, or why there is none.
std::string report_of(const Outcome<Made>& made) {
  return made ? report_json(*made, {}) : refusal_of(made);
}

/// Every line and word on every sheet.
std::string sheets_of(const Outcome<Made>& made) {
  if (!made) return refusal_of(made);
  const Font labels = test::label_font();
  std::string all;
  for (const Sheet& sheet : all_sheets(*made, labels))
    for (const Page& page : sheet.pages) all += to_svg(page, sheet.title, labels);
  return all;
}

bool same_output(const std::string& one, const std::string& other) {
  const Outcome<Made> a = test::make_text(one), b = test::make_text(other);
  return report_of(a) == report_of(b) && sheets_of(a) == sheets_of(b);
}

/// A key, two values that make a difference, and the job in which they do.
struct Case {
  std::string key, one, other;
  Keys beside = {};
  std::string below = "";
};

std::vector<Case> cases() {
  const Keys polygon = {{"frame.width", ""},
                        {"frame.depth", ""},
                        {"frame.corners", "[[28, 30], [0, 30], [0, 0], [28, 0]]"},
                        {"frame.sides", "[\"front\", \"left\", \"back\", \"right\"]"}};
  const Keys block = {{"padding.form", "\"block\""}};
  const Keys mitred = {{"padding.corner", "\"mitred\""}, {"boards.joint", "\"mitred\""}};
  const Keys sewn = with(mitred, {{"cloth.relief", "\"sewn\""}});
  const Keys pieced = {{"cloth.may_join", "true"}, {"cloth.longest_piece", "\"40 in\""}};
  const Keys comes_off = {{"cloth.fixing", "\"hook-and-loop\""}};
  const Keys bracket = {{"bracket.side", "\"left\""},
                        {"bracket.at", "[\"11 in\", \"front\"]"},
                        {"bracket.width", "\"2 in\""},
                        {"bracket.height", "\"2 in\""}};
  const Keys window = with(bracket, {{"bracket.cloth", "\"window\""}});
  const Keys place = {{"numerals.place.side", "\"left\""}};
  const Keys opening = {{"opening.side", "\"front\""},
                        {"opening.width", "\"9 in\""},
                        {"bumper.from", "[\"front\", \"opening\"]"},
                        {"bumper.to", "[\"front\", \"opening\"]"}};
  const Keys slanted =
      with(mitred, {{"job.number", ""},
                    {"frame.width", ""},
                    {"frame.depth", ""},
                    {"frame.corners",
                     "[[8, 13.856], [-8, 13.856], [-16, 0], [-8, -13.856], [8, -13.856], [16, 0]]"},
                    {"frame.sides", "[\"s0\", \"s1\", \"s2\", \"s3\", \"s4\", \"s5\"]"},
                    {"bumper.from", "[\"s0\", \"corner\"]"},
                    {"bumper.to", "[\"s0\", \"70%\"]"},
                    {"cloth.roll_width", "\"22 in\""},
                    {"cloth.may_lie_across", "true"}});
  return {
      {"job.title", "\"Covers\"", "\"More covers\""},
      {"job.number", "\"20486\"", "\"1\""},
      {"job.season", "\"2026\"", "\"2019\""},
      {"job.units", "\"in\"", "\"mm\""},
      {"frame.width", "\"28 in\"", "\"27 in\""},
      {"frame.depth", "\"30 in\"", "\"29 in\""},
      {"frame.corners", "[[28, 30], [0, 30], [0, 0], [28, 0]]",
       "[[28, 30], [0, 30], [0, 0], [28, 1]]", polygon},
      {"frame.sides", "[\"front\", \"left\", \"back\", \"right\"]",
       "[\"front\", \"port\", \"back\", \"right\"]", polygon},
      {"frame.fit", "\"1/16 in\"", "\"1/8 in\""},
      {"frame.floor_gap", "\"2 in\"", "\"3 in\""},
      {"frame.backed", "true", "false", {{"job.season", "\"2024\""}}},
      {"boards.thickness", "\"3/4 in\"", "\"1/2 in\""},
      {"boards.height", "\"5 in\"", "\"4.5 in\""},
      {"boards.joint", "\"lapped\"", "\"mitred\""},
      {"boards.lapping", "[\"front\", \"back\"]", "[\"left\"]"},
      {"boards.stock", "[\"48 in\", \"96 in\"]", "[\"24 in\", \"48 in\"]"},
      {"boards.kerf", "\"1/8 in\"", "\"1/4 in\""},
      {"boards.hard_depth", "\"1/4 in\"", "\"1/2 in\""},
      {"boards.density", "600", "700"},
      {"padding.form", "\"noodles\"", "\"block\""},
      {"padding.diameter", "\"2.5 in\"", "\"2.25 in\""},
      {"padding.stack", "2", "1"},
      {"padding.core", "\"solid\"", "\"hollow\""},
      {"padding.depth", "\"2.5 in\"", "\"2 in\"", block},
      {"padding.height", "\"5 in\"", "\"4.5 in\"", block},
      {"padding.edge_radius", "\"1/2 in\"", "\"1/4 in\"", block},
      {"padding.corner", "\"butted\"", "\"mitred\""},
      {"padding.filled", "true", "false"},
      {"padding.lapping", "[\"front\", \"back\"]", "[\"left\"]"},
      {"padding.stock", "\"60 in\"", "\"48 in\""},
      {"padding.density", "30", "40"},
      {"cloth.thickness", "\"0.5 mm\"", "\"1 mm\""},
      {"cloth.roll_width", "\"58 in\"", "\"50 in\""},
      {"cloth.buy_step", "\"1/4 yd\"", "\"1 yd\""},
      {"cloth.shop_cut", "\"0 in\"", "\"2 in\""},
      {"cloth.colors", "{ red = \"#b5121b\" }", "{ blue = \"#1b3a93\" }"},
      {"cloth.flap", "\"2 in\"", "\"2.25 in\""},
      {"cloth.staple_line", "\"1 in\"", "\"3/4 in\""},
      {"cloth.staple_spacing", "\"1 1/2 in\"", "\"1 in\""},
      {"cloth.stretch_along", "0", "0.02"},
      {"cloth.stretch_around", "0", "0.02"},
      {"cloth.relief", "\"fold\"", "\"sewn\"", mitred},
      {"cloth.setback", "\"1/8 in\"", "\"1/4 in\""},
      {"cloth.cut_clear", "\"1/4 in\"", "\"3/8 in\""},
      {"cloth.seam", "\"1/2 in\"", "\"3/8 in\"", sewn},
      {"cloth.seam", "\"1/2 in\"", "\"3/8 in\"", pieced},
      {"cloth.end_reach", "\"2 in\"", "\"1.5 in\""},
      {"cloth.may_join", "true", "false", pieced},
      {"cloth.longest_piece", "\"40 in\"", "\"60 in\"", pieced},
      {"cloth.may_lie_across", "false", "true", {{"cloth.roll_width", "\"150 in\""}}},
      // Each of these covers has one slanted end and one square one: two of them lie closer where
      // one is turned half round.
      {"cloth.one_way", "false", "true", slanted,
       "[[bumper]]\nname = \"B\"\nfrom = [\"s1\", \"corner\"]\nto = [\"s1\", \"70%\"]\n"},
      {"cloth.density", "0.35", "0.5"},
      {"cloth.staple_mass", "0.17", "0.3"},
      {"cloth.fixing", "\"staples\"", "\"hook-and-loop\""},
      {"cloth.hook_and_loop.flap", "\"2 1/4 in\"", "\"2 in\"", comes_off},
      {"cloth.hook_and_loop.hem", "\"1/2 in\"", "\"5/8 in\"", comes_off},
      {"cloth.hook_and_loop.strip", "\"1 in\"", "\"3/4 in\"", comes_off},
      {"cloth.hook_and_loop.stretch", "0.01", "0.02", comes_off},
      {"cloth.hook_and_loop.density", "0.7", "0.8", comes_off},
      {"bumper.name", "\"A\"", "\"C\""},
      {"bumper.from", "[\"front\", \"50%\"]", "[\"front\", \"55%\"]"},
      {"bumper.to", "[\"back\", \"50%\"]", "[\"back\", \"45%\"]"},
      {"bumper.end_clearance", "\"1/4 in\"", "\"1/2 in\""},
      {"opening.side",
       "\"front\"",
       "\"left\"",
       {{"opening.width", "\"9 in\""},
        {"bumper.from", "[\"front\", \"opening\"]"},
        {"bumper.to", "[\"front\", \"opening\"]"}}},
      {"opening.width", "\"9 in\"", "\"10 in\"", opening},
      {"opening.center", "\"50%\"", "[\"13 in\", \"left\"]", opening},
      // It is on A's board: to name B refuses it.
      {"bracket.bumper", "\"A\"", "\"B\"",
       with(bracket, {{"bracket.side", "\"back\""}, {"bracket.at", "[\"4 in\", \"left\"]"}}),
       kBumperB},
      {"bracket.side", "\"left\"", "\"front\"", with(bracket, {{"bracket.at", "\"75%\""}})},
      {"bracket.at", "[\"11 in\", \"front\"]", "[\"11 in\", \"back\"]", bracket},
      {"bracket.at", "[\"11 in\", \"front\"]", "\"50%\"", bracket},
      {"bracket.holes_from", "\"front\"", "\"back\"",
       with(bracket, {{"bracket.at", "\"50%\""}, {"bracket.holes", "[[\"1/2 in\", \"1 in\"]]"}})},
      {"bracket.width", "\"2 in\"", "\"3 in\"", bracket},
      {"bracket.height", "\"2 in\"", "\"1.5 in\"", bracket},
      {"bracket.down", "\"0 in\"", "\"1/2 in\"", bracket},
      {"bracket.holes", "[[\"1 in\", \"1 in\"]]", "[[\"1 in\", \"1/2 in\"]]", bracket},
      {"bracket.cloth", "\"under\"", "\"window\"", bracket},
      {"bracket.clearance", "\"1/4 in\"", "\"1/2 in\"", bracket},
      {"bracket.corner_radius", "\"1/4 in\"", "\"1/8 in\"", window},
      {"bracket.mass", "100", "200", bracket},
      {"numerals.font", "\"Anton\"", "\"Saira\""},
      {"numerals.axes", "{ wght = 900 }", "{ wght = 800 }", {{"numerals.font", "\"Saira\""}}},
      {"numerals.height", "\"4 in\"", "\"3.9 in\""},
      {"numerals.sides", "[\"left\"]", "[\"left\", \"back\"]"},
      {"numerals.spacing", "\"font\"", "\"1/4 in\""},
      {"numerals.method", "\"stencil\"", "\"iron-on\""},
      {"numerals.stencil_for", "\"digit\"", "\"number\""},
      {"numerals.color", "\"#ffffff\"", "\"#ffff00\""},
      {"numerals.outline", "\"0 in\"", "\"1/8 in\"", {{"numerals.spacing", "\"1/4 in\""}}},
      {"numerals.make_legal",
       "false",
       "true",
       {{"numerals.font", "\"Saira\""}, {"numerals.axes", "{ wght = 300 }"}}},
      {"numerals.bridge", "\"1/4 in\"", "\"3/16 in\""},
      {"numerals.spares", "0", "1"},
      {"numerals.place.bumper",
       "\"A\"",
       "\"B\"",
       {{"job.number", "\"7\""}, {"numerals.place.side", "\"front\""}},
       kBumperB},
      {"numerals.place.side", "\"left\"", "\"back\"", with(place, {{"job.number", "\"7\""}})},
      {"numerals.place.center", "[\"13 in\", \"front\"]", "[\"13 in\", \"back\"]", place},
      {"numerals.place.center", "[\"13 in\", \"front\"]", "\"50%\"", place},
      {"numerals.place.split", "2", "3", with(place, {{"numerals.place.side", "\"back\""}}),
       kBumperB},
      {"sight.distance", "[\"20 ft\"]", "[\"30 ft\"]"},
      {"sight.eye_height", "[\"4 ft\"]", "[\"5 ft\"]"},
      // So far off, nobody between front and left reads either.
      {"sight.step", "\"1 deg\"", "\"30 deg\"", {{"sight.distance", "[\"67 ft\"]"}}, kBumperB},
      {"sight.least_angle", "\"15 arcmin\"", "\"30 arcmin\""},
      {"sight.blind.box", "[[0, 0, 0], [4, 6, 10]]", "[[-9, 0, 0], [4, 30, 30]]"},
      {"paper.sheet", "\"letter\"", "\"a4\""},
      {"paper.width", "\"36 in\"", "\"24 in\"", {{"paper.sheet", "\"roll\""}}},
      {"paper.margin", "\"1/2 in\"", "\"3/4 in\""},
      {"paper.overlap", "\"1/2 in\"", "\"3/4 in\""},
      {"paper.face", "\"inside\"", "\"outside\""},
      {"paper.measured", "[\"99.2 mm\", \"100.4 mm\"]", "[\"99 mm\", \"100.4 mm\"]"},
  };
}

/// A key that changes nothing in this job, whichever of two values it has.
std::vector<Case> vain_cases() {
  const Keys block = {{"padding.form", "\"block\""}};
  const Keys mitred = {{"padding.corner", "\"mitred\""}, {"boards.joint", "\"mitred\""}};
  const Keys comes_off = {{"cloth.fixing", "\"hook-and-loop\""}};
  const Keys straight = {{"bumper.from", "[\"left\", \"5%\"]"},
                         {"bumper.to", "[\"left\", \"95%\"]"}};
  const Keys bracket = {{"bracket.side", "\"left\""},
                        {"bracket.at", "[\"11 in\", \"front\"]"},
                        {"bracket.width", "\"2 in\""},
                        {"bracket.height", "\"2 in\""}};
  const Keys window = with(bracket, {{"bracket.cloth", "\"window\""}});
  const Keys sewn_on = {{"numerals.method", "\"sew-on\""}};
  const Keys ironed_on = {{"numerals.method", "\"iron-on\""}};
  const Keys no_rules = {{"job.season", "\"none\""}};
  return {
      {"padding.depth", "\"2.5 in\"", "\"2 in\""},
      {"padding.height", "\"5 in\"", "\"4 in\""},
      {"padding.edge_radius", "\"1/2 in\"", "\"1/4 in\""},
      {"padding.diameter", "\"2.5 in\"", "\"2 in\"", block},
      {"padding.stack", "2", "1", block},
      {"padding.core", "\"solid\"", "\"hollow\"", block},
      {"padding.core", "\"solid\"", "\"hollow\"", no_rules},
      {"boards.lapping", "[\"front\", \"back\"]", "[\"left\"]", mitred},
      {"padding.lapping", "[\"front\", \"back\"]", "[\"left\"]", mitred},
      {"padding.filled", "true", "false", mitred},
      {"padding.filled", "true", "false", block},
      {"padding.filled", "true", "false", straight},
      {"boards.lapping", "[\"front\", \"back\"]", "[\"left\"]", {{"boards.joint", "\"mitred\""}}},
      {"boards.joint", "\"lapped\"", "\"mitred\"", straight},
      {"boards.lapping", "[\"front\", \"back\"]", "[\"left\"]", straight},
      {"padding.lapping", "[\"front\", \"back\"]", "[\"left\"]", straight},
      {"cloth.relief", "\"fold\"", "\"sewn\"", with(straight, {{"padding.corner", "\"mitred\""}})},
      {"cloth.setback", "\"1/8 in\"", "\"1/4 in\"", straight},
      {"cloth.cut_clear", "\"1/4 in\"", "\"3/8 in\"", straight},
      {"cloth.seam", "\"1/2 in\"", "\"3/8 in\""},
      {"cloth.may_join", "true", "false"},
      {"cloth.flap", "\"2 in\"", "\"1.75 in\"", comes_off},
      {"cloth.staple_line", "\"1 in\"", "\"3/4 in\"", comes_off},
      {"cloth.staple_spacing", "\"1 1/2 in\"", "\"1 in\"", comes_off},
      {"cloth.staple_mass", "0.17", "0.3", comes_off},
      {"cloth.stretch_around", "0", "0.02", comes_off},
      {"cloth.hook_and_loop.flap", "\"2 1/4 in\"", "\"2 in\""},
      {"cloth.hook_and_loop.hem", "\"1/2 in\"", "\"5/8 in\""},
      {"cloth.hook_and_loop.strip", "\"1 in\"", "\"3/4 in\""},
      {"cloth.hook_and_loop.stretch", "0.01", "0.02"},
      {"cloth.hook_and_loop.density", "0.7", "0.8"},
      {"bracket.corner_radius", "\"1/4 in\"", "\"1/8 in\"", bracket},
      {"bracket.holes", "[[\"1 in\", \"1 in\"]]", "[[\"1 in\", \"1/2 in\"]]", window},
      {"bumper.end_clearance",
       "\"1/4 in\"",
       "\"1/2 in\"",
       {{"opening.side", "\"front\""},
        {"opening.width", "\"9 in\""},
        {"bumper.from", "[\"front\", \"opening\"]"},
        {"bumper.to", "[\"front\", \"opening\"]"}}},
      {"opening.width",
       "\"9 in\"",
       "\"10 in\"",
       {{"opening.side", "\"right\""}, {"opening.center", "\"40%\""}}},
      {"numerals.bridge", "\"1/4 in\"", "\"3/16 in\"", sewn_on},
      {"numerals.bridge", "\"1/4 in\"", "\"3/16 in\"", ironed_on},
      {"numerals.bridge", "\"1/4 in\"", "\"3/16 in\"", {{"job.number", "\"1\""}}},
      {"numerals.stencil_for", "\"digit\"", "\"number\"", sewn_on},
      {"numerals.stencil_for", "\"digit\"", "\"number\"", {{"numerals.method", "\"paint-mask\""}}},
      {"numerals.make_legal", "true", "false", no_rules},
      {"frame.backed", "true", "false", no_rules},
      {"boards.hard_depth", "\"1/4 in\"", "\"1/2 in\"", no_rules},
  };
}

bool about_the_number(const std::string& key) {
  return key.starts_with("numerals.") || key.starts_with("sight.");
}

std::string text_of(const Case& one, const std::string& value) {
  return job_of(with(one.beside, {{one.key, value}}), one.below);
}

int line_of(const std::string& text, const std::string& key) {
  const std::string name = "\n" + key.substr(key.rfind('.') + 1) + " = ";
  const auto table = text.find("[" + key.substr(0, key.rfind('.')) + "]");
  const auto at = text.find(name, table);
  REQUIRE(at != std::string::npos);
  return static_cast<int>(
             std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at) + 1, '\n')) +
         1;
}

}  // namespace

TEST_CASE("keys: every key of the job file has a case here") {
  const std::vector<Case> all = cases();
  for (const KeyWords& words : key_words()) {
    CAPTURE(words.key);
    CHECK(std::ranges::find(all, words.key, &Case::key) != all.end());
  }
}

TEST_CASE("keys in vain (1): every key changes an output, and is then no notice") {
  for (const Case& one : cases()) {
    CAPTURE(one.key);
    const std::string a = text_of(one, one.one), b = text_of(one, one.other);
    CHECK_FALSE(same_output(a, b));
    for (const std::string& text : {a, b}) {
      const Outcome<Made> made = test::make_text(text);
      if (!made) {
        // Whether a seam is allowed shows only where one is wanted; the wrong bumper for a place,
        // and an opening that is not where a bumper ends, are refused. Nothing else here is.
        CHECK_MESSAGE((one.key == "cloth.may_join" || one.key == "bracket.bumper" ||
                       one.key == "opening.side"),
                      to_text(made.error().front()));
        continue;
      }
      for (const Notice& notice : made->notices) CHECK_MESSAGE(notice.key != one.key, text);
    }
  }
}

namespace {

/// The job's notice on this key, which stands on its line behind "KEY = ".
void check_notice(const std::string& text, const std::string& key) {
  CAPTURE(text);
  const Outcome<Made> made = test::make_text(text);
  REQUIRE_MESSAGE(made.has_value(), to_text(made.error().front()));
  const auto notice = std::ranges::find(made->notices, key, &Notice::key);
  REQUIRE(notice != made->notices.end());
  CHECK(notice->sentence.starts_with("has no effect: " + key + ", "));
  CHECK(notice->place.file == "job.toml");
  CHECK(notice->place.line == line_of(text, key));
  const std::string name = key.substr(key.rfind('.') + 1) + " = ";
  CHECK(notice->place.column == static_cast<int>(name.size()) + 1);
}

}  // namespace

TEST_CASE("keys in vain (2): what a notice tells of changes nothing; the notice has its place") {
  for (const Case& one : vain_cases()) {
    CAPTURE(one.key);
    const std::string text = text_of(one, one.one);
    check_notice(text, one.key);
    CHECK(same_output(text, text_of(one, one.other)));
  }
}

TEST_CASE("keys in vain: without a number all that is about it, a font that is nowhere too") {
  Keys ones, others, one_place, other_place;  // sides and places by hand exclude each other
  for (Case number : cases()) {
    if (!about_the_number(number.key)) continue;
    CAPTURE(number.key);
    if (number.key == "numerals.font") number.other = "\"no/such/font.ttf\"";
    number.beside["job.number"] = "";
    check_notice(text_of(number, number.other), number.key);
    if (number.key == "numerals.place.split") continue;  // beside a center it is a fault
    const bool place = number.key.starts_with("numerals.place.");
    (place ? one_place : ones)[number.key] = number.one;
    (place ? other_place : others)[number.key] = number.other;
  }
  one_place["numerals.place.bumper"] = other_place["numerals.place.bumper"] = "\"A\"";
  const Keys none = {{"job.number", ""}};
  const std::string without = job_of(none);
  for (const Keys& keys : {ones, others, one_place, other_place})
    CHECK(same_output(job_of(with(keys, none)), without));
}

TEST_CASE("keys in vain: the job to start from and the examples have none") {
  const Made fresh = test::made(new_job_text());
  for (const Notice& notice : fresh.notices) FAIL_CHECK(to_text(notice));
  for (const auto& path : test::example_jobs()) {
    const Made made = test::made_example(path);
    for (const Notice& notice : made.notices) FAIL_CHECK(to_text(notice));
  }
}

TEST_CASE("keys in vain are told by their places in the file") {
  const Made made = test::made(job_of({{"job.number", ""},
                                       {"padding.depth", "\"2 in\""},
                                       {"numerals.spares", "1"},
                                       {"cloth.hook_and_loop.hem", "\"1 in\""},
                                       {"cloth.seam", "\"1 in\""}}));
  REQUIRE(made.notices.size() == 4);
  CHECK(std::ranges::is_sorted(made.notices, {}, [](const Notice& n) { return n.place.line; }));
}

}  // namespace swathe
