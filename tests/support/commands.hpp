#pragma once

#include <filesystem>
#include <string>

namespace swathe::test {

/// A folder of its own, gone with the test.
class TemporaryFolder {
 public:
  TemporaryFolder();
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;
  ~TemporaryFolder();

  std::string file(const std::string& name) const;

  /// Writes it and gives its path.
  std::string write(const std::string& name, const std::string& bytes) const;
  std::string read(const std::string& name) const;

 private:
  std::filesystem::path path_;
};

/// What a command of the system says on its standard output. One that is missing, or ends badly,
/// fails the test.
std::string run(const std::string& command);

}  // namespace swathe::test
