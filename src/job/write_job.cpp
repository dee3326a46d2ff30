#include <fmt/format.h>

#include <array>
#include <cassert>
#include <concepts>
#include <optional>
#include <tuple>
#include <type_traits>

#include "job/each_key.hpp"
#include "job/keys.hpp"
#include "job/names.hpp"
#include "swathe/job.hpp"

namespace swathe {
namespace {

/// A TOML basic string. Control characters, which a job built in code may hold and no key takes,
/// are escaped, so that they are refused at their key and never end a line.
std::string quoted(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    if ((c >= 0 && c < ' ') || c == '\x7f') {
      out += fmt::format("\\u{:04x}", static_cast<int>(c));
      continue;
    }
    if (c == '"' || c == '\\') out += '\\';
    out += c;
  }
  return out + "\"";
}

/// The shortest decimals that read as the same number; lengths and angles know no exponent.
std::string shortest(double value) {
  constexpr int kMostPlaces = 360;  // beyond the smallest double
  value += 0.0;                     // no minus before a zero
  std::string text = fmt::format("{}", value);
  return text.find('e') == std::string::npos ? text : plain_number(value, kMostPlaces);
}

std::string said(Length length) { return quoted(shortest(length.mm()) + " mm"); }
std::string said(Angle angle) { return quoted(shortest(angle.radians()) + " rad"); }
std::string said(double value) { return shortest(value); }
std::string said(int value) { return fmt::format("{}", value); }
std::string said(bool value) { return value ? "true" : "false"; }
std::string said(const std::string& text) { return quoted(text); }
std::string said(const Color& color) { return quoted(to_text(color)); }
template <class T>
requires std::is_enum_v<T> std::string said(T value) { return quoted(word_for(value)); }
std::string said(FlatPoint point) {
  return fmt::format("[{}, {}]", said(mm(point.x)), said(mm(point.y)));
}

std::string said(SideShare share) {
  // A share was read as percent: so many places bring back what was written.
  return quoted(plain_number(100 * share.fraction, 12) + "%");
}
/// A distance and its corner, as they stand within a list.
std::string listed(const FromCorner& from) {
  return fmt::format("{}, {}", said(from.distance), said(from.neighbor));
}
std::string said(const FromCorner& from) { return "[" + listed(from) + "]"; }
std::string said(const SidePlace& place) {
  return std::visit([](const auto& one) { return said(one); }, place);
}

template <class Items>
std::string said_list(const Items& items) {
  std::string out;
  for (const auto& item : items) out += (out.empty() ? "" : ", ") + said(item);
  return "[" + out + "]";
}
template <class T>
std::string said(const std::vector<T>& items) {
  return said_list(items);
}
template <class T, std::size_t N>
std::string said(const std::array<T, N>& items) {
  return said_list(items);
}
template <class T>
std::string said(const std::optional<T>& value) {
  return value ? said(*value) : std::string();
}
template <class A, class B>
std::string said(const std::tuple<A, B>& pair) {
  return fmt::format("[{}, {}]", said(std::get<0>(pair)), said(std::get<1>(pair)));
}

std::string said(const std::vector<ClothColor>& colors) {
  std::string out;
  for (const ClothColor& color : colors)
    out += fmt::format("{}{} = {}", out.empty() ? "" : ", ", quoted(color.name), said(color.srgb));
  return "{ " + out + " }";
}
std::string said(const std::map<std::string, double>& axes) {
  std::string out;
  for (const auto& [tag, value] : axes)
    out += fmt::format("{}{} = {}", out.empty() ? "" : ", ", quoted(tag), said(value));
  return "{ " + out + " }";
}
std::string said(const NumeralSpacing& spacing) {
  if (spacing.tabular) return quoted("tabular");
  return spacing.extra == Length() ? std::string() : said(spacing.extra);
}
std::string said(const RunEnd& end) {
  struct Along {
    std::string operator()(SideShare share) const { return said(share); }
    std::string operator()(const FromCorner& from) const { return listed(from); }
    std::string operator()(RunEnd::Corner) const { return quoted("corner"); }
    std::string operator()(RunEnd::Opening) const { return quoted("opening"); }
  };
  return fmt::format("[{}, {}]", said(end.side), std::visit(Along(), end.at));
}

/// Whether an optional key is left out; of other types, an unset member says so.
bool is_left_out(const std::string& text) { return text.empty(); }
bool is_left_out(int count) { return count <= 0; }
template <class T>
bool is_left_out(const T&) {
  return false;
}

/// The keys of a table, and lists of such tables.
template <class T>
concept Table = requires(const T& keys) {
  each_key(keys, [](auto&&...) {});
};
template <class T>
concept Tables = Table<typename T::value_type>;

template <Table Keys>
std::string table_text(const std::string& path, const Keys& keys);

/// A line for each key of a table, and the tables below it.
struct Lines {
  std::string path;
  std::string keys = {};
  std::string below = {};

  void line(std::string_view name, const std::string& value) {
    keys += fmt::format("{} = {}\n", name, value);
  }
  std::string path_of(std::string_view name) const { return fmt::format("{}.{}", path, name); }

  template <class T>
  void operator()(std::string_view name, const T& member) {
    const Key* key = find_key(path_of(name));
    assert(key && "every key that is written is described");
    if (key->given == Given::Optional && is_left_out(member)) return;
    if (const std::string value = said(member); !value.empty()) line(name, value);
  }
  template <Table Keys>
  void operator()(std::string_view name, const Keys& table) {
    below += table_text(path_of(name), table);
  }
  template <Tables List>
  void operator()(std::string_view name, const List& tables) {
    for (const auto& table : tables) below += table_text(path_of(name), table);
  }
  /// A paper: its name, or its size. The width is a key by itself where it comes off a roll.
  void operator()(std::string_view name,
                  const std::tuple<const std::string&, const Length&, const Length&>& paper) {
    const auto& [sheet, width, height] = paper;
    line(name, sheet == kOwnSize ? said(std::tie(width, height)) : said(sheet));
    if (sheet == kRoll) line("width", said(width));
  }
};

template <Table Keys>
std::string table_text(const std::string& path, const Keys& keys) {
  Lines lines{path};
  each_key(keys, lines);
  const std::string head = is_list_of_tables(path) ? "[" + path + "]" : path;
  return fmt::format("\n[{}]\n{}{}", head, lines.keys, lines.below);
}

}  // namespace

std::string job_text(const Job& job) {
  std::string text = table_text("job", job) + table_text("frame", job.frame) +
                     table_text("boards", job.boards) + table_text("padding", job.padding) +
                     table_text("cloth", job.cloth);
  for (const OpeningKeys& opening : job.openings) text += table_text("opening", opening);
  for (const BumperKeys& bumper : job.bumpers) text += table_text("bumper", bumper);
  for (const BracketKeys& bracket : job.brackets) text += table_text("bracket", bracket);
  text += table_text("numerals", job.numerals) + table_text("sight", job.sight) +
          table_text("paper", job.paper);
  return text.substr(1);
}

}  // namespace swathe
