#pragma once

#include <string>

#include "app/manual/description.hpp"

// What is made of the command line's description, to be installed beside the command.
namespace swathe::app {

/// `name_line` is the project's description, `version` "swathe 0.1.0".
/// Source: man(7), the macro package of groff.
std::string man_page(const Description& description, const std::string& name_line,
                     const std::string& version);

/// Source: the manual of bash, "Programmable Completion".
std::string bash_completion(const Description& description);

/// Source: the manual of zsh, "Completion System".
std::string zsh_completion(const Description& description);

/// Source: the manual of fish, "Writing your own completions".
std::string fish_completion(const Description& description);

}  // namespace swathe::app
