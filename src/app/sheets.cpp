#include "sheets.hpp"

#include "swathe/type/faces.hpp"

namespace swathe::app {

tl::expected<Sheets, Exit> sheets_of(Terminal& terminal, const Made&) {
  auto labels = Face::open(label_face());
  if (!labels) {  // it comes with the tool: not the job's fault
    terminal.complain(labels.error());
    return tl::unexpected(Exit::MachineFailed);
  }
  return Sheets{std::move(*labels), {}};
}

}  // namespace swathe::app
