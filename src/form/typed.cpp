#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "form/steps.hpp"
#include "job/key_path.hpp"
#include "job/keys.hpp"
#include "job/spelling.hpp"
#include "swathe/form.hpp"

namespace swathe {
namespace {

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view kBlanks = " \t\r\n";
  const auto first = text.find_first_not_of(kBlanks);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(kBlanks) - first + 1);
}

std::string_view without_quotes(std::string_view text) {
  text = trimmed(text);
  if (text.size() >= 2 && text.front() == text.back() &&
      (text.front() == '"' || text.front() == '\''))
    return text.substr(1, text.size() - 2);
  return text;
}

bool is_list(std::string_view text) { return text.starts_with('[') || text.starts_with('{'); }

/// "front, back" as a list of what `item` makes of each.
template <class Item>
std::string list_of(std::string_view text, Item item) {
  std::string list;
  while (!text.empty()) {
    const auto comma = text.find(',');
    list += (list.empty() ? "" : ", ") + item(without_quotes(text.substr(0, comma)));
    text.remove_prefix(comma == std::string_view::npos ? text.size() : comma + 1);
  }
  return "[" + list + "]";
}

/// What was typed, as TOML, by what the key holds.
class ValueTyped {
 public:
  ValueTyped(std::string_view typed, int steps, Units units)
      : typed_(trimmed(typed)), steps_(steps), units_(units) {}

  std::string reads;

  std::string operator()(const OfLength&) { return length(); }
  std::string operator()(const OfLengthOr& of) { return is_one_of(of.words) ? quoted() : length(); }
  std::string operator()(const OfLengths&) {
    return is_list(typed_) ? std::string(typed_)
                           : list_of(typed_, [&](std::string_view one) { return with_unit(one); });
  }
  std::string operator()(const OfAngle&) {
    const auto angle = parse_angle(without_quotes(typed_));
    if (!angle || steps_ == 0) return quoted();
    return quoted_text(plain_number(stepped(angle->degrees(), 1, steps_), 6) + " deg");
  }
  std::string operator()(const OfNumber&) { return number(); }
  std::string operator()(const OfCount&) { return number(); }
  std::string operator()(const OfFlag&) { return std::string(without_quotes(typed_)); }
  std::string operator()(const OfColors&) { return std::string(typed_); }
  std::string operator()(const OfAxes&) { return std::string(typed_); }
  std::string operator()(const OfPoints&) { return std::string(typed_); }
  std::string operator()(const OfEnd&) { return list_or_text(); }
  std::string operator()(const OfSidePlace&) { return list_or_text(); }
  std::string operator()(const OfPaper&) { return list_or_text(); }
  std::string operator()(const OfNames&) { return names(); }
  std::string operator()(const OfSides&) { return names(); }
  std::string operator()(const OfSidesOr& of) { return is_one_of(of.words) ? quoted() : names(); }
  template <class Text>
  std::string operator()(const Text&) {
    return quoted();
  }

 private:
  std::string quoted() const { return quoted_text(without_quotes(typed_)); }
  std::string names() const {
    return is_list(typed_) ? std::string(typed_) : list_of(typed_, quoted_text);
  }
  std::string list_or_text() const { return is_list(typed_) ? std::string(typed_) : quoted(); }

  bool is_one_of(const std::vector<std::string_view>& words) const {
    return std::ranges::any_of(words, [&](std::string_view word) {
      return same_but_for_case(word, without_quotes(typed_));
    });
  }

  /// A comma between digits is a point where people write it so.
  std::string number() const {
    std::string text(without_quotes(typed_));
    std::ranges::replace(text, ',', '.');
    const auto value = parse_number(text);
    return value && steps_ != 0 ? plain_number(stepped(*value, 1, steps_), 6) : text;
  }

  /// As typed, and with the job's unit where it has none.
  std::string with_unit(std::string_view text) const {
    const bool bare = parse_length(text, Units::Inches) != parse_length(text, Units::Millimeters);
    return quoted_text(bare ? fmt::format("{} {}", text, units_ == Units::Inches ? "in" : "mm")
                            : std::string(text));
  }

  std::string length() {
    const std::string_view text = without_quotes(typed_);
    auto value = parse_length(text, units_);
    if (!value) return quoted();
    if (steps_ != 0) value = stepped_length(*value, units_, steps_);
    reads = fmt::format("{} = {}", exact(*value, units_), exact(*value, other()));
    return steps_ != 0 ? quoted_text(exact(*value, units_)) : with_unit(text);
  }
  Units other() const { return units_ == Units::Inches ? Units::Millimeters : Units::Inches; }

  std::string_view typed_;
  int steps_;
  Units units_;
};

bool is_about(const Refusal& fault, const std::string& key) {
  const std::string& at = fault.place.key;
  return at == key || at.starts_with(key + ".");
}

}  // namespace

Outcome<Typed> typed_value(std::string_view text, std::string_view key, std::string_view typed,
                           int steps, const std::string& file) {
  const auto named = read_key_path(key, file);
  if (!named) return tl::unexpected(named.error());
  if (!named->key)
    return refuse(Why::WrongType, fmt::format("{} is a table, expected one of its keys", key),
                  {file, 1, 1});
  Typed out;
  const bool taken_out = trimmed(typed).empty();
  if (!taken_out) {
    ValueTyped value(typed, steps, read_job(text, file).job.units);
    if (named->whole)
      out.value = std::visit(value, named->key->holds);
    else
      out.value = trimmed(typed);
    out.reads = value.reads;
  }
  auto change = taken_out ? remove_value(text, key, file) : set_value(text, key, out.value, file);
  if (taken_out && !change && change.error().front().why == Why::Missing) return out;
  if (!change) return tl::unexpected(std::move(change.error()));
  Refusals faults;
  for (Refusal& fault : read_job(change->text, file).faults)
    if (is_about(fault, change->key)) faults.push_back(std::move(fault));
  if (!faults.empty()) return tl::unexpected(std::move(faults));
  return out;
}

}  // namespace swathe
