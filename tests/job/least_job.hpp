#pragma once

#include <doctest/doctest.h>

#include <set>
#include <string>

#include "swathe/job.hpp"

namespace swathe::test {

/// A job without fault on 13 lines; what follows stands from line 14.
inline const std::string kLeast =
    "[job]\n"
    "title = \"Covers\"\n"
    "number = \"20486\"\n"
    "\n"
    "[frame]\n"
    "width = \"28 in\"\n"
    "depth = \"30 in\"\n"
    "\n"
    "[[bumper]]\n"
    "name = \"A\"\n"
    "from = [\"front\", \"50%\"]\n"
    "to = [\"back\", \"50%\"]\n"
    "\n";

struct At {
  int line, column;
};

/// The one fault of the least job with more below it.
inline void check_only(const std::string& more, Why why, At at, const std::string& word,
                       const std::string& table) {
  CAPTURE(more);
  const JobReading reading = read_job(kLeast + more, "dir/spring.toml");
  REQUIRE(reading.faults.size() == 1);
  const Refusal& fault = reading.faults[0];
  CAPTURE(fault.sentence);
  CHECK(fault.why == why);
  CHECK(fault.place.file == "dir/spring.toml");
  CHECK(fault.place.line == at.line);
  CHECK(fault.place.column == at.column);
  CHECK(fault.sentence.find(word) != std::string::npos);
  CHECK(reading.unsound ==
        (table.empty() ? std::set<std::string>() : std::set<std::string>{table}));
}

inline std::string changed(std::string text, const std::string& from, const std::string& to) {
  const auto found = text.find(from);
  REQUIRE(found != std::string::npos);
  return text.replace(found, from.size(), to);
}

/// The one fault of a whole text.
inline Refusal only_fault(const std::string& text) {
  CAPTURE(text);
  const JobReading reading = read_job(text, "job");
  REQUIRE(reading.faults.size() == 1);
  return reading.faults[0];
}

inline std::string all_sentences(const JobReading& reading) {
  std::string all;
  for (const Refusal& fault : reading.faults) all += to_text(fault) + "\n";
  return all;
}

}  // namespace swathe::test
