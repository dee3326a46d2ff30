#include "make/set_number.hpp"
#include "swathe/make.hpp"

namespace swathe {

std::vector<PlacedNumeral> Made::numerals_on_patterns() const {
  return on_patterns(numerals, cloth_map());
}

}  // namespace swathe
