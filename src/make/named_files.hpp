#pragma once

#include <string>

#include "swathe/job.hpp"
#include "swathe/make.hpp"

namespace swathe {

/// Whether a key's value is the path of a file, not a name of ours.
bool is_rule_file(const std::string& season);
bool is_font_file(const std::string& font);

/// Refuses: Missing where it is not among the files.
Outcome<std::string> bytes_of(const std::string& name, const NamedFiles& files);

/// The season a job names; nothing in it for "none". A rule file's faults have places in that file.
Outcome<std::optional<Season>> season_of(const Job& job, const std::string& job_file,
                                         const NamedFiles& files);

}  // namespace swathe
