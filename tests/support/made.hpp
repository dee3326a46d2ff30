#pragma once

#include <string>
#include <string_view>

#include "swathe/make.hpp"

namespace swathe::test {

/// The whole pass over a job's text, which names no file.
Outcome<Made> make_text(std::string_view text, const std::string& file = "job.toml");

/// The same of a job that can be made.
Made made(std::string_view text, const std::string& file = "job.toml");

}  // namespace swathe::test
