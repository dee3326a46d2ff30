#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace swathe {

/// What a new job says: keys and their values as TOML has them.
struct NewJob {
  using Table = std::map<std::string, std::string, std::less<>>;
  Table values;                                    ///< "frame.width" to "\"28 in\""
  std::vector<Table> openings, bumpers, brackets;  ///< "side" to "\"front\""
};

/// The commented job file that says this; every other key stands in it as a comment, with its
/// default. A drawing of the frame stands above the frame's table.
///
/// Requires: keys that there are, and a job that can be read.
std::string new_job_of(const NewJob& job);

/// A drawing of a job's frame in comment lines. Requires: a text that reads without a fault.
std::string drawing_comment(std::string_view job_text);

}  // namespace swathe
