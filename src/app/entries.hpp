#pragma once

#include <string>
#include <vector>

#include "swathe/write.hpp"

namespace swathe::app {

/// What is told of a file.
struct Entry {
  std::string name, pages, paper, what;
};
Entry entry_of(const MadeFile& file);

/// The table of them, for the terminal.
std::string files_text(const std::string& folder, const std::vector<Entry>& entries);

/// Which PDF files are not made, and why; empty where all are.
std::string left_out_text(const std::vector<ToldSheet>& sheets);

}  // namespace swathe::app
