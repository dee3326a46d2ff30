#include "sheets.hpp"

#include "swathe/type/fonts.hpp"
#include "swathe/write/sheets.hpp"

namespace swathe::app {

tl::expected<Sheets, Exit> sheets_of(Terminal& terminal, const Made& made) {
  auto labels = Font::open(label_font());
  if (!labels) {  // it comes with the tool: not the job's fault
    terminal.complain(labels.error());
    return tl::unexpected(Exit::MachineFailed);
  }
  std::vector<Sheet> list = all_sheets(made, *labels);
  return Sheets{std::move(*labels), std::move(list)};
}

}  // namespace swathe::app
