#include <doctest/doctest.h>

#include "base/toml.hpp"
#include "swathe/job.hpp"

using namespace swathe;

namespace {

std::string set(const std::string& text, const std::string& key, const std::string& value) {
  CAPTURE(text);
  CAPTURE(key);
  const auto change = set_value(text, key, value);
  REQUIRE_MESSAGE(change.has_value(), change.error()[0].sentence);
  return change->text;
}

std::string without(const std::string& text, const std::string& key) {
  CAPTURE(text);
  CAPTURE(key);
  const auto change = remove_value(text, key);
  REQUIRE_MESSAGE(change.has_value(), change.error()[0].sentence);
  return change->text;
}

Refusal refusal(const Outcome<ValueChange>& change) {
  REQUIRE_FALSE(change.has_value());
  REQUIRE(change.error().size() == 1);
  return change.error()[0];
}

}  // namespace

TEST_CASE("set value: a value in its place, comments and spaces kept") {
  CHECK(set("[frame] # f\n  width  =  \"28 in\"   # w\ndepth=1\n", "frame.width", "27 in") ==
        "[frame] # f\n  width  =  \"27 in\"   # w\ndepth=1\n");
  CHECK(set("[frame]\r\nwidth = 1\r\n", "frame.width", "2") == "[frame]\r\nwidth = 2\r\n");
  CHECK(set("\xef\xbb\xbf[frame]\nwidth = 1", "frame.width", "2.5") ==
        "\xef\xbb\xbf[frame]\nwidth = 2.5");
  CHECK(set("\xef\xbb\xbf"
            "frame.width = 1",
            "frame.width", "2") ==
        "\xef\xbb\xbf"
        "frame.width = 2");
  CHECK(set("[job]\ntitle = \"\"\"a\n# = [frame]\n\"\"\"\"\"\n[frame]\nwidth = 1\n", "job.title",
            "T") == "[job]\ntitle = \"T\"\n[frame]\nwidth = 1\n");
  CHECK(set("[job]\ntitle = '''a\\''''' # c\n[frame]\nwidth = 1\n", "frame.width", "2") ==
        "[job]\ntitle = '''a\\''''' # c\n[frame]\nwidth = 2\n");
  CHECK(set("[sight]\ndistance = [ # far\n  \"20 ft\", # a ] b\n  '4\"' ]\nstep = 1\n",
            "sight.distance", "[\"30 ft\"]") == "[sight]\ndistance = [\"30 ft\"]\nstep = 1\n");
  CHECK(set("[sight]\ndistance = [ # far\n  \"20 ft\", # a ] b\n  '4\"' ]\nstep = 1\n",
            "sight.distance.2", "5 ft") ==
        "[sight]\ndistance = [ # far\n  \"20 ft\", # a ] b\n  \"5 ft\" ]\nstep = 1\n");
}

TEST_CASE("set value: however the file gives the table") {
  CHECK(set("frame.width = 1 # w\n[job]\n", "frame.width", "2") == "frame.width = 2 # w\n[job]\n");
  CHECK(set("frame = {width=1,depth = 2} # f\n", "frame.depth", "3") ==
        "frame = {width=1,depth = 3} # f\n");
  CHECK(set("\"frame\" . 'width' = 1\n", "frame.width", "2") == "\"frame\" . 'width' = 2\n");
  CHECK(set("[ \"frame\" ]\n\"wid\\u0074h\" = 1\n", "frame.width", "2") ==
        "[ \"frame\" ]\n\"wid\\u0074h\" = 2\n");
  CHECK(set("[[bumper]]\nname = \"A\"\n[[bumper]]\nname = \"B\"\n", "bumper.2.name", "C") ==
        "[[bumper]]\nname = \"A\"\n[[bumper]]\nname = \"C\"\n");
  CHECK(set("bumper = [{name = \"A\"}, # one\n {name = \"B\"}]\n", "bumper.2.name", "C") ==
        "bumper = [{name = \"A\"}, # one\n {name = \"C\"}]\n");
  CHECK(set("[cloth]\nhook_and_loop.flap = 1\n", "cloth.hook_and_loop.flap", "2") ==
        "[cloth]\nhook_and_loop.flap = 2\n");
  CHECK(set("[cloth.hook_and_loop]\nflap = 1\n[cloth]\nflap = 3\n", "cloth.hook_and_loop.flap",
            "2") == "[cloth.hook_and_loop]\nflap = 2\n[cloth]\nflap = 3\n");
  CHECK(set("[numerals]\nplace = [{side = \"left\"}, {side = \"back\"}]\n", "numerals.place.2.side",
            "right") == "[numerals]\nplace = [{side = \"left\"}, {side = \"right\"}]\n");
  CHECK(set("[cloth]\ncolors = { red = \"#ff0000\", \"dark red\" = \"#800000\" }\n",
            "cloth.colors.\"dark red\"",
            "#900000") == "[cloth]\ncolors = { red = \"#ff0000\", \"dark red\" = \"#900000\" }\n");
  CHECK(set("[cloth.colors]\nred = \"#ff0000\"\n", "cloth.colors.red", "#900000") ==
        "[cloth.colors]\nred = \"#900000\"\n");
}

TEST_CASE("set value: a key is found in either spelling, and stays as the file has it") {
  CHECK(set("[numerals]\ncolour = \"#fff\"\n", "numerals.color", "#000000") ==
        "[numerals]\ncolour = \"#000000\"\n");
  CHECK(set("[numerals]\ncolor = \"#fff\"\n", "numerals.colour", "#000000") ==
        "[numerals]\ncolor = \"#000000\"\n");
  const auto change = set_value("[[numerals.place]]\ncenter = 1\n", "numerals.place.1.centre", "2");
  REQUIRE(change.has_value());
  CHECK(change->key == "numerals.place.1.center");
  CHECK(set("[cloth.colors]\nred = \"#fff\"\n", "cloth.colours.blue", "#00f") ==
        "[cloth.colors]\nred = \"#fff\"\nblue = \"#00f\"\n");
}

TEST_CASE("set value: what a value is follows from its key") {
  const std::string text = "[job]\ntitle = \"\"\n";
  CHECK(set(text, "job.title", "Tin Heron") == "[job]\ntitle = \"Tin Heron\"\n");
  CHECK(set(text, "job.title", "true") == "[job]\ntitle = \"true\"\n");
  CHECK(set(text, "job.title", "[1]") == "[job]\ntitle = \"[1]\"\n");
  CHECK(set(text, "job.title", "'it'") == "[job]\ntitle = 'it'\n");
  CHECK(set(text, "job.title", "a \"b\" \\ # c") == "[job]\ntitle = \"a \\\"b\\\" \\\\ # c\"\n");
  CHECK(set(text, "job.title", "") == text);
  CHECK(set(text, "job.title", "a\nb = 1") == "[job]\ntitle = \"a\\u000ab = 1\"\n");
  CHECK(set(text, "job.number", "20486") == text + "number = \"20486\"\n");
  CHECK(set(text, "job.season", "2026") == text + "season = \"2026\"\n");
  CHECK(set(text, "frame.backed", "true") == text + "\n[frame]\nbacked = true\n");
  CHECK(set(text, "frame.width", "28 in") == text + "\n[frame]\nwidth = \"28 in\"\n");
  CHECK(set(text, "frame.width", "28") == text + "\n[frame]\nwidth = 28\n");
  CHECK(set(text, "frame.width", "28 # in") == text + "\n[frame]\nwidth = \"28 # in\"\n");
  CHECK(set(text, "frame.width", "1\nx = 2") == text + "\n[frame]\nwidth = \"1\\u000ax = 2\"\n");
  CHECK(set(text, "frame.width", "2026-01-01") == text + "\n[frame]\nwidth = \"2026-01-01\"\n");
  CHECK(set(text, "bumper.1.from", "[\"front\", \"50%\"]") ==
        text + "\n[[bumper]]\nfrom = [\"front\", \"50%\"]\n");
  CHECK(set(text, "numerals.axes", "{ wght = 900 }") ==
        text + "\n[numerals]\naxes = { wght = 900 }\n");
  CHECK(set(text, "numerals.axes.wght", "900") == text + "\n[numerals.axes]\nwght = 900\n");
  CHECK(refusal(set_value(text, "job.title", "\xff")).why == Why::Malformed);
}

TEST_CASE("set value: a key that is not there goes below the last of its table") {
  CHECK(set("[frame]\n  width = 1 # w\n\n# next\n[job]\n", "frame.depth", "2") ==
        "[frame]\n  width = 1 # w\n  depth = 2\n\n# next\n[job]\n");
  CHECK(set("[frame]\r\nwidth = 1", "frame.depth", "2") == "[frame]\r\nwidth = 1\r\ndepth = 2");
  CHECK(set("  [frame] # empty\n[job]\n", "frame.depth", "2") ==
        "  [frame] # empty\n  depth = 2\n[job]\n");
  CHECK(set("[frame]", "frame.depth", "2") == "[frame]\ndepth = 2");
  CHECK(set("frame = { width = 1 }\n", "frame.depth", "2") == "frame = { width = 1, depth = 2 }\n");
  CHECK(set("frame = {}\n", "frame.depth", "2") == "frame = { depth = 2 }\n");
  CHECK(set("frame.width = 1\nsight.step = 1\n[job]\n", "frame.depth", "2") ==
        "frame.width = 1\nframe.depth = 2\nsight.step = 1\n[job]\n");
  CHECK(set("[cloth]\nhook_and_loop.flap = 1\nflap = 2\n", "cloth.hook_and_loop.hem", "3") ==
        "[cloth]\nhook_and_loop.flap = 1\nhook_and_loop.hem = 3\nflap = 2\n");
  CHECK(set("numerals.font = \"x\"\n[job]\n", "numerals.place.1.side", "left") ==
        "numerals.font = \"x\"\nnumerals.place = [{ side = \"left\" }]\n[job]\n");
  CHECK(set("numerals = { font = \"x\" }\n", "numerals.axes.wght", "900") ==
        "numerals = { font = \"x\", axes.wght = 900 }\n");
  CHECK(set("[[bumper]]\nname = \"A\"\n\n[[bumper]]\nname = \"B\"\n", "bumper.1.end_clearance",
            "1") == "[[bumper]]\nname = \"A\"\nend_clearance = 1\n\n[[bumper]]\nname = \"B\"\n");
}

TEST_CASE("set value: a table that is not there goes where a new job has it") {
  CHECK(set("", "frame.width", "1") == "[frame]\nwidth = 1\n");
  CHECK(set("# mine", "frame.width", "1") == "# mine\n\n[frame]\nwidth = 1\n");
  CHECK(set("[job]\ntitle = \"a\"\n# not yet\n\n# Boards.\n[boards]\n", "frame.width", "1") ==
        "[job]\ntitle = \"a\"\n# not yet\n\n[frame]\nwidth = 1\n\n# Boards.\n[boards]\n");
  CHECK(set("[job]\ntitle = \"a\"\n# Boards.\n[boards]\n", "frame.width", "1") ==
        "[job]\ntitle = \"a\"\n\n[frame]\nwidth = 1\n\n# Boards.\n[boards]\n");
  CHECK(set("# mine\n\n# Frame.\n[frame]\nwidth = 1", "job.title", "a") ==
        "# mine\n\n[job]\ntitle = \"a\"\n\n# Frame.\n[frame]\nwidth = 1");
  CHECK(set("[frame]\r\nwidth = 1", "paper.sheet", "a4") ==
        "[frame]\r\nwidth = 1\r\n\r\n[paper]\r\nsheet = \"a4\"");
  CHECK(set("frame.width = 1\n[paper]\n", "job.title", "a") ==
        "frame.width = 1\n[job]\ntitle = \"a\"\n\n[paper]\n");
  CHECK(set("[cloth]\nflap = 1\n[paper]\n", "cloth.hook_and_loop.flap", "2") ==
        "[cloth]\nflap = 1\n\n[cloth.hook_and_loop]\nflap = 2\n\n[paper]\n");
  CHECK(set("[[numerals.place]]\nside = \"left\"\n[paper]\n", "numerals.font", "x") ==
        "[numerals]\nfont = \"x\"\n\n[[numerals.place]]\nside = \"left\"\n[paper]\n");
  CHECK(set("[[bumper]]\nname = \"A\"\n\n[paper]\n", "bumper.2.name", "B") ==
        "[[bumper]]\nname = \"A\"\n\n[[bumper]]\nname = \"B\"\n\n[paper]\n");
  CHECK(set("bumper = [{ name = \"A\" }]\n", "bumper.2.name", "B") ==
        "bumper = [{ name = \"A\" }, { name = \"B\" }]\n");
  CHECK(set("bumper = []\n", "bumper.1.name", "A") == "bumper = [{ name = \"A\" }]\n");
  CHECK(set("bumper = [\n  { name = \"A\" }, # one\n]\n", "bumper.2.name", "B") ==
        "bumper = [\n  { name = \"A\" }, # one\n  { name = \"B\" },\n]\n");
  CHECK(set("bumper = [\n  { name = \"A\" } # one, and only\n]\n", "bumper.2.name", "B") ==
        "bumper = [\n  { name = \"A\" }, # one, and only\n  { name = \"B\" }\n]\n");
}

TEST_CASE("set value: all keys of one more table at once") {
  CHECK(set("[[bumper]]\r\nname = \"A\"\r\n", "bumper.2",
            "{ name = \"B\", from = [\"front\", \"1 in\"] }") ==
        "[[bumper]]\r\nname = \"A\"\r\n\r\n[[bumper]]\r\nname = \"B\"\r\n"
        "from = [\"front\", \"1 in\"]\r\n");
  CHECK(set("", "sight.blind.1", "{ box = 1 }") == "[[sight.blind]]\nbox = 1\n");
  CHECK(set("bumper = [{}]\n", "bumper.2", "{ name = \"B\" }") ==
        "bumper = [{}, { name = \"B\" }]\n");
  CHECK(set("numerals.font = \"x\"\n", "numerals.place.1", "{ side = \"left\" }") ==
        "numerals.font = \"x\"\nnumerals.place = [{ side = \"left\" }]\n");
}

TEST_CASE("remove value: its line with its comment, or its part of an inline table") {
  CHECK(without("[frame]\n# w\nwidth = 1 # mm\ndepth = 2\n", "frame.width") ==
        "[frame]\n# w\ndepth = 2\n");
  CHECK(without("[frame]\r\nwidth = 1\r\ndepth = 2", "frame.depth") == "[frame]\r\nwidth = 1");
  CHECK(without("\xef\xbb\xbf"
                "frame.width = 1",
                "frame.width") == "\xef\xbb\xbf");
  CHECK(without("[sight]\ndistance = [\n1, # a\n2] # b\nstep = 1\n", "sight.distance") ==
        "[sight]\nstep = 1\n");
  CHECK(without("frame = { width = 1, depth = 2, fit = 3 }\n", "frame.width") ==
        "frame = { depth = 2, fit = 3 }\n");
  CHECK(without("frame = { width = 1, depth = 2, fit = 3 }\n", "frame.depth") ==
        "frame = { width = 1, fit = 3 }\n");
  CHECK(without("frame = { width = 1, depth = 2 }\n", "frame.depth") == "frame = { width = 1 }\n");
  CHECK(without("frame = { width = 1 }\n", "frame.width") == "frame = {}\n");
  CHECK(without("[[bumper]]\nname = \"A\"\n", "bumper.1.name") == "[[bumper]]\n");
}

TEST_CASE("set value: what cannot be set is refused, and says what could") {
  const std::string text =
      "[frame]\nwidth = 1\n[[bumper]]\nname = \"A\"\n[cloth]\ncolors = \"red\"\n"
      "[cloth.hook_and_loop]\nflap = 1\n";
  const auto check_refused = [&](const char* key, Why why, const char* word) {
    CAPTURE(key);
    const Refusal one = refusal(set_value(text, key, "1", "a.toml"));
    CAPTURE(one.sentence);
    CHECK(one.why == why);
    CHECK(one.sentence.find(word) != std::string::npos);
    CHECK(one.place.file == "a.toml");
  };
  check_refused("frame.widht", Why::UnknownKey, "nearest known one is frame.width");
  check_refused("bumper.3.form", Why::UnknownKey, "nearest known one is bumper.3.from");
  check_refused("", Why::UnknownKey, "nearest");
  check_refused("frame.width = 1 #", Why::UnknownKey, "nearest");
  check_refused("frame.width.1.x", Why::UnknownKey, "nearest");
  check_refused("frame", Why::WrongType, "like frame.width");
  check_refused("bumper", Why::WrongType, "like bumper.1.name");
  check_refused("bumper.2", Why::WrongType, "like bumper.2.name");
  CHECK(refusal(set_value(text, "bumper.1", "{}")).why == Why::WrongType);
  CHECK(refusal(set_value(text, "bumper.3", "{}")).why == Why::OutOfRange);
  check_refused("bumper.name", Why::WrongType, "like bumper.1.name");
  check_refused("bumper.0.name", Why::WrongType, "from 1 on");
  check_refused("bumper.3.name", Why::OutOfRange, "from 1 to 2");
  check_refused("cloth.colors.red", Why::WrongType, "expected a table");
  CHECK(refusal(set_value(text, "cloth.colors.red", "1", "a.toml")).place.line == 6);
  CHECK(refusal(set_value(text, "cloth.colors.red", "1", "a.toml")).place.column == 10);
  CHECK(refusal(set_value("[cloth.colors]\n", "cloth.colors", "{}")).why == Why::WrongType);
  CHECK(refusal(set_value("bumper = [{}]", "bumper.3.name", "A")).why == Why::OutOfRange);
  CHECK(refusal(set_value("[frame\n", "frame.width", "1")).why == Why::Malformed);
  CHECK(refusal(remove_value(text, "frame.depth")).why == Why::Missing);
  CHECK(refusal(remove_value(text, "paper.sheet")).why == Why::Missing);
  CHECK(refusal(remove_value("[sight]\ndistance = [1, 2]", "sight.distance.1")).why ==
        Why::WrongType);
}
