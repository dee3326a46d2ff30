#include <fcntl.h>
#include <spawn.h>
#include <sys/resource.h>
#include <sys/time.h>
#include <sys/wait.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>

#include "ratios.hpp"

extern char** environ;

namespace swathe::bench {
namespace {

double seconds(const timeval& time) {
  return static_cast<double>(time.tv_sec) + 1e-6 * static_cast<double>(time.tv_usec);
}

/// The tool once, its words thrown away.
Run run_once(const std::vector<std::string>& words) {
  std::vector<char*> arguments;
  for (const std::string& word : words) arguments.push_back(const_cast<char*>(word.c_str()));
  arguments.push_back(nullptr);
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  for (const int stream : {1, 2})
    posix_spawn_file_actions_addopen(&actions, stream, "/dev/null", O_WRONLY, 0);
  const auto begin = std::chrono::steady_clock::now();
  pid_t child = 0;
  if (::posix_spawn(&child, SWATHE_TOOL, &actions, nullptr, arguments.data(), environ) != 0)
    std::abort();
  int status = 0;
  rusage used{};
  if (::wait4(child, &status, 0, &used) != child || !WIFEXITED(status) || WEXITSTATUS(status) > 1)
    std::abort();
  const std::chrono::duration<double> wall = std::chrono::steady_clock::now() - begin;
  posix_spawn_file_actions_destroy(&actions);
  return {"", seconds(used.ru_utime) + seconds(used.ru_stime), wall.count()};
}

Run least_of(const std::string& what, std::vector<std::string> words) {
  constexpr int kRuns = 20;
  words.insert(words.begin(), "swathe");
  Run least{what, 1e9, 1e9};
  for (int k = 0; k < kRuns; ++k) {
    const Run run = run_once(words);
    least.cpu_seconds = std::min(least.cpu_seconds, run.cpu_seconds);
    least.wall_seconds = std::min(least.wall_seconds, run.wall_seconds);
  }
  return least;
}

}  // namespace

std::vector<Run> whole_runs() {
  const std::string job = SWATHE_SOURCE "/examples/tin-heron.toml";
  char folder[] = "/tmp/swathe-bench-XXXXXX";
  if (::mkdtemp(folder) == nullptr) std::abort();
  std::vector<Run> runs = {least_of("swathe --version", {"--version"}),
                           least_of("swathe check", {"check", job}),
                           least_of("swathe report", {"report", job}),
                           least_of("swathe make", {"make", job, "-o", folder})};
  return runs;
}

}  // namespace swathe::bench
