#pragma once

#include <string>

#include "base/limits.hpp"
#include "swathe/base.hpp"
#include "swathe/make.hpp"

namespace swathe::app {

/// A job, rule file or font is at most this large.
inline constexpr std::size_t kLargestInput = kMostFontBytes;

/// A job's text and what to call it.
struct JobText {
  std::string text;
  std::string name;  ///< as it stands in places: the path as given, "standard input" for "-"
};

/// The job file, or standard input for "-".
/// Refuses: Missing (no such file, a folder, not readable), TooLarge, Malformed (no text, but a
///   picture or the like); each of the whole file, at line 0.
Outcome<JobText> read_job_text(const std::string& path);

/// The fonts and rule files that a job names: paths count from the job file's folder, or from the
/// working folder for a job from standard input.
/// Each refuses: Missing (no such file, not a plain file, not readable), TooLarge.
NamedFiles read_files_beside(const std::string& job_path, const std::vector<std::string>& names);

}  // namespace swathe::app
