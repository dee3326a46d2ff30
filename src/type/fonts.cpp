#include <fmt/format.h>

#include <algorithm>
#include <cassert>

#include "base/embedded.hpp"
#include "base/nearest.hpp"
#include "base/print.hpp"
#include "base/toml.hpp"
#include "swathe/type.hpp"

namespace swathe {
namespace {

/// Our own list, built into the library: a fault in it is our bug.
toml::table list() { return toml::parse(embedded("type/fonts.toml")); }

std::string text_at(const toml::table& table, std::string_view key) {
  return table[key].value_or(std::string());
}

std::string lower(std::string_view text) {
  std::string result(text);
  for (char& c : result) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return result;
}

}  // namespace

std::vector<BundledFont> bundled_fonts() {
  const toml::table root = list();
  const toml::array* const entries = root["font"].as_array();
  assert(entries);
  std::vector<BundledFont> fonts;
  for (const toml::node& entry : *entries) {
    const toml::table& table = *entry.as_table();
    BundledFont font{
        text_at(table, "name"), "fonts/" + text_at(table, "file"), {}, text_at(table, "note")};
    if (const toml::table* const axes = table["axes"].as_table()) {
      for (const auto& [tag, value] : *axes) {
        font.axes[std::string(tag.str())] = value.value_or(0.0);
      }
    }
    fonts.push_back(std::move(font));
  }
  return fonts;
}

Outcome<BundledFont> bundled_font(std::string_view name) {
  const std::vector<BundledFont> fonts = bundled_fonts();
  std::vector<std::string> known;
  for (const BundledFont& font : fonts) known.push_back(lower(font.name));
  const std::string wanted = lower(name);
  const std::vector<std::string_view> names(known.begin(), known.end());
  const auto nearest = std::ranges::find(names, nearest_name(wanted, names)) - names.begin();
  const BundledFont& found = fonts[static_cast<std::size_t>(nearest)];
  if (lower(found.name) == wanted) return found;
  return refuse(
      Why::UnknownName,
      fmt::format("no font \"{}\" comes with swathe; the nearest one that does is \"{}\" "
                  "(\"swathe fonts\" lists them), expected one of them, or the path of a font "
                  "file: fonts of this computer are not looked up by name",
                  clip(name), found.name));
}

Outcome<Font> open_bundled(const BundledFont& font, const std::map<std::string, double>& axes) {
  std::map<std::string, double> all = axes;
  all.insert(font.axes.begin(), font.axes.end());  // keeps what is there
  return Font::open(embedded(font.file), all);
}

std::string_view label_font() { return embedded("fonts/" + text_at(list(), "label")); }

}  // namespace swathe
