#include "job/job_schema.hpp"

#include <fmt/format.h>

#include <cassert>
#include <nlohmann/json.hpp>

#include "base/toml.hpp"
#include "job/keys.hpp"
#include "job/spelling.hpp"
#include "swathe/job.hpp"

namespace swathe {
namespace {

using Json = nlohmann::ordered_json;

Json to_json(const toml::node& node) {
  if (const auto text = node.value_exact<std::string>()) return *text;
  if (const auto whole = node.value_exact<std::int64_t>()) return *whole;
  if (const auto number = node.value_exact<double>()) return *number;
  if (const auto flag = node.value_exact<bool>()) return *flag;
  if (const toml::array* list = node.as_array()) {
    Json all = Json::array();
    for (const toml::node& item : *list) all.push_back(to_json(item));
    return all;
  }
  Json all = Json::object();
  const toml::table* table = node.as_table();
  assert(table && "no key of ours holds a date");
  for (const auto& [key, value] : *table) all[std::string(key.str())] = to_json(value);
  return all;
}

Json value_of(const Key& key) {
  const toml::table table = toml::parse(fmt::format("key = {}", key.value));
  return to_json(*table.get("key"));
}

Json text_of(std::string pattern) { return {{"type", "string"}, {"pattern", std::move(pattern)}}; }
Json any_of(std::vector<Json> kinds) { return {{"anyOf", std::move(kinds)}}; }
Json words(const std::vector<std::string_view>& list) { return {{"enum", list}}; }

Json list_of(Json item, const CountRange& count) {
  return {{"type", "array"},
          {"items", std::move(item)},
          {"minItems", count.least},
          {"maxItems", count.most}};
}

/// A list of one each of these, in this order.
Json tuple_of(std::vector<Json> items) {
  const std::size_t count = items.size();
  return {{"type", "array"}, {"items", std::move(items)}, {"minItems", count}, {"maxItems", count}};
}

/// What a key may hold.
struct Kind {
  Json operator()(const OfLength& of) const { return length(of.range); }
  Json operator()(const OfLengths& of) const { return list_of(length(of.range), of.count); }
  Json operator()(const OfLengthOr& of) const {
    return any_of({words(of.words), length(of.range)});
  }
  Json operator()(const OfPoints& of) const {
    return list_of(list_of(length(of.range), {of.lengths, of.lengths}), of.count);
  }
  Json operator()(const OfAngle& of) const {
    return any_of(
        {text_of(angle_pattern()), number(of.range.least.degrees(), of.range.most.degrees())});
  }
  Json operator()(const OfNumber& of) const { return number(of.range.least, of.range.most); }
  Json operator()(const OfCount& of) const {
    return {{"type", "integer"}, {"minimum", of.range.least}, {"maximum", of.range.most}};
  }
  Json operator()(const OfFlag&) const { return {{"type", "boolean"}}; }
  Json operator()(const OfText& of) const {
    return of.or_whole ? any_of({text(of.most), whole_number()}) : text(of.most);
  }
  Json operator()(const OfDigits& of) const {
    Json bare = whole_number();
    bare["maximum"] = std::stoi(std::string(static_cast<std::size_t>(of.most), '9'));
    return any_of({text_of(fmt::format("^[0-9]{{1,{}}}$", of.most)), bare});
  }
  Json operator()(const OfChoice& of) const { return words(of.words); }
  Json operator()(const OfColor&) const { return text_of("^#([0-9a-fA-F]{3}|[0-9a-fA-F]{6})$"); }
  Json operator()(const OfColors& of) const {
    return {{"type", "object"},
            {"propertyNames", {{"minLength", 1}, {"maxLength", of.most}}},
            {"additionalProperties", (*this)(OfColor())},
            {"minProperties", of.count.least},
            {"maxProperties", of.count.most}};
  }
  Json operator()(const OfAxes& of) const {
    return {{"type", "object"},
            {"propertyNames", {{"pattern", "^[ -~]{4}$"}}},
            {"additionalProperties", number(of.range.least, of.range.most)},
            {"maxProperties", of.count.most}};
  }
  Json operator()(const OfNames& of) const { return list_of(text(of.most), of.count); }
  Json operator()(const OfSide&) const { return text(kMostName); }
  Json operator()(const OfSides& of) const {
    Json list = list_of(text(kMostName), of.count);
    list["uniqueItems"] = true;
    return list;
  }
  Json operator()(const OfSidesOr& of) const {
    return any_of({words(of.words), (*this)(OfSides{of.count})});
  }
  Json operator()(const OfBumper&) const { return text(kMostName); }
  Json operator()(const OfEnd& of) const {
    return any_of({tuple_of({text(kMostName), any_of({words(of.words), share()})}),
                   tuple_of({text(kMostName), length(of.range), text(kMostName)})});
  }
  Json operator()(const OfSidePlace& of) const {
    return any_of({share(), tuple_of({length(of.range), text(kMostName)})});
  }
  Json operator()(const OfPaper& of) const {
    std::vector<std::string> names;
    for (const Paper& paper : papers()) names.push_back(paper.name);
    names.emplace_back(kRoll);
    return any_of({{{"enum", names}}, list_of(length(of.range), {2, 2})});
  }

 private:
  static Json number(double least, double most) {
    return {{"type", "number"}, {"minimum", least}, {"maximum", most}};
  }
  static Json share() { return text_of("^-?[0-9.]+([eE][-+]?[0-9]+)? *%$"); }
  static Json whole_number() { return {{"type", "integer"}, {"minimum", 0}}; }
  static Json text(int most) { return {{"type", "string"}, {"minLength", 1}, {"maxLength", most}}; }
  /// A bare number is inches or millimeters: what may be either may be the wider.
  static Json length(const LengthRange& range) {
    const auto [least, most] = range;
    return any_of({text_of(length_pattern()), number(least < Length() ? least.mm() : least.inches(),
                                                     most < Length() ? most.inches() : most.mm())});
  }
};

Json schema_of(const Key& key) {
  Json out = {{"title", key.label}, {"description", fmt::format("{}. {}", key.meaning, key.why)}};
  out.update(std::visit(Kind(), key.holds));
  if (key.given == Given::Default)
    out["default"] = value_of(key);
  else
    out["examples"] = Json::array({value_of(key)});
  return out;
}

/// A frame is a rectangle or an outline.
void ask_for_frame(Json& frame) {
  frame.erase("required");
  const Json neither = {{"width", false}, {"depth", false}};
  frame["oneOf"] = {
      {{"required", {"width", "depth"}}, {"properties", {{"corners", false}, {"sides", false}}}},
      {{"required", {"corners", "sides"}}, {"properties", neither}}};
}

/// "place" of "numerals.place", where `table` is "numerals"; nothing where it is not right below.
std::string_view below(std::string_view path, std::string_view table) {
  if (!table.empty()) {
    if (!path.starts_with(table) || path.size() <= table.size() || path[table.size()] != '.')
      return {};
    path.remove_prefix(table.size() + 1);
  }
  return path.find('.') == std::string_view::npos ? path : std::string_view();
}

Json schema_of_table(std::string_view path) {
  Json properties = Json::object();
  std::vector<std::string> needed;
  for (const Key& key : job_keys())
    if (const auto name = below(key.path, path); !name.empty()) {
      for (const std::string& spelled : {std::string(name), british(name)})
        properties[spelled] = schema_of(key);
      if (key.given == Given::Needed) needed.emplace_back(name);
    }
  for (const KeyTable& table : job_tables())
    if (const auto name = below(table.path, path); !name.empty()) {
      Json one = schema_of_table(table.path);
      properties[std::string(name)] = table.many ? list_of(std::move(one), *table.many) : one;
      if (table.needed) needed.emplace_back(name);
    }
  Json out = {{"type", "object"}, {"properties", properties}, {"additionalProperties", false}};
  if (!needed.empty()) out["required"] = needed;
  if (path == "frame") ask_for_frame(out);
  return out;
}

// As parse_length() reads them; a sign such as ½ may stand for a share.
constexpr std::string_view kNumber =
    "([0-9.]+(/[0-9]+|-[0-9]+/[0-9]+|[ \\t]*[0-9]+/[0-9]+|(-|[ \\t]*)(½|¼|¾|⅛|⅜|⅝|⅞|⅓|⅔))?"
    "|(½|¼|¾|⅛|⅜|⅝|⅞|⅓|⅔))";

}  // namespace

std::string length_pattern() {
  constexpr std::string_view kUnit =
      "((in|ft|yd)(\\.(?![0-9]))?|inch|inches|\"|''|″|”|“|’’|foot|feet|'|′|’|‘|yard|yards|mm|cm|m)";
  return fmt::format(R"(^[ \t]*-?{0}[ \t]*({1}[ \t]*({0}[ \t]*{1}[ \t]*)*)?$)", kNumber, kUnit);
}

std::string angle_pattern() {
  return fmt::format("^[ \\t]*-?{}[ \\t]*(deg|\xc2\xb0|arcmin|rad)?[ \\t]*$", kNumber);
}

std::string job_schema() {
  Json out = {{"$schema", "http://json-schema.org/draft-07/schema#"},
              {"title", "A job of swathe"},
              {"description", "One robot's bumper covers and numerals, as a TOML file."}};
  out.update(schema_of_table(""));
  return out.dump(2) + '\n';
}

}  // namespace swathe
