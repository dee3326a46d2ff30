#pragma once

#include <filesystem>

#include "support/examples.hpp"
#include "support/made.hpp"

namespace swathe::test {

/// The whole pass over an example, which can be made.
inline Made made_example(const std::filesystem::path& path) {
  return made(bytes_of(path), path.filename().string());
}

}  // namespace swathe::test
