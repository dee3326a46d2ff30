#pragma once

#include <functional>
#include <string>
#include <tl/expected.hpp>

#include "exit.hpp"
#include "terminal.hpp"

namespace CLI {
class App;
}

namespace swathe::app {

/// What a command line asks for.
struct Request {
  Loudness loudness = Loudness::Normal;
  std::function<Exit(Terminal&)> action;
};

/// Reads the command line. --help and --version are actions too, with their text for an answer.
/// The error is a sentence.
tl::expected<Request, std::string> read_command_line(int count, const char* const* words);

/// Lets one look at what can be asked for: every command, its options and operands.
void describe_command_line(const std::function<void(const CLI::App&)>& look);

}  // namespace swathe::app
