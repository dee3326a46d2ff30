#include <algorithm>

#include "base/print.hpp"
#include "job/read_tables.hpp"

namespace swathe {
namespace {

bool is_word(const toml::node& node, std::string_view word) {
  return node.value_exact<std::string_view>() == word;
}

/// A key that is a word or something else: the word leaves the default.
const toml::node* take_unless(TableReader& in, std::string_view key, std::string_view word) {
  const toml::node* node = in.take(key);
  return node && !is_word(*node, word) ? node : nullptr;
}

void read_axes(TableReader& in, std::map<std::string, double>& axes) {
  constexpr std::size_t kTagSize = 4;  // OpenType, "Data types": a tag is four printable characters
  const toml::table* table = in.table("axes");
  if (!table) return;
  if (static_cast<int>(table->size()) > kAxes.most)
    return in.fault(
        Why::TooLarge,
        fmt::format("numerals.axes has {} axes, expected at most {}", table->size(), kAxes.most),
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
                   in.read_number(node, "numerals.axes " + std::string(tag), kAxis)) {
      axes[std::string(tag)] = *value;
    }
  }
}

void read_spacing(TableReader& in, NumeralSpacing& spacing) {
  const toml::node* node = take_unless(in, "spacing", "font");
  if (!node) return;
  if (is_word(*node, "tabular")) {
    spacing.tabular = true;
  } else if (node->is_string() &&
             !parse_length(node->value_or(std::string_view()), in.file().units)) {
    in.wrong(Why::Malformed, *node, "numerals.spacing", "\"font\", \"tabular\" or a length");
  } else if (const auto extra = in.read_length(*node, "numerals.spacing", kDigitSpacing)) {
    spacing.extra = *extra;
  }
}

void read_height(TableReader& in, std::optional<Length>& height) {
  const toml::node* node = take_unless(in, "height", "season");
  if (!node) return;
  if (node->is_string() && !parse_length(node->value_or(std::string_view()), in.file().units))
    in.wrong(Why::Malformed, *node, "numerals.height", "\"season\" or a length");
  else if (const auto value = in.read_length(*node, "numerals.height", kNumeralHeight))
    height = value;
}

void read_sides(TableReader& in, std::optional<std::vector<std::string>>& sides) {
  const toml::node* node = take_unless(in, "sides", "auto");
  if (!node) return;
  if (!node->is_array())
    return in.wrong(node->is_string() ? Why::OutOfRange : Why::WrongType, *node, "numerals.sides",
                    "\"auto\" or a list of sides");
  if (node->as_array()->empty())
    return in.wrong(Why::OutOfRange, *node, "numerals.sides",
                    "\"auto\", or the sides with the number, like [\"front\"]; for covers with no "
                    "number, leave out job.number");
  std::vector<std::string> read;
  in.sides("sides", read);
  if (!read.empty()) sides = std::move(read);
}

void read_places(TableReader& in, std::vector<NumeralPlaceKeys>& places) {
  in.tables("place", kNumeralPlaces, [&](const toml::table& table, int i) {
    TableReader place(in.file(), &table, "numerals", fmt::format("numerals.place {}: ", i + 1));
    NumeralPlaceKeys keys;
    place.require("bumper", "the name of a bumper, like \"A\"");
    place.require("side", "a side of that bumper, like \"front\"");
    place.bumper("bumper", keys.bumper);
    place.side("side", keys.side);
    place.length("center", keys.center, kAlong);
    place.count("split", keys.split, kSplit);
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
  in.text("font", numerals.font, kMostPath);
  read_axes(in, numerals.axes);
  read_height(in, numerals.height);
  read_sides(in, numerals.sides);
  read_places(in, numerals.places);
  read_spacing(in, numerals.spacing);
  in.choice("method", numerals.method, kMethodWords);
  in.color("color", numerals.color);
  in.length("outline", numerals.outline, kSmallGap);
  in.flag("make_legal", numerals.make_legal);
  in.length("bridge", numerals.bridge, kBridge);
  in.count("spares", numerals.spares, kSpares);
  in.finish();
  if (numerals.sides && !numerals.places.empty())
    in.fault(Why::OutOfRange,
             "numerals.sides is given beside [[numerals.place]], expected one or the other",
             in.take("sides")->source());
}

}  // namespace swathe
