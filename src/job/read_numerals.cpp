#include <algorithm>

#include "base/print.hpp"
#include "job/read_place.hpp"
#include "job/read_tables.hpp"

namespace swathe {
namespace {

void read_axes(TableReader& in, std::map<std::string, double>& axes) {
  constexpr std::size_t kTagSize = 4;  // OpenType, "Data types": a tag is four printable characters
  const toml::table* table = in.table("axes");
  if (!table) return;
  const auto& [count, range] = in.held<OfAxes>("axes");
  if (static_cast<int>(table->size()) > count.most)
    return in.fault(
        Why::TooLarge,
        fmt::format("numerals.axes has {} axes, expected at most {}", table->size(), count.most),
        table->source());
  for (const auto& [key, node] : *table) {
    const std::string_view tag = key.str();
    if (tag.size() != kTagSize ||
        !std::ranges::all_of(tag, [](char c) { return c >= ' ' && c <= '~'; })) {
      in.fault(Why::UnknownName,
               fmt::format("numerals.axes has an axis \"{}\", expected four letters like \"wght\"",
                           clip(tag)),
               key.source());
    } else if (const auto value =
                   in.read_number(node, "numerals.axes " + std::string(tag), range)) {
      axes[std::string(tag)] = *value;
    }
  }
}

void read_spacing(TableReader& in, NumeralSpacing& spacing) {
  const toml::node* node = in.take("spacing");
  spacing.tabular = node && in.word_in(*node, in.held<OfLengthOr>("spacing").words) == "tabular";
  in.read("spacing", spacing.extra);
}

void read_sides(TableReader& in, std::optional<std::vector<std::string>>& sides) {
  const toml::node* node = in.take("sides");
  if (!node) return;
  const std::string_view word = in.word_in(*node, in.held<OfSidesOr>("sides").words);
  if (word == "all") sides = in.file().sides;
  if (!word.empty()) return;
  if (!node->is_array())
    return in.wrong(node->is_string() ? Why::OutOfRange : Why::WrongType, *node, "numerals.sides",
                    "\"auto\", \"all\" or a list of sides");
  if (node->as_array()->empty())
    return in.wrong(
        Why::OutOfRange, *node, "numerals.sides",
        "\"auto\", \"all\", or the sides with the number, like [\"front\"]; for covers with no "
        "number, leave out job.number");
  in.read("sides", sides);
}

void read_places(TableReader& in, std::vector<NumeralPlaceKeys>& places) {
  in.tables("place", [&](const toml::table& table, int i) {
    TableReader place(in.file(), &table, "numerals", fmt::format("numerals.place {}: ", i + 1));
    NumeralPlaceKeys keys;
    read_keys(place, keys, [&](std::string_view key, std::optional<SidePlace>& center) {
      if (const toml::node* node = place.take(key))
        center = read_side_place(place, key, *node, keys.side);
    });
    const auto refuse_split = [&](Why why, const std::string& words) {
      place.fault(why, words, place.take("split")->source());
    };
    const std::string& number = in.file().job().number;
    if (keys.split > 0 && keys.center)
      refuse_split(
          Why::OutOfRange,
          "split is given beside center, expected one or the other: a split number stands at "
          "the gap");
    else if (keys.split > 0 && !number.empty() && keys.split >= static_cast<int>(number.size()))
      refuse_split(Why::OutOfRange,
                   fmt::format("split is {}, expected fewer than the {} digits of the number",
                               keys.split, number.size()));
    place.finish();
    places.push_back(std::move(keys));
  });
}

}  // namespace

void read_numerals(TableReader& root) {
  Job& job = root.file().job();
  NumeralKeys& numerals = job.numerals;
  const toml::table* table = root.table("numerals");
  TableReader in(root.file(), table, "numerals", "numerals.");
  read_keys(
      in, numerals,
      [&](std::string_view, std::map<std::string, double>& axes) { read_axes(in, axes); },
      [&](std::string_view, std::optional<std::vector<std::string>>& sides) {
        read_sides(in, sides);
      },
      [&](std::string_view, std::vector<NumeralPlaceKeys>& places) { read_places(in, places); },
      [&](std::string_view, NumeralSpacing& spacing) { read_spacing(in, spacing); });
  in.finish();
  if (numerals.sides && !numerals.places.empty())
    in.fault(Why::OutOfRange,
             "numerals.sides is given beside [[numerals.place]], expected one or the other",
             in.take("sides")->source());
}

}  // namespace swathe
