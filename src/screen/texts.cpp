#include "screen/texts.hpp"

namespace swathe::screen_texts {

std::string say(std::string_view id, std::initializer_list<TextValue> values) {
  static const Texts texts = Texts::of_room("screen");
  return texts(id, values);
}

std::string listed(const std::vector<std::string>& names) {
  if (names.empty()) return "";
  std::string list = names.front();
  for (std::size_t k = 1; k < names.size(); ++k)
    list = k + 1 == names.size() ? say("list.last", {{"names", list}, {"last", names[k]}})
                                 : list + ", " + names[k];
  return list;
}

}  // namespace swathe::screen_texts
