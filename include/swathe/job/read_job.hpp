#pragma once

#include <set>
#include <string>
#include <string_view>

#include "swathe/job/job.hpp"

namespace swathe {

/// What a job file says, with everything that is wrong in it.
///
/// Where a key is at fault the job holds its default and the table is unsound, so that what the
/// other tables describe can still be judged in the same run.
struct JobReading {
  Job job;
  Refusals faults;                ///< by place in the file
  std::set<std::string> unsound;  ///< tables with a fault: "frame", "bumper.0", "bracket.2"

  bool sound(std::string_view table) const { return !unsound.contains(std::string(table)); }
};

/// Reads a job file's text. `file` is the name that stands in places, and, less its folder, in
/// Job::source.
///
/// Refuses (in `faults`): Malformed alone where the text is not TOML, TooLarge alone where it is
/// longer or deeper than is read (then no table is sound); else every unknown key (with
/// the nearest known one), wrong type, value out of range, missing key (a missing table at 1:1),
/// and feature not built yet.
JobReading read_job(std::string_view text, const std::string& file);

}  // namespace swathe
