// Prints the README's table of ratios, and what whole runs of the tool take.
#include "ratios.hpp"

#include <fmt/format.h>

#include <cstdio>

namespace {

using namespace swathe::bench;

std::string time_text(double seconds) {
  if (seconds >= 1) return fmt::format("{:.3g} s", seconds);
  return fmt::format("{:.3g} ms", 1e3 * seconds);
}

void print(const std::vector<Ratio>& ratios) {
  for (const Ratio& row : ratios)
    fmt::print("| {} | {} | {} | {} | {:.3g} |\n", row.what, time_text(row.seconds), row.other,
               time_text(row.other_seconds), row.seconds / row.other_seconds);
  std::fflush(stdout);
}

}  // namespace

int main() {
  fmt::print("| what | takes | the other way | takes | ratio |\n|---|---|---|---|---|\n");
  for (const auto& ratios :
       {main_job_ratios, report_ratios, sight_ratios, unfold_ratios, stroke_ratios})
    print(ratios());
  fmt::print("\n| a whole run | CPU | by the clock |\n|---|---|---|\n");
  for (const Run& run : whole_runs())
    fmt::print("| `{}` | {} | {} |\n", run.what, time_text(run.cpu_seconds),
               time_text(run.wall_seconds));
}
