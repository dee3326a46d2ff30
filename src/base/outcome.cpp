#include "swathe/base/outcome.hpp"

#include <fmt/format.h>

namespace swathe {

std::string to_text(const Refusal& refusal) {
  return fmt::format("{}:{}:{}: {}", refusal.place.file, refusal.place.line, refusal.place.column,
                     refusal.sentence);
}

}  // namespace swathe
