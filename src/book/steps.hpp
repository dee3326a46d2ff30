#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "swathe/make.hpp"

// The build book's long texts, less what the job at hand has no use for.
namespace swathe {

/// One step of the order of work.
struct WorkStep {
  std::string name;  ///< in a few words: "Cut the boards"
  std::string what;
  std::string tools;               ///< to have at hand
  std::string waits;               ///< what has to dry, set or cool, and how long
  std::vector<std::string> needs;  ///< pieces, marks and lists that it starts from
  std::vector<std::string> gives;  ///< those that it leaves behind
};

/// The steps that the job's covers ask for, in order.
///
/// Holds (day_test.cpp): (1) what a step needs, an earlier one gave, or it is bought or printed;
///   (2) its tools are on the list of tools; (3) each staple is driven once, in order.
std::vector<WorkStep> steps_of(const Made& made);

/// The same in short: "1  Check the print", "12-14  Fold the corners" where steps of one name
/// follow one another.
struct StepName {
  std::size_t first = 0, last = 0;  ///< counted from 1
  std::string name;
};
std::vector<StepName> step_names(const Made& made);

/// The tools for all of it, a line each.
std::vector<std::string> tool_lines(const Made& made);

}  // namespace swathe
