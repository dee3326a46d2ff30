#include "book/texts.hpp"

namespace swathe::book_texts {

std::string say(std::string_view id, std::initializer_list<TextValue> values) {
  static const Texts texts = Texts::of_room("book");
  return texts(id, values);
}

}  // namespace swathe::book_texts
