#pragma once

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <string_view>

#include "swathe/base.hpp"

namespace swathe::fuzz {

/// A promise broken: says which, and stops.
inline void must(bool holds, const char* promise) {
  if (holds) return;
  std::fprintf(stderr, "broken: %s\n", promise);
  std::abort();
}

/// Every fault says something, in one line, of a place that the text has.
inline void check_faults(const Refusals& faults, std::string_view text) {
  must(!faults.empty(), "what is refused has a fault");
  const auto lines = std::count(text.begin(), text.end(), '\n') + 1;
  for (const Refusal& fault : faults) {
    must(!fault.sentence.empty() && fault.sentence.find('\n') == std::string::npos,
         "a fault is one line");
    must(fault.sentence.size() < 2000, "a fault is short");
    must(fault.place.line >= 1 && fault.place.line <= lines, "a fault's line is in the text");
    must(fault.place.column >= 1 && static_cast<std::size_t>(fault.place.column) <= text.size() + 1,
         "a fault's column is in the text");
  }
}

}  // namespace swathe::fuzz
