#include <algorithm>
#include <cmath>

#include "base/print.hpp"
#include "job/spelling.hpp"
#include "job/table_reader.hpp"

// Single values of a job file, each with its fault.
namespace swathe {
namespace {

constexpr std::string_view kALength = "a length like \"5 in\" or \"127 mm\"";

std::optional<double> number_in(const toml::node& node) {
  if (const auto whole = node.value_exact<std::int64_t>()) return static_cast<double>(*whole);
  return node.value_exact<double>();
}

template <class T>
bool within(T value, T least, T most) {
  return value >= least && value <= most;
}

/// "0 in to 12 in": of limits that are no simple inches, the nearest within them that a tape
/// measure shows.
std::string words_of(const LengthRange& range, Units units) {
  if (units == Units::Millimeters)
    return fmt::format("{} to {}", exact(range.least, units), exact(range.most, units));
  const Length step = inches(1.0 / 16);
  const Length least = std::ceil(range.least / step - 1e-6) * step;
  const Length most = std::floor(range.most / step + 1e-6) * step;
  return fmt::format("{} to {}", exact(least, units), exact(most, units));
}

/// The name in a list as it is spelled there: the very name, else one that is the same but for
/// capitals; null where there is none.
const std::string* find_name(const std::vector<std::string>& names, const std::string& name) {
  auto found = std::ranges::find(names, name);
  if (found == names.end())
    found = std::ranges::find_if(
        names, [&](const std::string& one) { return same_but_for_case(one, name); });
  return found == names.end() ? nullptr : &*found;
}

}  // namespace

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

std::optional<Angle> TableReader::read_angle(const toml::node& node, const std::string& what,
                                             const AngleRange& range) {
  constexpr std::string_view kAnAngle = "an angle like \"1 deg\" or \"15 arcmin\"";
  const auto text = node.value_exact<std::string>();
  const auto number = number_in(node);
  const auto angle = text     ? parse_angle(*text)
                     : number ? std::optional(degrees(*number))
                              : std::nullopt;
  if (!angle) {
    wrong(text ? Why::Malformed : Why::WrongType, node, what, kAnAngle);
    return std::nullopt;
  }
  if (within(*angle, range.least, range.most)) return angle;
  wrong(Why::OutOfRange, node, what,
        fmt::format("{} to {} deg", plain_number(range.least.degrees(), 3),
                    plain_number(range.most.degrees(), 3)));
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
  if (!file_.sides) return name;
  if (const std::string* side = find_name(*file_.sides, *name)) return *side;
  wrong(Why::UnknownName, node, what,
        fmt::format("a side of the frame: {}", quoted_choice(*file_.sides)));
  return std::nullopt;
}

std::optional<std::string> TableReader::read_bumper(const toml::node& node,
                                                    const std::string& what) {
  auto name = node.value_exact<std::string>();
  if (!name) {
    wrong(Why::WrongType, node, what, "the name of a bumper, like \"A\"");
    return std::nullopt;
  }
  if (!file_.bumpers) return name;
  if (const std::string* bumper = find_name(*file_.bumpers, *name)) return *bumper;
  wrong(Why::UnknownName, node, what,
        fmt::format("a bumper of this job: {}", quoted_choice(*file_.bumpers)));
  return std::nullopt;
}

std::string_view TableReader::word_in(const toml::node& node,
                                      const std::vector<std::string_view>& words) {
  const auto text = node.value_exact<std::string>();
  const auto found = std::ranges::find_if(
      words, [&](std::string_view word) { return text && same_but_for_case(word, *text); });
  return found == words.end() ? std::string_view() : *found;
}

std::optional<std::string_view> TableReader::read_word(const toml::node& node,
                                                       const std::string& what,
                                                       const std::vector<std::string_view>& words) {
  if (const std::string_view word = word_in(node, words); !word.empty()) return word;
  wrong(node.is_string() ? Why::OutOfRange : Why::WrongType, node, what,
        quoted_choice(std::vector<std::string>(words.begin(), words.end())));
  return std::nullopt;
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

}  // namespace swathe
