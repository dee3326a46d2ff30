#include <fmt/format.h>

#include "base/print.hpp"
#include "swathe/base.hpp"

namespace swathe {

namespace {

/// What is wrong with a file as a whole has no line (0) and is told without one.
std::string at_place(const Place& place, const std::string& sentence) {
  if (place.line == 0) return fmt::format("{}: {}", quoted_name(place.file), escaped(sentence));
  return fmt::format("{}:{}:{}: {}", quoted_name(place.file), place.line, place.column,
                     escaped(sentence));
}

}  // namespace

std::string to_text(const Refusal& refusal) { return at_place(refusal.place, refusal.sentence); }

std::string to_text(const Notice& notice) { return at_place(notice.place, notice.sentence); }

}  // namespace swathe
