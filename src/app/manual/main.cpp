#include <filesystem>
#include <fstream>
#include <iostream>

#include "app/manual/pages.hpp"
#include "job/job_schema.hpp"
#include "swathe/version.hpp"

namespace {

bool write(const std::filesystem::path& path, const std::string& text) {
  std::filesystem::create_directories(path.parent_path());
  std::ofstream out(path, std::ios::binary);
  out << text;
  return out.flush().good();
}

}  // namespace

// Run by the build: writes the man page, the shells' completions and the job's schema below a
// folder.
int main(int count, char** words) {
  if (count != 2) {
    std::cerr << "usage: swathe_manual FOLDER\n";
    return 2;
  }
  const std::filesystem::path folder = words[1];
  const swathe::app::Description description = swathe::app::describe();
  const bool written =
      write(folder / "swathe.1",
            swathe::app::man_page(description, SWATHE_DESCRIPTION,
                                  std::string("swathe ") + swathe::kVersion)) &&
      write(folder / "bash/swathe", swathe::app::bash_completion(description)) &&
      write(folder / "zsh/_swathe", swathe::app::zsh_completion(description)) &&
      write(folder / "fish/swathe.fish", swathe::app::fish_completion(description)) &&
      write(folder / "job.schema.json", swathe::job_schema());
  return written ? 0 : 3;
}
