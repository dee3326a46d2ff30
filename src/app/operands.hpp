#pragma once

#include <optional>
#include <string>
#include <vector>

namespace swathe::app {

/// What to ask somebody who gave a folder where a job file is expected: "swathe make heron.toml
/// out". Nothing where each word but the first may be a job file: it ends in .toml, or is a file.
std::optional<std::string> folder_meant(const std::string& command,
                                        const std::vector<std::string>& jobs);

}  // namespace swathe::app
