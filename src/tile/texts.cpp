#include "tile/texts.hpp"

namespace swathe::tile_texts {

std::string say(std::string_view id, std::initializer_list<TextValue> values) {
  static const Texts texts = Texts::of_room("tile");
  return texts(id, values);
}

}  // namespace swathe::tile_texts
