#include <fmt/format.h>

#include "app/manual/pages.hpp"

namespace swathe::app {
namespace {

std::string joined(const std::vector<std::string>& words, std::string_view between) {
  std::string text;
  for (const std::string& word : words) {
    if (!text.empty()) text += between;
    text += word;
  }
  return text;
}

/// What is put in the place of a value, as words for the shell function below.
std::string offer(const ValueWords& value) {
  switch (value.completion) {
    case Completion::Files:
      return " files";
    case Completion::Folders:
      return " folders";
    case Completion::Names:
      return " " + joined(value.names, " ");
    case Completion::Nothing:
      break;
  }
  return "";
}

std::string names_of(const std::vector<OptionWords>& options) {
  std::string text;
  for (const OptionWords& option : options) text += " " + joined(option.names, " ");
  return text;
}

std::string case_of(const CommandWords& command) {
  std::string text = fmt::format("    {})\n", command.name), values;
  for (const OptionWords& option : command.options)
    if (!option.value.name.empty())
      values += fmt::format("        {}) _swathe_offer{}; return ;;\n", joined(option.names, " | "),
                            offer(option.value));
  if (!values.empty()) text += "      case $before in\n" + values + "      esac\n";
  if (!command.options.empty())
    text += fmt::format("      options+='{}'\n", names_of(command.options));
  if (command.operands.size() == 1)
    text += fmt::format("      operand='{}'\n", offer(command.operands.front().value));
  if (command.operands.size() > 1) {
    text += "      case $place in\n";
    for (std::size_t k = 0; k < command.operands.size(); ++k)
      text += fmt::format("        {}) operand='{}' ;;\n", k, offer(command.operands[k].value));
    text += "      esac\n";
  }
  return text + "      ;;\n";
}

constexpr std::string_view kBefore = R"(# Completion of swathe for bash.

# Offers files, folders, or the words given.
_swathe_offer() {
  case $1 in
    files)
      compopt -o filenames 2>/dev/null
      mapfile -t COMPREPLY < <(compgen -f -- "$word") ;;
    folders)
      compopt -o filenames 2>/dev/null
      mapfile -t COMPREPLY < <(compgen -d -- "$word") ;;
    *)
      mapfile -t COMPREPLY < <(compgen -W "$*" -- "$word") ;;
  esac
}

_swathe() {
  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]}
  local command= operand= other place=0
  [[ $before == '=' ]] && before=${COMP_WORDS[COMP_CWORD - 2]}
  for other in "${COMP_WORDS[@]:1:COMP_CWORD - 1}"; do
    [[ $other == -* ]] && continue
    if [[ $command ]]; then place=$((place + 1)); else command=$other; fi
  done
  COMPREPLY=()
)";

constexpr std::string_view kAfter = R"(  esac
  if [[ $word == -* ]]; then
    _swathe_offer $options
  else
    _swathe_offer $operand
  fi
}

complete -F _swathe swathe
)";

}  // namespace

std::string bash_completion(const Description& description) {
  std::vector<std::string> commands;
  for (const CommandWords& command : description.commands) commands.push_back(command.name);
  std::string text(kBefore);
  text += fmt::format("  local options='{}'\n  case $command in\n", names_of(description.options));
  text += fmt::format("    '')\n      operand='{}'\n      ;;\n", joined(commands, " "));
  for (const CommandWords& command : description.commands) text += case_of(command);
  return text.append(kAfter);
}

}  // namespace swathe::app
