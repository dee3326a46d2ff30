#include "support/examples.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <iterator>

namespace swathe::test {

std::string bytes_of(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  REQUIRE(in.good());
  return {std::istreambuf_iterator<char>(in), {}};
}

std::vector<std::filesystem::path> example_jobs() {
  std::vector<std::filesystem::path> jobs;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(SWATHE_SOURCE "/examples"))
    if (entry.path().extension() == ".toml") jobs.push_back(entry.path());
  std::ranges::sort(jobs);
  REQUIRE(jobs.size() >= 12);
  return jobs;
}

}  // namespace swathe::test
