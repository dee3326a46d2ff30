#pragma once

#include <string>
#include <vector>

#include "swathe/job.hpp"
#include "swathe/write.hpp"

namespace swathe::app {

/// What is told of a file.
struct Entry {
  std::string name, pages, paper, what;
};
/// Paper without a name is told by its size, in the job's units.
Entry entry_of(const MadeFile& file, const Job& job);

/// The table of them, for the terminal.
std::string files_text(const std::string& folder, const std::vector<Entry>& entries);

/// Which PDF files are not made, and why; empty where all are.
std::string left_out_text(const std::vector<ToldSheet>& sheets, Units units);

}  // namespace swathe::app
