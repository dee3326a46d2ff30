#include "commands.hpp"
#include "labels.hpp"
#include "load.hpp"
#include "swathe/write.hpp"

namespace swathe::app {

Exit report(Terminal& terminal, const std::string& job) {
  const auto made = load(terminal, job);
  if (!made) return made.error();
  const auto labels = open_labels(terminal);
  if (!labels) return labels.error();
  terminal.answer(report_json(*made, told_sheets(*made, *labels)));
  return Exit::Done;
}

}  // namespace swathe::app
