#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

namespace swathe::test {

inline std::string bytes_of(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  REQUIRE(in.good());
  return {std::istreambuf_iterator<char>(in), {}};
}

/// An example by its path among them, without its ending: "tin-heron", "kinds/sewn".
inline std::filesystem::path example(const std::string& name) {
  return SWATHE_SOURCE "/examples/" + name + ".toml";
}

/// Every job among the examples, in the order of their names.
inline std::vector<std::filesystem::path> example_jobs() {
  std::vector<std::filesystem::path> jobs;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(SWATHE_SOURCE "/examples"))
    if (entry.path().extension() == ".toml") jobs.push_back(entry.path());
  std::ranges::sort(jobs);
  REQUIRE(jobs.size() >= 12);
  return jobs;
}

}  // namespace swathe::test
