#pragma once

#include <string>
#include <string_view>

namespace swathe {

/// A JSON Schema of the job file (draft 7, which editors know for TOML): they complete its keys,
/// show what each means, and mark what cannot be read.
///
/// Holds: (1) it takes whatever read_job reads without a fault
/// What asks for more than one key, a side's name or a length with its unit, it lets pass.
std::string job_schema();

// What a text looks like as a length or an angle; wider than what is read, never narrower.
std::string length_pattern();
std::string angle_pattern();

}  // namespace swathe
