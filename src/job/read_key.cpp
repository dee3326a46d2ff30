#include <algorithm>

#include "base/print.hpp"
#include "job/table_reader.hpp"

// Keys read by their description, each into a member of its type.
namespace swathe {
namespace {

/// Puts a value where it goes; whether there is one.
template <class T>
bool put(std::optional<T> value, T& out) {
  if (value) out = std::move(*value);
  return value.has_value();
}

}  // namespace

std::optional<Length> TableReader::read_length_or(const toml::node& node, const std::string& what,
                                                  const OfLengthOr& of) {
  const auto text = node.value_exact<std::string>();
  if (!word_in(node, of.words).empty()) return std::nullopt;
  if (!text || parse_length(*text, file_.units)) return read_length(node, what, of.range);
  std::string words;
  for (const std::string_view word : of.words)
    words += fmt::format("{}\"{}\"", words.empty() ? "" : ", ", word);
  wrong(Why::Malformed, node, what, words + " or a length");
  return std::nullopt;
}

bool TableReader::read(std::string_view key, Length& out) {
  const toml::node* node = take(key);
  if (!node) return false;
  if (const auto* of = std::get_if<OfLengthOr>(&holds(key)))
    return put(read_length_or(*node, name_of(key), *of), out);
  return put(read_length(*node, name_of(key), held<OfLength>(key).range), out);
}

bool TableReader::read(std::string_view key, Angle& out) {
  const toml::node* node = take(key);
  return node && put(read_angle(*node, name_of(key), held<OfAngle>(key).range), out);
}

bool TableReader::read(std::string_view key, double& out) {
  const toml::node* node = take(key);
  return node && put(read_number(*node, name_of(key), held<OfNumber>(key).range), out);
}

bool TableReader::read(std::string_view key, int& out) {
  const toml::node* node = take(key);
  if (!node) return false;
  const auto value = node->value_exact<std::int64_t>();
  const auto& [least, most] = held<OfCount>(key).range;
  if (value && *value >= least && *value <= most) return put(std::optional(int(*value)), out);
  wrong(value ? Why::OutOfRange : Why::WrongType, *node, name_of(key),
        fmt::format("a whole number, {} to {}", least, most));
  return false;
}

bool TableReader::read(std::string_view key, bool& out) {
  const toml::node* node = take(key);
  if (!node) return false;
  const auto value = node->value_exact<bool>();
  if (!value) wrong(Why::WrongType, *node, name_of(key), "true or false");
  return put(value, out);
}

bool TableReader::read(std::string_view key, Color& out) {
  const toml::node* node = take(key);
  return node && put(read_color(*node, name_of(key)), out);
}

std::optional<std::string> TableReader::read_digits(const toml::node& node, std::string_view key,
                                                    int most) {
  auto text = node.is_integer() ? plain_digits(node) : node.value_exact<std::string>();
  if (text && !text->empty() && text->size() <= static_cast<std::size_t>(most) &&
      std::ranges::all_of(*text, [](char c) { return c >= '0' && c <= '9'; }))
    return text;
  if (const auto whole = node.value_exact<std::int64_t>(); whole && *whole >= 0 && !text) {
    // 0x5006 or 20_486: a number of a team is not written so.
    fault(Why::WrongType,
          fmt::format("{} is {}, expected 1 to {} digits in quotes: type {} = \"{}\"", name_of(key),
                      clip(file_.places.written(node.source())), most, key, *whole),
          node.source());
    return std::nullopt;
  }
  wrong(text ? Why::OutOfRange : Why::WrongType, node, name_of(key),
        fmt::format("1 to {} digits, like {}", most, described_key(key)->value));
  return std::nullopt;
}

std::optional<std::string> TableReader::plain_digits(const toml::node& node) const {
  const std::string_view written = file_.places.written(node.source());
  const bool plain = std::ranges::all_of(written, [](char c) { return c >= '0' && c <= '9'; });
  return plain ? std::optional(std::string(written)) : std::nullopt;
}

bool TableReader::read(std::string_view key, std::string& out) {
  const toml::node* node = take(key);
  if (!node) return false;
  const std::string what = name_of(key);
  if (std::holds_alternative<OfSide>(holds(key))) return put(read_side(*node, what), out);
  if (std::holds_alternative<OfBumper>(holds(key))) return put(read_bumper(*node, what), out);
  if (const auto* of = std::get_if<OfDigits>(&holds(key)))
    return put(read_digits(*node, key, of->most), out);
  const OfText& of = held<OfText>(key);
  if (of.or_whole && node->is_integer())
    if (auto digits = plain_digits(*node)) return put(std::move(digits), out);
  return put(read_text(*node, what, of.most), out);
}

bool TableReader::read(std::string_view key, std::vector<Length>& out) {
  const OfLengths& of = held<OfLengths>(key);
  const toml::node* node = take(key);
  const toml::array* list = node ? read_list(*node, name_of(key), "lengths", of.count) : nullptr;
  if (!list) return false;
  std::vector<Length> all;
  for (const toml::node& item : *list)
    if (const auto one = read_length(item, name_of(key), of.range)) all.push_back(*one);
  return all.size() == list->size() && put(std::optional(std::move(all)), out);
}

bool TableReader::read(std::string_view key, std::array<Length, 2>& out) {
  const toml::node* node = take(key);
  return node && put(read_lengths<2>(*node, name_of(key), held<OfLengths>(key).range), out);
}

bool TableReader::read(std::string_view key, std::vector<std::string>& out) {
  const auto* sides_or = std::get_if<OfSidesOr>(&holds(key));
  const CountRange count = sides_or ? sides_or->count : held<OfSides>(key).count;
  const toml::node* node = take(key);
  const toml::array* list = node ? read_list(*node, name_of(key), "sides", count) : nullptr;
  if (!list) return false;
  std::vector<std::string> all;
  for (const toml::node& item : *list) {
    const auto name = read_side(item, name_of(key));
    if (!name) continue;
    if (std::ranges::count(all, *name) > 0)
      fault(
          Why::OutOfRange,
          fmt::format("{} names \"{}\" twice, expected each side once", name_of(key), clip(*name)),
          item.source());
    else
      all.push_back(*name);
  }
  return all.size() == list->size() && put(std::optional(std::move(all)), out);
}

}  // namespace swathe
