#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace swathe::test {

std::string bytes_of(const std::filesystem::path& path);

/// An example by its path among them, without its ending: "tin-heron", "kinds/sewn".
inline std::filesystem::path example(const std::string& name) {
  return SWATHE_SOURCE "/examples/" + name + ".toml";
}

/// Every job among the examples, in the order of their names.
std::vector<std::filesystem::path> example_jobs();

}  // namespace swathe::test
