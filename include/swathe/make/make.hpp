#pragma once

#include <functional>
#include <string>
#include <string_view>

#include "swathe/base/outcome.hpp"
#include "swathe/make/made.hpp"

namespace swathe {

/// Gives the bytes of a file that a job names (a font, a rule file), or a refusal that says why
/// not. The library itself reads no files.
using ReadFile = std::function<Outcome<std::string>(const std::string& path)>;

/// The one pass from a job file's text to everything made of it.
///
/// Refuses: a syntax error alone; otherwise every fault of keys, values and geometry that can be
/// judged in one run, by place: what hangs on a faulty table is not judged.
Outcome<Made> make(std::string_view job_text, const std::string& job_file,
                   const ReadFile& read_file);

}  // namespace swathe
