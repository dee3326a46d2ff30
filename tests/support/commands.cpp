#include "support/commands.hpp"

#include <doctest/doctest.h>

#include <cstdio>
#include <fstream>
#include <iterator>
#include <random>
#include <system_error>

namespace swathe::test {

TemporaryFolder::TemporaryFolder()
    : path_(std::filesystem::temp_directory_path() /
            ("swathe-test-" + std::to_string(std::random_device{}()))) {
  std::filesystem::create_directories(path_);
}

TemporaryFolder::~TemporaryFolder() {
  std::error_code ignored;
  std::filesystem::remove_all(path_, ignored);
}

std::string TemporaryFolder::file(const std::string& name) const { return (path_ / name).string(); }

std::string TemporaryFolder::write(const std::string& name, const std::string& bytes) const {
  std::ofstream(file(name), std::ios::binary) << bytes;
  return file(name);
}

std::string TemporaryFolder::read(const std::string& name) const {
  std::ifstream in(file(name), std::ios::binary);
  REQUIRE(in);
  return {std::istreambuf_iterator<char>(in), {}};
}

std::string run(const std::string& command) {
  INFO(command);
  std::FILE* const pipe = popen(command.c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::string said;
  char buffer[4096];
  while (const std::size_t count = std::fread(buffer, 1, sizeof buffer, pipe))
    said.append(buffer, count);
  REQUIRE(pclose(pipe) == 0);
  return said;
}

}  // namespace swathe::test
