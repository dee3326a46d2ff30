#include "entries.hpp"

#include <fmt/format.h>

#include <filesystem>

#include "base/print.hpp"
#include "table.hpp"

namespace swathe::app {

Entry entry_of(const MadeFile& file) {
  return {file.name, file.pages > 0 ? std::to_string(file.pages) : "", file.paper, file.what};
}

std::string files_text(const std::string& folder, const std::vector<Entry>& entries) {
  Table table(
      {{"file"}, {"pages", Column::Align::Right}, {"paper"}, {"what", Column::Align::Left, true}});
  for (const Entry& entry : entries)
    table.add({escaped((std::filesystem::path(folder) / entry.name).string()), entry.pages,
               entry.paper, printable(entry.what)});
  return table.to_text();
}

std::string left_out_text(const std::vector<ToldSheet>& sheets) {
  std::string text;
  for (const ToldSheet& sheet : sheets)
    if (sheet.too_large_for_pdf)
      text +=
          fmt::format("{}.pdf is left out: a page of a PDF is at most 200 in long.\n", sheet.stem);
  return text;
}

}  // namespace swathe::app
