#include "entries.hpp"

#include <fmt/format.h>

#include <filesystem>

#include "base/print.hpp"
#include "job/limits.hpp"
#include "job/names.hpp"
#include "table.hpp"

namespace swathe::app {

Entry entry_of(const MadeFile& file, const Job& job) {
  const std::string paper = file.paper == kOwnSize
                                ? fmt::format("{} by {}", dimension(job.paper.width, job.units),
                                              dimension_with_unit(job.paper.height, job.units))
                                : file.paper;
  return {file.name, file.pages > 0 ? std::to_string(file.pages) : "", paper, file.what};
}

std::string files_text(const std::string& folder, const std::vector<Entry>& entries) {
  Table table(
      {{"file"}, {"pages", Column::Align::Right}, {"paper"}, {"what", Column::Align::Left, true}});
  for (const Entry& entry : entries)
    table.add({escaped((std::filesystem::path(folder) / entry.name).string()), entry.pages,
               entry.paper, printable(entry.what)});
  return table.to_text();
}

std::string left_out_text(const std::vector<ToldSheet>& sheets, Units units) {
  std::string text;
  for (const ToldSheet& sheet : sheets)
    if (sheet.too_large_for_pdf)
      text += fmt::format("{}.pdf is left out: a page of a PDF is at most {} long.\n", sheet.stem,
                          dimension_with_unit(kPaperSize.most, units));
  return text;
}

}  // namespace swathe::app
