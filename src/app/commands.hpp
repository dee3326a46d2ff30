#pragma once

#include <optional>
#include <string>
#include <vector>

#include "exit.hpp"
#include "terminal.hpp"

// What the commands do, one function each; the command line is read in command_line.cpp.
namespace swathe::app {

/// Which sheets a run writes.
enum class Wanted { Everything, Patterns, Numerals, Views };

Exit new_job(Terminal& terminal, const std::string& path);
/// `scale` is that of proof models of the covers, where they are wanted.
Exit make_files(Terminal& terminal, const std::string& job, const std::string& folder,
                Wanted wanted, std::optional<double> scale);
Exit check(Terminal& terminal, const std::string& job);
Exit list(Terminal& terminal, const std::string& job);
Exit report(Terminal& terminal, const std::string& job);
/// `job` may be empty; so may `folder`, into which a sheet of the faces goes.
Exit fonts(Terminal& terminal, const std::string& job, const std::string& folder);
/// `names` may be empty, for all.
Exit seasons(Terminal& terminal, const std::vector<std::string>& names);

}  // namespace swathe::app
