#pragma once

#include <string>
#include <vector>

// The command line in words, as --help has it, for the man page and the shells.
namespace swathe::app {

/// What a shell may put in the place of a value.
enum class Completion { Nothing, Files, Folders, Names };

struct ValueWords {
  std::string name;  ///< "DIR"; empty where there is none
  Completion completion = Completion::Nothing;
  std::vector<std::string> names;  ///< of Names
};

struct OptionWords {
  std::vector<std::string> names;  ///< "-o", "--output"
  std::string words;
  ValueWords value;
  std::string preset;  ///< the value it has when it is not given; may be empty
};

struct OperandWords {
  ValueWords value;
  std::string words;
  bool needed = false;
  bool many = false;
  std::string preset;
};

struct CommandWords {
  std::string name;
  std::string words;
  std::vector<OptionWords> options;  ///< those that not every command has
  std::vector<OperandWords> operands;
};

struct Description {
  std::string introduction;
  std::vector<OptionWords> options;  ///< that every command has
  std::vector<CommandWords> commands;
};

Description describe();

}  // namespace swathe::app
