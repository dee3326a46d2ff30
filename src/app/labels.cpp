#include "labels.hpp"

#include <utility>

#include "swathe/type.hpp"

namespace swathe::app {

tl::expected<Font, Exit> open_labels(Terminal& terminal) {
  auto labels = Font::open(label_font());
  if (labels) return *std::move(labels);
  terminal.complain(labels.error());  // it comes with the tool: not the job's fault
  return tl::unexpected(Exit::MachineFailed);
}

}  // namespace swathe::app
