#include "job/table_reader.hpp"

#include <algorithm>
#include <cmath>

#include "base/nearest.hpp"
#include "base/print.hpp"

namespace swathe {
namespace {

constexpr std::string_view kALength = "a length like \"5 in\" or \"127 mm\"";

std::optional<double> number_in(const toml::node& node) {
  if (const auto whole = node.value_exact<std::int64_t>()) return static_cast<double>(*whole);
  return node.value_exact<double>();
}

std::string quoted_list(const std::vector<std::string_view>& words) {
  std::string all;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) all += i + 1 == words.size() ? " or " : ", ";
    all += fmt::format("\"{}\"", words[i]);
  }
  return all;
}

std::vector<std::string_view> views(const std::vector<std::string>& names) {
  return {names.begin(), names.end()};
}

template <class T>
bool within(T value, T least, T most) {
  return value >= least && value <= most;
}

/// "0 in to 12 in"; limits that are whole millimeters and no simple inches stay millimeters.
std::string words_of(const LengthRange& range, Units units) {
  const auto simple = [](double value) { return std::abs(value - std::round(value)) < 1e-6; };
  const auto simple_inches = [&](Length length) { return simple(16 * length.inches()); };
  const bool both = simple_inches(range.least) && simple_inches(range.most);
  if (!both && simple(range.least.mm()) && simple(range.most.mm())) units = Units::Millimeters;
  return fmt::format("{} to {}", exact(range.least, units), exact(range.most, units));
}

}  // namespace

// --- single values ------------------------------------------------------------------------------

std::optional<Length> TableReader::read_length(const toml::node& node, const std::string& what,
                                               const LengthRange& range) {
  const Units units = file_.units;
  std::optional<Length> length;
  if (const auto text = node.value_exact<std::string>()) {
    length = parse_length(*text, units);
    if (!length) {
      wrong(Why::Malformed, node, what, kALength);
      return std::nullopt;
    }
  } else if (const auto number = number_in(node)) {
    length = units == Units::Inches ? inches(*number) : mm(*number);
  } else {
    wrong(Why::WrongType, node, what, kALength);
    return std::nullopt;
  }
  if (within(*length, range.least, range.most)) return length;
  wrong(Why::OutOfRange, node, what, words_of(range, units));
  return std::nullopt;
}

std::optional<double> TableReader::read_number(const toml::node& node, const std::string& what,
                                               const NumberRange& range) {
  const auto number = number_in(node);
  if (!number) {
    wrong(Why::WrongType, node, what, "a number");
    return std::nullopt;
  }
  if (within(*number, range.least, range.most)) return number;
  wrong(Why::OutOfRange, node, what,
        fmt::format("{} to {}", plain_number(range.least, 3), plain_number(range.most, 3)));
  return std::nullopt;
}

std::optional<std::string> TableReader::read_text(const toml::node& node, const std::string& what,
                                                  int most) {
  auto text = node.value_exact<std::string>();
  if (!text) {
    wrong(Why::WrongType, node, what, "a string");
    return std::nullopt;
  }
  const std::string expected = fmt::format("1 to {} printable characters", most);
  if (const auto code = first_unprintable(*text)) {
    unprintable(*code, node.source(), what, expected);
    return std::nullopt;
  }
  if (within(characters_in(*text), 1, most)) return text;
  wrong(Why::OutOfRange, node, what, expected);
  return std::nullopt;
}

std::optional<Color> TableReader::read_color(const toml::node& node, const std::string& what) {
  constexpr std::string_view kAColor = "a color like \"#b5121b\"";
  const auto text = node.value_exact<std::string>();
  const auto color = text ? parse_color(*text) : std::nullopt;
  if (!color) wrong(text ? Why::Malformed : Why::WrongType, node, what, kAColor);
  return color;
}

std::optional<std::string> TableReader::read_side(const toml::node& node, const std::string& what) {
  auto name = node.value_exact<std::string>();
  if (!name) {
    wrong(Why::WrongType, node, what, "the name of a side, like \"front\"");
    return std::nullopt;
  }
  if (!file_.sides || std::ranges::count(*file_.sides, *name) > 0) return name;
  wrong(Why::UnknownName, node, what,
        fmt::format("a side of the frame: {}", quoted_list(views(*file_.sides))));
  return std::nullopt;
}

bool TableReader::read_choice(const toml::node& node, const std::string& what,
                              const std::vector<std::string_view>& words, std::size_t& chosen) {
  const auto text = node.value_exact<std::string>();
  const auto found = text ? std::ranges::find(words, *text) : words.end();
  if (found == words.end()) {
    wrong(text ? Why::OutOfRange : Why::WrongType, node, what, quoted_list(words));
    return false;
  }
  chosen = static_cast<std::size_t>(found - words.begin());
  return true;
}

const toml::array* TableReader::read_list(const toml::node& node, const std::string& what,
                                          std::string_view items, const CountRange& count) {
  const toml::array* list = node.as_array();
  const int size = list ? static_cast<int>(list->size()) : 0;
  if (list && within(size, count.least, count.most)) return list;
  const Why why = !list ? Why::WrongType : size > count.most ? Why::TooLarge : Why::OutOfRange;
  wrong(why, node, what, fmt::format("a list of {} to {} {}", count.least, count.most, items));
  return nullptr;
}

// --- keys ---------------------------------------------------------------------------------------

void TableReader::length(std::string_view key, Length& out, const LengthRange& range) {
  if (const toml::node* node = take(key))
    out = read_length(*node, name_of(key), range).value_or(out);
}

void TableReader::length(std::string_view key, std::optional<Length>& out,
                         const LengthRange& range) {
  const toml::node* node = take(key);
  if (!node) return;
  if (const auto value = read_length(*node, name_of(key), range)) out = value;
}

void TableReader::angle(std::string_view key, Angle& out, const AngleRange& range) {
  constexpr std::string_view kAnAngle = "an angle like \"1 deg\" or \"15 arcmin\"";
  const toml::node* node = take(key);
  if (!node) return;
  std::optional<Angle> angle;
  if (const auto text = node->value_exact<std::string>()) {
    angle = parse_angle(*text);
    if (!angle) return wrong(Why::Malformed, *node, name_of(key), kAnAngle);
  } else if (const auto number = number_in(*node)) {
    angle = degrees(*number);
  } else {
    return wrong(Why::WrongType, *node, name_of(key), kAnAngle);
  }
  if (within(*angle, range.least, range.most)) {
    out = *angle;
  } else {
    wrong(Why::OutOfRange, *node, name_of(key),
          fmt::format("{} to {} deg", plain_number(range.least.degrees(), 3),
                      plain_number(range.most.degrees(), 3)));
  }
}

void TableReader::number(std::string_view key, double& out, const NumberRange& range) {
  if (const toml::node* node = take(key))
    out = read_number(*node, name_of(key), range).value_or(out);
}

void TableReader::number(std::string_view key, std::optional<double>& out,
                         const NumberRange& range) {
  const toml::node* node = take(key);
  if (!node) return;
  if (const auto value = read_number(*node, name_of(key), range)) out = value;
}

void TableReader::count(std::string_view key, int& out, const CountRange& range) {
  const toml::node* node = take(key);
  if (!node) return;
  const auto value = node->value_exact<std::int64_t>();
  if (value && within<std::int64_t>(*value, range.least, range.most)) {
    out = static_cast<int>(*value);
  } else {
    wrong(value ? Why::OutOfRange : Why::WrongType, *node, name_of(key),
          fmt::format("a whole number, {} to {}", range.least, range.most));
  }
}

void TableReader::flag(std::string_view key, bool& out) {
  const toml::node* node = take(key);
  if (!node) return;
  if (const auto value = node->value_exact<bool>())
    out = *value;
  else
    wrong(Why::WrongType, *node, name_of(key), "true or false");
}

void TableReader::color(std::string_view key, Color& out) {
  if (const toml::node* node = take(key)) out = read_color(*node, name_of(key)).value_or(out);
}

void TableReader::text(std::string_view key, std::string& out, int most) {
  const toml::node* node = take(key);
  if (!node) return;
  if (auto value = read_text(*node, name_of(key), most)) out = std::move(*value);
}

void TableReader::lengths(std::string_view key, std::vector<Length>& out, const LengthRange& range,
                          const CountRange& count) {
  const toml::node* node = take(key);
  const toml::array* list = node ? read_list(*node, name_of(key), "lengths", count) : nullptr;
  if (!list) return;
  std::vector<Length> all;
  for (const toml::node& item : *list)
    if (const auto one = read_length(item, name_of(key), range)) all.push_back(*one);
  if (all.size() == list->size()) out = std::move(all);
}

void TableReader::sides(std::string_view key, std::vector<std::string>& out) {
  const toml::node* node = take(key);
  const toml::array* list =
      node ? read_list(*node, name_of(key), "sides", {0, kSides.most}) : nullptr;
  if (!list) return;
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
  if (all.size() == list->size()) out = std::move(all);
}

void TableReader::side(std::string_view key, std::string& out) {
  const toml::node* node = take(key);
  if (!node) return;
  if (auto name = read_side(*node, name_of(key))) out = std::move(*name);
}

void TableReader::bumper(std::string_view key, std::string& out) {
  const toml::node* node = take(key);
  if (!node) return;
  const auto name = node->value_exact<std::string>();
  if (!name) return wrong(Why::WrongType, *node, name_of(key), "the name of a bumper, like \"A\"");
  if (!file_.bumpers || std::ranges::count(*file_.bumpers, *name) > 0)
    out = *name;
  else
    wrong(Why::UnknownName, *node, name_of(key),
          fmt::format("a bumper of this job: {}", quoted_list(views(*file_.bumpers))));
}

// --- the table ----------------------------------------------------------------------------------

const toml::node* TableReader::take(std::string_view key) {
  if (std::ranges::find(known_, key) == known_.end()) known_.push_back(key);
  return table_ ? table_->get(key) : nullptr;
}

bool TableReader::require(std::string_view key, std::string_view meaning) {
  if (take(key)) return true;
  if (table_)  // a table that is missing is a fault by itself
    fault_of(key, Why::Missing, fmt::format("{} is missing, expected {}", name_of(key), meaning),
             table_->source(), true);
  return false;
}

const toml::table* TableReader::table(std::string_view key) {
  const toml::node* node = take(key);
  if (!node || node->is_table()) return node ? node->as_table() : nullptr;
  fault_of(key, Why::WrongType,
           fmt::format("{} is {}, expected a table", name_of(key), described(*node)),
           node->source());
  return nullptr;
}

void TableReader::tables(std::string_view key, const CountRange& count,
                         const std::function<void(const toml::table&, int)>& read) {
  const toml::node* node = take(key);
  if (!node) return;
  const auto no_table = [&](const toml::node& wrong) {
    fault_of(
        key, Why::WrongType,
        fmt::format("{0} is {1}, expected [[{0}]], once for each", name_of(key), described(wrong)),
        wrong.source());
  };
  const toml::array* list = node->as_array();
  if (!list) return no_table(*node);
  if (static_cast<int>(list->size()) < count.least) no_table(*node);
  for (int i = 0; i < static_cast<int>(list->size()); ++i) {
    const toml::node& item = (*list)[static_cast<std::size_t>(i)];
    if (i == count.most)
      return fault_of(key, Why::TooLarge,
                      fmt::format("{} is there {} times, expected at most {}", name_of(key),
                                  list->size(), count.most),
                      item.source());
    if (const toml::table* one = item.as_table())
      read(*one, i);
    else
      no_table(item);
  }
}

void TableReader::finish() {
  const std::string table = table_name();
  for (const std::string_view key : known_) file_.keys.insert(table + std::string(key));
  if (!table_) return;
  for (const auto& [key, node] : *table_) {
    if (std::ranges::find(known_, key.str()) != known_.end()) continue;
    Place place = file_.places.at(key.source());
    place.key = file_.key_at(file_.places.at(node.source()));
    file_.fault(Why::UnknownKey,
                fmt::format("{} is not a key, the nearest known one is \"{}\"",
                            name_of(clip(key.str())), nearest_name(key.str(), known_)),
                std::move(place), unsound_);
  }
}

std::string TableReader::table_name() const {
  std::string name = before_.substr(0, before_.find(' '));
  return name.empty() || name.ends_with('.') ? name : name + ".";
}

void TableReader::wrong(Why why, const toml::node& node, const std::string& what,
                        std::string_view expected) {
  fault(why, fmt::format("{} is {}, expected {}", what, described(node), expected), node.source());
}

void TableReader::unprintable(char32_t code, const toml::source_region& at, const std::string& what,
                              std::string_view expected) {
  file_.fault(Why::OutOfRange,
              fmt::format("{} has the character {}, which cannot be printed, expected {}", what,
                          code_words(code), expected),
              file_.places.of_character(at, code), unsound_);
}

void TableReader::fault_of(std::string_view key, Why why, std::string sentence,
                           const toml::source_region& at, bool missing) {
  Place place = file_.places.at(at);
  if (missing) {  // the key to add is one of the table that stands there
    const std::string table =
        table_ == nullptr || unsound_.empty() ? std::string() : file_.key_at(place);
    place.key = table.empty() ? std::string(key) : table + "." + std::string(key);
  }
  file_.fault(why, std::move(sentence), std::move(place),
              unsound_.empty() ? std::string(key) : unsound_);
}

void TableReader::fault(Why why, std::string sentence, const toml::source_region& at) {
  file_.fault(why, std::move(sentence), file_.places.at(at), unsound_);
}

}  // namespace swathe
