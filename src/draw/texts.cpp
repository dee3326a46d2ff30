#include "draw/texts.hpp"

namespace swathe::draw_texts {

std::string say(std::string_view id, std::initializer_list<TextValue> values) {
  static const Texts texts = Texts::of_room("draw");
  return texts(id, values);
}

}  // namespace swathe::draw_texts
