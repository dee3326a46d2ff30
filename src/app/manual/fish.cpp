#include <fmt/format.h>

#include "app/manual/pages.hpp"

namespace swathe::app {
namespace {

std::string quoted(std::string_view text) {
  std::string out = "'";
  for (const char c : text) {
    if (c == '\'' || c == '\\') out += '\\';
    out += c;
  }
  return out + "'";
}

std::string offer(const ValueWords& value) {
  switch (value.completion) {
    case Completion::Files:
      return " --force-files";
    case Completion::Folders:
      return " -xa '(__fish_complete_directories)'";
    case Completion::Names: {
      std::string names;
      for (const std::string& name : value.names) names += (names.empty() ? "" : " ") + name;
      return " -xa " + quoted(names);
    }
    case Completion::Nothing:
      break;
  }
  return " -x";
}

std::string line(const std::string& when, const std::string& what) {
  return fmt::format("complete -c swathe{}{}\n", when.empty() ? "" : " -n " + quoted(when), what);
}

std::string option_line(const std::string& when, const OptionWords& option) {
  std::string what;
  for (const std::string& name : option.names)
    what += name.starts_with("--") ? " -l " + name.substr(2) : " -s " + name.substr(1);
  if (!option.value.name.empty()) what += offer(option.value);
  return line(when, what + " -d " + quoted(option.words));
}

}  // namespace

std::string fish_completion(const Description& description) {
  std::string text = "# Completion of swathe for fish.\n\n" + line("", " -f");
  for (const OptionWords& option : description.options) text += option_line("", option);
  for (const CommandWords& command : description.commands) {
    const std::string after = "__fish_seen_subcommand_from " + command.name;
    text += '\n' + line("__fish_use_subcommand",
                        fmt::format(" -a {} -d {}", command.name, quoted(command.words)));
    for (const OptionWords& option : command.options) text += option_line(after, option);
    int words = 2;  // before the first: "swathe" and the command
    for (const OperandWords& operand : command.operands) {
      const std::string there =
          command.operands.size() > 1
              ? fmt::format("{}; and test (count (commandline -opc)) -eq {}", after, words++)
              : after;
      if (operand.value.completion != Completion::Nothing)
        text += line(there, offer(operand.value));
    }
  }
  return text;
}

}  // namespace swathe::app
