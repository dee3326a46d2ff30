#include <fmt/format.h>

#include <optional>

#include "base/limits.hpp"
#include "base/toml_text.hpp"
#include "job/key_path.hpp"
#include "job/keys.hpp"
#include "job/names.hpp"
#include "job/spelling.hpp"
#include "swathe/form.hpp"

namespace swathe {
namespace {

/// A key's path in its two parts: "numerals.place" and "center".
struct TableAndName {
  std::string_view table, name;
};
TableAndName parts_of(std::string_view path) {
  const auto dot = path.rfind('.');
  return {path.substr(0, dot), path.substr(dot + 1)};
}

const toml::node* node_at(const toml::table& root, std::string_view path) {
  const toml::table* table = &root;
  while (true) {
    const auto dot = path.find('.');
    const toml::node* node = table->get(path.substr(0, dot));
    if (dot == std::string_view::npos) return node;
    table = node ? node->as_table() : nullptr;
    if (!table) return nullptr;
    path.remove_prefix(dot + 1);
  }
}

class Fields {
 public:
  Fields(std::string_view text, const toml::table& root, const PlaceFinder& places)
      : text_(text), root_(root), places_(places) {}

  std::vector<Field> all() && {
    const std::span<const Key> keys = job_keys();
    for (std::size_t k = 0; k < keys.size();) {
      const std::string_view table = parts_of(keys[k].path).table;
      std::size_t end = k;
      while (end < keys.size() && parts_of(keys[end].path).table == table) ++end;
      add_table(table, keys.subspan(k, end - k));
      k = end;
    }
    return std::move(all_);
  }

 private:
  void add_table(std::string_view table, std::span<const Key> keys) {
    const toml::node* node = node_at(root_, table);
    if (!is_list_of_tables(table)) {
      const toml::table* here = node ? node->as_table() : nullptr;
      for (const Key& key : keys)
        if (is_asked(key.path)) add(key, std::string(key.path), here);
      return;
    }
    const toml::array* list = node ? node->as_array() : nullptr;
    for (std::size_t n = 0; list && n < list->size(); ++n)
      for (const Key& key : keys) add(key, with_number(key.path, n + 1), list->get(n)->as_table());
  }

  /// A frame is a rectangle or an outline, numbers stand by sides or by places, and only what comes
  /// off a roll has a width to tell.
  bool is_asked(std::string_view path) const {
    const auto has = [&](std::string_view key) { return node_at(root_, key) != nullptr; };
    const bool outline = has("frame.corners") || has("frame.sides");
    const bool rectangle = has("frame.width") || has("frame.depth");
    if (path == "frame.width" || path == "frame.depth") return rectangle || !outline;
    if (path == "frame.corners" || path == "frame.sides") return outline;
    if (path == "numerals.sides") return has(path) || !has("numerals.place");
    if (path != "paper.width") return true;
    const toml::node* sheet = node_at(root_, "paper.sheet");
    return has(path) || (sheet && sheet->value_exact<std::string>() == kRoll);
  }

  void add(const Key& key, std::string path, const toml::table* table) {
    Field field;
    field.key = std::move(path);
    field.form = key.path;
    const toml::node* node = table ? table->get(parts_of(key.path).name) : nullptr;
    if (node) {
      field.given = true;
      field.value = written(*node);
      field.place = places_.at(node->source());
      field.place.key = field.key;
    } else {
      if (key.given == Given::Default) field.value = key.value;
      field.place.line = 0;
    }
    field.shown = shown(field.value);
    all_.push_back(std::move(field));
  }

  /// A value as it stands in the text; a table of its own as one in braces.
  std::string written(const toml::node& node) const {
    const toml::table* table = node.as_table();
    if (table && !table->is_inline()) {
      std::string inside;
      for (const auto& [name, value] : *table)
        inside += fmt::format("{}{} = {}", inside.empty() ? "" : ", ", key_part(name.str()),
                              written(value));
      return "{ " + inside + " }";
    }
    if (!node.is_string() && !node.is_array() && !table)
      return std::string(places_.written(node.source()));
    const std::size_t begin = places_.byte_of(places_.at(node.source().begin));
    return std::string(text_.substr(begin, places_.byte_of(places_.at(node.source().end)) - begin));
  }

  static std::string shown(const std::string& value) {
    const std::string pair = "key = " + value;
    const auto table = parse_toml(pair, PlaceFinder(pair, ""), "the value", kMostJobBytes);
    if (!table) return value;
    const toml::node* node = table->get("key");
    return node ? node->value_exact<std::string>().value_or(value) : value;
  }

  std::string_view text_;
  const toml::table& root_;
  const PlaceFinder& places_;
  std::vector<Field> all_;
};

}  // namespace

Outcome<std::vector<Field>> fields_of(std::string_view text, const std::string& file) {
  text = without_byte_order_mark(text);
  const PlaceFinder places(text, file);
  auto root = parse_toml(text, places, "the job", kMostJobBytes, lists_of_tables());
  if (!root) return tl::unexpected(std::move(root.error()));
  spell_as_in_america(*root);
  return Fields(text, *root, places).all();
}

}  // namespace swathe
