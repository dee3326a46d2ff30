#include "app/manual/description.hpp"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <algorithm>

#include "app/command_line.hpp"
#include "app/explain.hpp"
#include "app/set.hpp"
#include "swathe/job.hpp"
#include "swathe/rules.hpp"
#include "swathe/write.hpp"

namespace swathe::app {
namespace {

ValueWords value_called(const std::string& name) {
  if (name == "JOB" || name == "FILE") return {name, Completion::Files, {}};
  if (name == "DIR") return {name, Completion::Folders, {}};
  if (name == "KIND") return {name, Completion::Names, job_kinds()};
  if (name == "KINDS") return {name, Completion::Names, {kWantedWords.begin(), kWantedWords.end()}};
  if (name == "SEASON") return {name, Completion::Names, season_names()};
  if (name == "KEY") return {name, Completion::Names, explained_names()};
  return {name, Completion::Nothing, {}};
}

OptionWords words_of(const CLI::Option& option) {
  OptionWords words;
  for (const std::string& name : option.get_snames()) words.names.push_back("-" + name);
  for (const std::string& name : option.get_lnames()) words.names.push_back("--" + name);
  words.words = option.get_description();
  if (option.get_items_expected_max() > 0) {
    words.value = value_called(option.get_type_name());
    words.preset = option.get_default_str();
  }
  return words;
}

/// Checks are explained, and cannot be set.
ValueWords operand_called(const std::string& name, const std::string& command) {
  if (name == "KEY" && command == "set") return {name, Completion::Names, settable_names()};
  return value_called(name);
}

OperandWords operand_of(const CLI::Option& option, const std::string& command) {
  return {operand_called(option.get_single_name(), command), option.get_description(),
          option.get_required(), option.get_items_expected_max() > 1, option.get_default_str()};
}

bool is_one_of(const OptionWords& option, const std::vector<OptionWords>& list) {
  return std::ranges::find(list, option.names, &OptionWords::names) != list.end();
}

}  // namespace

Description describe() {
  Description all;
  describe_command_line([&](const CLI::App& app) {
    all.introduction = app.get_description();
    for (const CLI::Option* option : app.get_options()) all.options.push_back(words_of(*option));
    for (const CLI::App* command : app.get_subcommands({})) {
      CommandWords words{command->get_name(), command->get_description(), {}, {}};
      for (const CLI::Option* option : command->get_options()) {
        if (option->get_positional())
          words.operands.push_back(operand_of(*option, words.name));
        else if (OptionWords own = words_of(*option); !is_one_of(own, all.options))
          words.options.push_back(std::move(own));
      }
      all.commands.push_back(std::move(words));
    }
  });
  return all;
}

}  // namespace swathe::app
