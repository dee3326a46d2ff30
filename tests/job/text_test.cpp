#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "job/least_job.hpp"
#include "support/drawn.hpp"
#include "swathe/job.hpp"

using namespace swathe;
using namespace swathe::test;

TEST_CASE("job: text that is no TOML is one fault, alone, at its place") {
  const Refusal twice = only_fault("[job]\ntitle = \"a\"\ntitle = \"b\"\nwrong = 1\n");
  CHECK(twice.why == Why::Malformed);
  CHECK(twice.place.line == 3);
  CHECK(only_fault("[job\n").why == Why::Malformed);
  for (const char* text : {"[.a]", "[\xc3\xa9]", "[[\xef\xbb\xb9]]", "a.=1", "a={=1}"})
    CHECK(only_fault(text).why == Why::Malformed);
  CHECK(only_fault("[job]\ntitle = \"\xff\"\n").place.line == 2);
  CHECK(only_fault(kLeast + "[sight]\nstep = 1e999\n").place.line == 15);
  CHECK(only_fault(kLeast + "[sight]\nstep = 99999999999999999999\n").place.line == 15);
  CHECK(only_fault(kLeast + "[[bumper]\n").place.line == 14);
  // The parser quotes what it read, line breaks and all; a fault is one line.
  CHECK(only_fault(kLeast + "[cloth]\nflap = n\n").sentence.find('\n') == std::string::npos);
}

TEST_CASE("job: nothing nests so deep, or is so long, that it breaks the reader") {
  std::string dots = "a";
  for (int i = 0; i < 200000; ++i) dots += ".a";
  CHECK(only_fault(kLeast + dots + " = 1\n").why == Why::TooLarge);
  CHECK(only_fault(kLeast + dots + " = 1\n").place.line == 14);
  CHECK(only_fault(fmt::format("a = {:[>200000}", "")).why == Why::Malformed);
  std::string tables;
  for (int i = 0; i < 100000; ++i) tables += "{a=";
  CHECK(only_fault(fmt::format("a = {}", tables)).why == Why::Malformed);
  CHECK(only_fault(std::string((1 << 20) + 1, '#')).why == Why::TooLarge);
  CHECK(read_job(kLeast + "#" + std::string(500, '.'), "job").faults.empty());
}

TEST_CASE("job: a column counts bytes") {
  const JobReading reading =
      read_job(kLeast + "[cloth]\ncolors = { \"gr\xc3\xbcn\" = \"#00ff00\", b = 1 }\n", "job");
  REQUIRE(reading.faults.size() == 1);
  CHECK(reading.faults[0].place.line == 15);
  CHECK(reading.faults[0].place.column == 37);
}

TEST_CASE("job: a byte order mark and Windows line ends are no fault") {
  std::string text;
  for (const char c : kLeast) text += c == '\n' ? std::string("\r\n") : std::string(1, c);
  CHECK(read_job(text.insert(0, "\xef\xbb\xbf"), "job").faults.empty());
}

TEST_CASE("job: any bytes are refused with a place, or read and written the same") {
  const std::string fresh(new_job_text());
  for_drawn_cases("job-bytes", 500, [&](auto& rng) {
    constexpr std::string_view kSpice[] = {
        "[", "]", "{", "\"", "=", "-", "9e9", "inf", "nan", "\n", "\xff", "\xef\xbb\xb9", "#", "0"};
    const auto below = [&](std::size_t n) { return static_cast<std::size_t>(rng() % n); };
    std::string text = fresh;
    for (std::size_t k = 1 + below(4); k > 0; --k) {
      const std::size_t at = below(text.size());
      const std::string spice(kSpice[below(std::size(kSpice))]);
      switch (below(4)) {
        case 0:
          text.replace(at, 1, spice);
          break;
        case 1:
          text.insert(at, spice);
          break;
        case 2:
          text.erase(at, 1 + below(30));
          break;
        default:
          text.insert(at, text.substr(below(text.size()), below(60)));
      }
    }
    const JobReading reading = read_job(text, "job");
    const auto lines = std::count(text.begin(), text.end(), '\n') + 1;
    for (const Refusal& fault : reading.faults) {
      CHECK(fault.place.line >= 1);
      CHECK(fault.place.line <= lines);
      CHECK(fault.place.column >= 1);
      CHECK(!fault.sentence.empty());
    }
    if (!reading.faults.empty()) return;
    const std::string written = job_text(reading.job);
    const JobReading again = read_job(written, "job");
    CAPTURE(written);
    REQUIRE_MESSAGE(again.faults.empty(), all_sentences(again));
    CHECK(job_text(again.job) == written);
  });
}

namespace {

/// The fault of the least job whose title is given in the file's own words.
Refusal fault_of_title(const std::string& words) {
  return only_fault(changed(kLeast, "\"Covers\"", words));
}

}  // namespace

TEST_CASE("job: a character that cannot be printed is told with its number, where it stands") {
  struct Case {
    const char *title, *code;
    int line, column;
  };
  for (const Case& one :
       {Case{"\"ab\u200bc\"", "U+200B", 2, 12},     // no width
        Case{"\"\u202ecba\"", "U+202E", 2, 10},     // turns the direction of writing
        Case{"\"a\ufffe\"", "U+FFFE", 2, 11},       // no character
        Case{"\"\ufdd0\"", "U+FDD0", 2, 10},        // no character
        Case{"\"\U0010ffff\"", "U+10FFFF", 2, 10},  // no character
        Case{"\"ü\u0085\"", "U+0085", 2, 12},       // a control of C1; columns are bytes
        Case{"\"ü\u00ad\"", "U+00AD", 2, 12},       // a soft hyphen
        Case{R"("ab\u200bc")", "U+200B", 2, 12},    // as an escape
        Case{R"("\\u200b\U0000200B")", "U+200B", 2, 17}, Case{R"("ab\nc")", "U+000A", 2, 12},
        Case{"'\\u200b\u200b'", "U+200B", 2, 16}, Case{"\"\"\"\nab\u2028c\"\"\"", "U+2028", 3, 3},
        Case{"\"\"\"\nab\nc\"\"\"", "U+000A", 3, 3}}) {
    const Refusal fault = fault_of_title(one.title);
    CAPTURE(fault.sentence);
    CHECK(fault.why == Why::OutOfRange);
    CHECK(fault.sentence.find(one.code) != std::string::npos);
    CHECK(fault.sentence.find("job.title") != std::string::npos);
    CHECK(fault.sentence.find("expected 1 to 120 printable characters") != std::string::npos);
    CHECK(fault.place.line == one.line);
    CHECK(fault.place.column == one.column);
  }
  check_only("[[bumper]]\nname = \"B\u2060\"\nfrom = [\"back\", \"1%\"]\nto = [\"back\", \"2%\"]\n",
             Why::OutOfRange, {15, 10}, "U+2060", "bumper.1");
  check_only("[cloth]\ncolors = { \"r\ufeffd\" = \"#00ff00\" }\n", Why::OutOfRange, {15, 14},
             "U+FEFF", "cloth");
  const Refusal side = only_fault(
      changed(kLeast, "width = \"28 in\"\ndepth = \"30 in\"\n",
              "corners = [[1,1],[0,1],[0,0]]\nsides = [\"front\", \"b\u200dack\", \"right\"]\n"));
  CHECK(side.sentence.find("U+200D") != std::string::npos);
  CHECK(side.place.line == 7);
  CHECK(side.place.column == 21);
}

TEST_CASE("job: the file's name may have any bytes; what is made of it is text") {
  const JobReading reading = read_job(kLeast, "dir/h\xe9ron\n\x1b.toml");
  CHECK(reading.job.source == "h\\xe9ron\\x0a\\x1b.toml");
  CHECK(read_job(kLeast, "dir/héron.toml").job.source == "héron.toml");
  const JobReading wrong = read_job(kLeast + "[clth]\n", "h\xe9\n.toml");
  REQUIRE(wrong.faults.size() == 1);
  CHECK(to_text(wrong.faults[0]).starts_with("h\\xe9\\x0a.toml:14:2: clth is not a key"));
  const std::string path = std::string(3000, 'd') + "/job.toml";
  const std::string told = to_text({Why::Missing, "s", {path, 1, 2}});
  CHECK(told.size() < 300);
  CHECK(told.starts_with("ddd"));
  CHECK(told.ends_with("/job.toml:1:2: s"));
}
