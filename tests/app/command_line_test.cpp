#include "app/command_line.hpp"

#include <doctest/doctest.h>

#include <vector>

using namespace swathe::app;

namespace {

tl::expected<Request, std::string> read(std::vector<const char*> words) {
  words.insert(words.begin(), "swathe");
  return read_command_line(static_cast<int>(words.size()), words.data());
}

constexpr const char* kCommands[] = {"new",  "make",   "check", "pattern", "numerals", "views",
                                     "list", "report", "fonts", "seasons", "explain"};

}  // namespace

TEST_CASE("command line: every command has its help, version and loudness") {
  for (const char* command : kCommands) {
    CAPTURE(command);
    for (const char* word : {"--help", "-h", "--version"}) CHECK(read({command, word}).has_value());
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

TEST_CASE("command line: - is a job like any other") {
  CHECK(read({"check", "-"}).has_value());
  CHECK(read({"check", "--", "-odd-name.toml"}).has_value());
}
