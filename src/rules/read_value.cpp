#include "rules/read_value.hpp"

#include <fmt/format.h>

#include "swathe/base.hpp"

namespace swathe {
namespace {

constexpr Length kLongest = inches(12000);
constexpr double kHeaviestGrams = 1e6;

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

}  // namespace

std::optional<Length> rule_length(std::string_view text) {
  const auto length = parse_length(text, Units::Inches);
  // A number with no unit could be inches or millimeters; only zero needs none.
  if (!length || length != parse_length(text, Units::Millimeters)) return std::nullopt;
  if (*length < Length() || *length > kLongest) return std::nullopt;
  return length;
}

std::optional<Angle> rule_angle(std::string_view text) {
  const auto angle = parse_angle(text);
  if (!angle || *angle < Angle() || *angle > degrees(180)) return std::nullopt;
  return angle;
}

std::optional<rules::Mass> rule_mass(std::string_view text) {
  text = trimmed(text);
  for (const auto& [unit, grams] :
       {std::pair<std::string_view, double>{"lb", rules::Mass::kGramsPerPound}, {"kg", 1000.0}}) {
    if (!text.ends_with(unit)) continue;
    text.remove_suffix(unit.size());
    const auto number = parse_number(trimmed(text));
    if (!number || !(*number >= 0) || *number * grams > kHeaviestGrams) return std::nullopt;
    return rules::Mass{*number * grams};
  }
  return std::nullopt;
}

std::optional<Viewpoints> rule_viewpoints(std::string_view text) {
  if (text == "most") return Viewpoints::Most;
  if (text == "every") return Viewpoints::Every;
  return std::nullopt;
}

std::optional<Attested> rule_attested(std::string_view text) {
  for (const auto grade :
       {Attested::Official, Attested::Inferred, Attested::Quoted, Attested::Unverified}) {
    if (text == to_text(grade)) return grade;
  }
  return std::nullopt;
}

std::string in_words(Length value) { return exact(value, Units::Inches); }
std::string in_words(Angle value) { return plain_number(value.degrees(), 2) + " deg"; }
std::string in_words(rules::Mass value) { return plain_number(value.pounds(), 2) + " lb"; }
std::string in_words(rules::Zone value) {
  return in_words(value.from) + " to " + in_words(value.to);
}
std::string in_words(Viewpoints value) { return value == Viewpoints::Most ? "most" : "every"; }
std::string in_words(int value) { return fmt::format("{}", value); }
std::string in_words(bool value) { return value ? "yes" : "no"; }
std::string in_words(const std::vector<std::string>& value) {
  std::string list;
  for (const std::string& name : value) list += (list.empty() ? "" : ", ") + name;
  return list;
}

}  // namespace swathe
