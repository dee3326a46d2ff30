#include "swathe/base/outcome.hpp"

#include <fmt/format.h>

#include "base/print.hpp"

namespace swathe {

std::string to_text(const Refusal& refusal) {
  return fmt::format("{}:{}:{}: {}", quoted_name(refusal.place.file), refusal.place.line,
                     refusal.place.column, escaped(refusal.sentence));
}

}  // namespace swathe
