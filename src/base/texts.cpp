#include "base/texts.hpp"

#include <fmt/args.h>
#include <fmt/format.h>

#include <cassert>

#include "base/embedded.hpp"
#include "base/toml.hpp"

namespace swathe {
namespace {

constexpr std::string_view kWords = "text";  ///< beside the values that a text declares

std::string string_of(const toml::node& node) {
  const auto text = node.value<std::string>();
  assert(text && "a file of texts holds strings");
  return *text;
}

Texts::Text text_of(const toml::node& node) {
  const toml::table* const table = node.as_table();
  if (table == nullptr) return {string_of(node), {}};
  Texts::Text text;
  for (const auto& [name, value] : *table)
    if (name.str() == kWords)
      text.words = string_of(value);
    else
      text.longest.emplace(name.str(), string_of(value));
  return text;
}

}  // namespace

Texts Texts::of_room(std::string_view room) {
  const std::string_view bytes = embedded(fmt::format("{}/{}/texts.toml", room, kLanguage));
  assert(!bytes.empty() && "the room has a file of texts");
  Texts texts;
  for (const auto& [id, node] : toml::parse(bytes)) texts.texts_.emplace(id.str(), text_of(node));
  return texts;
}

std::string Texts::operator()(std::string_view id, std::initializer_list<TextValue> values) const {
  const auto found = texts_.find(id);
  assert(found != texts_.end() && "a text of that name");
  const Text& text = found->second;
  assert(values.size() == text.longest.size() && "the values that it declares, and no others");
  fmt::dynamic_format_arg_store<fmt::format_context> store;
  for (const TextValue& value : values) {
    assert(text.longest.contains(value.name) && "a value that the text declares");
    store.push_back(fmt::arg(std::string(value.name).c_str(), value.value));
  }
  return fmt::vformat(text.words, store);
}

}  // namespace swathe
