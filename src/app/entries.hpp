#pragma once

#include <string>
#include <vector>

#include "commands.hpp"
#include "output.hpp"
#include "sheets.hpp"
#include "swathe/make/made.hpp"

namespace swathe::app {

/// A file to be, and the words beside its name.
struct Entry {
  OutputFile file;
  std::string pages, paper, what;
};

/// Whether a run writes sheets of that kind.
bool wants(Wanted wanted, SheetKind kind);

/// Every file that a run writes, as bytes; `created` is the date in its PDF files.
std::vector<Entry> entries_of(const Made& made, const Sheets& sheets, Wanted wanted,
                              const std::string& created);

/// The table of them, for the terminal.
std::string files_text(const std::string& folder, const std::vector<Entry>& entries);

/// Which PDF files are not made, and why; empty where all are.
std::string left_out_text(const Sheets& sheets, Wanted wanted);

}  // namespace swathe::app
