#pragma once

#include <functional>
#include <tl/expected.hpp>

#include "exit.hpp"
#include "terminal.hpp"

namespace swathe::app {

/// What a command line asks for.
struct Request {
  Loudness loudness = Loudness::Normal;
  std::function<Exit(Terminal&)> action;
};

/// Reads the command line. --help and --version are actions too, with their text for an answer.
/// The error is a sentence.
tl::expected<Request, std::string> read_command_line(int count, const char* const* words);

}  // namespace swathe::app
