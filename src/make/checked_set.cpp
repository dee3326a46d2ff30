#include "make/checked_set.hpp"

namespace swathe {

CheckedSet checked_set(const Made& made) {
  return {made.job,
          made.season ? &*made.season : nullptr,
          made.frame,
          made.section,
          made.wraps,
          made.patterns,
          made.bare_gaps,
          made.covered_gaps,
          made.boards,
          made.padding,
          made.numerals ? &*made.numerals : nullptr,
          &made.stock,
          made.sight ? &*made.sight : nullptr};
}

}  // namespace swathe
