#include <fmt/format.h>

#include "app/manual/pages.hpp"

namespace swathe::app {
namespace {

/// Text within single quotes, where the letters of `marked` have a meaning of their own.
std::string quoted(std::string_view text, std::string_view marked) {
  std::string out;
  for (const char c : text) {
    if (c == '\'')
      out += "'\\'";
    else if (marked.find(c) != std::string_view::npos)
      out += '\\';
    out += c;
  }
  return out;
}

std::string offer(const ValueWords& value) {
  switch (value.completion) {
    case Completion::Files:
      return "_files";
    case Completion::Folders:
      return "_files -/";
    case Completion::Names: {
      std::string names;
      for (const std::string& name : value.names) names += (names.empty() ? "" : " ") + name;
      return "(" + names + ")";
    }
    case Completion::Nothing:
      break;
  }
  return " ";
}

/// ":DIR:_files -/"
std::string value_spec(const ValueWords& value) {
  return fmt::format(":{}:{}", quoted(value.name, ":"), offer(value));
}

/// Each name of an option shuts out the others.
std::string option_specs(const OptionWords& option) {
  std::string all, text;
  for (const std::string& name : option.names) all += (all.empty() ? "" : " ") + name;
  for (const std::string& name : option.names) {
    const std::string takes = option.value.name.empty() ? "" : name.starts_with("--") ? "=" : "+";
    text += fmt::format(" \\\n        '({}){}{}[{}]{}'", all, name, takes,
                        quoted(option.words, "[]:\\"),
                        option.value.name.empty() ? "" : value_spec(option.value));
  }
  return text;
}

std::string case_of(const CommandWords& command, const std::string& common) {
  std::string text = fmt::format("    {})\n      _arguments{}", command.name, common);
  for (const OptionWords& option : command.options) text += option_specs(option);
  int place = 1;
  for (const OperandWords& operand : command.operands)
    text += fmt::format(" \\\n        '{}{}'", operand.many ? "*" : fmt::format("{}", place++),
                        value_spec(operand.value));
  return text + "\n      ;;\n";
}

}  // namespace

std::string zsh_completion(const Description& description) {
  std::string common, commands, cases;
  for (const OptionWords& option : description.options) common += option_specs(option);
  for (const CommandWords& command : description.commands) {
    commands += fmt::format("    '{}:{}'\n", command.name, quoted(command.words, ":\\"));
    cases += case_of(command, common);
  }
  return fmt::format(R"(#compdef swathe
# Completion of swathe for zsh.

_swathe() {{
  local curcontext=$curcontext state line
  typeset -A opt_args
  local -a commands
  commands=(
{}  )
  _arguments -C{} \
        '1:command:->command' '*::argument:->argument'
  case $state in
    command)
      _describe -t commands 'command' commands
      return
      ;;
    argument) ;;
    *) return ;;
  esac
  case $words[1] in
{}  esac
}}

_swathe "$@"
)",
                     commands, common, cases);
}

}  // namespace swathe::app
