#include "operands.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <system_error>

#include "text.hpp"

namespace swathe::app {
namespace {

bool may_be_job(const std::string& word) {
  const std::filesystem::path path(word);
  if (word == "-" || path.extension() == ".toml") return true;
  std::error_code unknown;
  return std::filesystem::exists(path, unknown) && !std::filesystem::is_directory(path, unknown);
}

/// A word as it is typed in a shell.
std::string shell_word(const std::string& word) {
  const bool plain = word.find_first_of(" \t\n'\"\\$`*?[]()<>|&;#~!{}") == std::string::npos;
  if (plain && !word.empty()) return named(word);
  std::string quoted;
  for (const char c : word) quoted += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return named("'" + quoted + "'");
}

}  // namespace

std::optional<std::string> folder_meant(const std::string& command,
                                        const std::vector<std::string>& jobs) {
  if (jobs.size() < 2) return std::nullopt;
  const auto folder = std::ranges::find_if_not(jobs.begin() + 1, jobs.end(), may_be_job);
  if (folder == jobs.end()) return std::nullopt;
  std::string typed = "swathe " + command;
  for (auto job = jobs.begin(); job != jobs.end(); ++job)
    if (job != folder) typed += " " + shell_word(*job);
  return fmt::format("{0} is not a job file; was the folder to write into meant? type: {1} -o {2}",
                     named(*folder), typed, shell_word(*folder));
}

}  // namespace swathe::app
