#pragma once

#include <string>
#include <vector>

// Our way and another to the same end, timed side by side: the table of the README.
namespace swathe::bench {

struct Ratio {
  std::string what;
  double seconds = 0;
  std::string other;
  double other_seconds = 0;
};

std::vector<Ratio> main_job_ratios();
std::vector<Ratio> report_ratios();
std::vector<Ratio> sight_ratios();
std::vector<Ratio> unfold_ratios();
std::vector<Ratio> stroke_ratios();

/// A whole run of the tool.
struct Run {
  std::string what;
  double cpu_seconds = 0, wall_seconds = 0;
};
std::vector<Run> whole_runs();

}  // namespace swathe::bench
