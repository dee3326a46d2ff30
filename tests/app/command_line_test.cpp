#include "app/command_line.hpp"

#include <doctest/doctest.h>

#include <string>
#include <string_view>
#include <vector>

#include "app/operands.hpp"

using namespace swathe::app;

namespace {

tl::expected<Request, std::string> read(std::vector<const char*> words) {
  words.insert(words.begin(), "swathe");
  return read_command_line(static_cast<int>(words.size()), words.data());
}

constexpr const char* kCommands[] = {"new",  "make",   "check", "pattern", "numerals", "views",
                                     "list", "report", "fonts", "seasons", "explain",  "set"};

}  // namespace

TEST_CASE("command line: every command has its help, version and loudness") {
  for (const char* command : kCommands) {
    CAPTURE(command);
    for (const char* word : {"--help", "-h", "--version"}) CHECK(read({command, word}).has_value());
    if (command == std::string_view("set")) continue;  // it wants more words
    const auto quiet = read({command, "--quiet", "job.toml"});
    REQUIRE(quiet.has_value());
    CHECK(quiet->loudness == Loudness::Quiet);
    const auto verbose = read({command, "job.toml", "--verbose"});
    REQUIRE(verbose.has_value());
    CHECK(verbose->loudness == Loudness::Verbose);
    CHECK(static_cast<bool>(verbose->action));
  }
  const auto before = read({"--quiet", "check", "job.toml"});
  REQUIRE(before.has_value());
  CHECK(before->loudness == Loudness::Quiet);
}

TEST_CASE(
    "command line: what it does not know is refused, and a wrong command names those there are") {
  for (const auto& words : std::vector<std::vector<const char*>>{{},
                                                                 {"chek"},
                                                                 {"check"},
                                                                 {"check", "a", "b"},
                                                                 {"check", "a", "--fast"},
                                                                 {"make", "a", "-o"}})
    CHECK_FALSE(read(words).has_value());
  const auto wrong = read({"chek", "job.toml"});
  REQUIRE_FALSE(wrong.has_value());
  for (const char* command : kCommands) CHECK(wrong.error().find(command) != std::string::npos);
}

TEST_CASE("command line: what makes files takes many jobs") {
  for (const char* command : {"make", "pattern", "numerals", "views"})
    CHECK(read({command, "a.toml", "b.toml", "-o", "out"}).has_value());
}

TEST_CASE("command line: help and version are words too") {
  for (const auto& words : std::vector<std::vector<const char*>>{
           {"help"}, {"version"}, {"help", "make"}, {"help", "explain"}})
    CHECK(read(words).has_value());
  CHECK_FALSE(read({"version", "make"}).has_value());
}

TEST_CASE("command line: a folder where a job is expected is asked about, with the line to type") {
  CHECK(
      folder_meant("make", {"heron.toml", "out"}) ==
      "out is not a job file; was the folder to write into meant? type: swathe make heron.toml -o "
      "out");
  CHECK(folder_meant("pattern", {"a.toml", "my sheets", "b.toml"})
            .value()
            .ends_with("swathe pattern a.toml b.toml -o 'my sheets'"));
  CHECK(folder_meant("make", {"a.toml", "it's"}).value().ends_with(R"(-o 'it'\''s')"));
  for (const auto& jobs :
       std::vector<std::vector<std::string>>{{"out"},
                                             {"heron.toml", "none.toml"},
                                             {"heron.toml", "-"},
                                             {"heron.toml", SWATHE_SOURCE "/README.md"}})
    CHECK_FALSE(folder_meant("make", jobs).has_value());
}

TEST_CASE("command line: - is a job like any other") {
  CHECK(read({"check", "-"}).has_value());
  CHECK(read({"check", "--", "-odd-name.toml"}).has_value());
}

TEST_CASE("command line: set takes a value as it is, or takes the key out") {
  CHECK(read({"set", "job.toml", "bumper.1.from", "[\"front\", \"50%\"]"}).has_value());
  CHECK(read({"set", "job.toml", "numerals.spacing", "-3"}).has_value());
  CHECK(read({"set", "job.toml", "frame.fit", "--remove"}).has_value());
  CHECK_FALSE(read({"set", "job.toml", "frame.fit", "1", "--remove"}).has_value());
  CHECK_FALSE(read({"set", "job.toml", "frame.fit", "1", "2"}).has_value());
  CHECK_FALSE(read({"set", "job.toml"}).has_value());
}
