#include "book/hook_and_loop.hpp"

#include <algorithm>

namespace swathe {

double length_of_strip(const plane::Path& strip) {
  const plane::Box box = bounds(strip);
  return std::max(box.width(), box.height());
}

double strip_length(const Made& made) {
  double all = 0;
  for (const Pattern& pattern : made.patterns)
    for (const plane::Path& strip : pattern.strips) all += length_of_strip(strip);
  return all;
}

}  // namespace swathe
