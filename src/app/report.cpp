#include "swathe/write/report.hpp"

#include "commands.hpp"
#include "load.hpp"
#include "sheets.hpp"

namespace swathe::app {

Exit report(Terminal& terminal, const std::string& job) {
  const auto made = load(terminal, job);
  if (!made) return made.error();
  const auto sheets = sheets_of(terminal, *made);
  if (!sheets) return sheets.error();
  terminal.answer(report_json(*made, sheets->list));
  return Exit::Done;
}

}  // namespace swathe::app
