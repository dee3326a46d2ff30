#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "base/limits.hpp"
#include "base/nearest.hpp"
#include "base/print.hpp"
#include "base/toml_text.hpp"
#include "check/measured_value.hpp"
#include "swathe/check.hpp"

// A card that was filled in, read and judged.
namespace swathe {
namespace {

constexpr std::string_view kWriteAnew = "\"swathe new --measured JOB\" writes them anew";

std::string trimmed(const std::string& text) {
  const auto first = text.find_first_not_of(" \t");
  if (first == std::string::npos) return "";
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

/// A value as it would stand in quotes; nothing of a list, a table or a date.
std::optional<std::string> as_text(const toml::node& node) {
  if (const auto text = node.value_exact<std::string>()) return trimmed(*text);
  if (const auto flag = node.value_exact<bool>()) return *flag ? "yes" : "no";
  if (const auto whole = node.value_exact<std::int64_t>()) return std::to_string(*whole);
  if (const auto number = node.value_exact<double>()) return plain_number(*number, 6);
  return std::nullopt;
}

class Reader {
 public:
  Reader(const std::vector<CardRow>& rows, const PlaceFinder& places, Units units)
      : rows_(rows), places_(places), units_(units), found_(rows.size()) {
    for (const CardRow& row : rows) judged_.push_back({row, "", Verdict::Unknown, ""});
  }

  Outcome<std::vector<MeasuredRow>> read(const toml::table& root) {
    for (const auto& [key, node] : root)
      if (key.str() != "row") unknown(key, {"row"});
    if (const toml::node* list = root.get("row")) read_list(*list);
    if (faults_.empty()) return std::move(judged_);
    std::ranges::stable_sort(faults_, {}, [](const Refusal& fault) {
      return std::pair(fault.place.line, fault.place.column);
    });
    return tl::unexpected(std::move(faults_));
  }

 private:
  void fault(Why why, std::string sentence, const toml::source_region& at) {
    faults_.push_back({why, std::move(sentence), places_.at(at)});
  }

  void unknown(const toml::key& key, const std::vector<std::string_view>& known) {
    fault(Why::UnknownKey,
          fmt::format("{} is not a key, the nearest known one is \"{}\"", clip(key.str()),
                      nearest_name(key.str(), known)),
          key.source());
  }

  void read_list(const toml::node& node) {
    const toml::array* list = node.as_array();
    if (!list)
      return fault(Why::WrongType,
                   fmt::format("row is {}, expected [[row]], once for each", described(node)),
                   node.source());
    for (const toml::node& item : *list) {
      if (const toml::table* table = item.as_table())
        read_row(*table);
      else
        fault(Why::WrongType, fmt::format("row is {}, expected [[row]]", described(item)),
              item.source());
    }
  }

  void read_row(const toml::table& table) {
    for (const auto& [key, node] : table)
      if (std::ranges::find(kKeys, key.str()) == kKeys.end())
        unknown(key, {kKeys.begin(), kKeys.end()});
    for (const char* const key : {"asks", "plan"})  // a row may do without them
      if (const toml::node* node = table.get(key); node && !node->is_string())
        fault(Why::WrongType, fmt::format("{} is {}, expected a text", key, described(*node)),
              node->source());
    const auto number = row_of(table);
    if (!number) return;
    if (const toml::node* node = table.get("measured")) judge(*node, judged_[*number]);
  }

  /// Which line of the card a row is; a fault where it is none.
  std::optional<std::size_t> row_of(const toml::table& table) {
    const toml::node* node = table.get("what");
    const auto what = node ? node->value_exact<std::string>() : std::nullopt;
    if (!what) {
      fault(node ? Why::WrongType : Why::Missing,
            fmt::format("what is {}, expected a line of the card, like \"{}\"",
                        node ? described(*node) : "missing", rows_.front().what),
            node ? node->source() : table.source());
      return std::nullopt;
    }
    const auto number = matching(*what, table["asks"].value_exact<std::string>());
    if (!number) {
      std::vector<std::string_view> names;
      for (const CardRow& row : rows_) names.push_back(row.what);
      const bool known = std::ranges::find(names, *what) != names.end();
      fault(Why::UnknownName,
            known ? fmt::format("the card has several lines \"{}\", and none asks so; {}",
                                clip(*what, 80), kWriteAnew)
                  : fmt::format("what is \"{}\", which this job's card does not have, expected one "
                                "of its lines, the nearest is \"{}\"; {}",
                                clip(*what, 80), nearest_name(*what, names), kWriteAnew),
            node->source());
      return std::nullopt;
    }
    if (found_[*number]) {
      fault(Why::UnknownName,
            fmt::format("the line \"{}\" is there twice, expected once", clip(*what, 80)),
            node->source());
      return std::nullopt;
    }
    found_[*number] = true;
    return number;
  }

  /// The line of those words. Of several the one that asks the same: of a season changed since, the
  /// values asked for differ, but what was measured does not.
  std::optional<std::size_t> matching(const std::string& what,
                                      const std::optional<std::string>& asks) const {
    std::optional<std::size_t> only;
    int count = 0;
    for (std::size_t k = 0; k < rows_.size(); ++k) {
      if (rows_[k].what != what) continue;
      if (rows_[k].finding.required == asks) return k;
      only = k;
      ++count;
    }
    return count == 1 ? only : std::nullopt;
  }

  void judge(const toml::node& node, MeasuredRow& row) {
    const Limit::Of of = row.row.limit.of;
    const bool two = of == Limit::Of::Fills || of == Limit::Of::Within;
    const auto value = two ? read_two(node, row) : read_one(node, row);
    if (!value) return;
    row.measured = measured_words(of, *value, units_);
    Judged judged = judge_measured(row.row, *value, units_);
    row.verdict = judged.verdict;
    row.advice = std::move(judged.advice);
  }

  /// Nothing where it was not measured, or is at fault.
  std::optional<MeasuredValue> read_one(const toml::node& node, const MeasuredRow& row) {
    const auto text = as_text(node);
    if (text && text->empty()) return std::nullopt;
    const Limit::Of of = row.row.limit.of;
    const auto value = text ? read_measured_one(of, *text, units_) : std::nullopt;
    if (value) return MeasuredValue{*value};
    wrong(node, row);
    return std::nullopt;
  }

  std::optional<MeasuredValue> read_two(const toml::node& node, const MeasuredRow& row) {
    if (const auto text = as_text(node); text && text->empty()) return std::nullopt;
    const toml::array* list = node.as_array();
    MeasuredValue value;
    std::size_t empty = 0;
    for (std::size_t k = 0; list && k < list->size(); ++k) {
      const auto text = as_text((*list)[k]);
      if (text && text->empty()) ++empty;
      if (const auto one = text ? read_measured_one(row.row.limit.of, *text, units_) : std::nullopt)
        value.push_back(*one);
    }
    if (list && empty == 2 && list->size() == 2) return std::nullopt;
    if (list && list->size() == 2 && value.size() == 2 && value[0] < value[1]) return value;
    wrong(node, row);
    return std::nullopt;
  }

  void wrong(const toml::node& node, const MeasuredRow& row) {
    const toml::array* list = node.as_array();
    std::string found = described(node);
    if (list && list->size() == 2)
      found = fmt::format("[{}, {}]", described((*list)[0]), described((*list)[1]));
    fault(as_text(node) || list ? Why::Malformed : Why::WrongType,
          fmt::format("measured of \"{}\" is {}, expected {}, or \"\" for not measured yet",
                      clip(row.row.what, 80), found, expected_of(row.row.limit.of)),
          node.source());
  }

  static constexpr std::array<std::string_view, 4> kKeys = {"what", "asks", "plan", "measured"};

  const std::vector<CardRow>& rows_;
  const PlaceFinder& places_;
  Units units_;
  std::vector<bool> found_;
  std::vector<MeasuredRow> judged_;
  Refusals faults_;
};

}  // namespace

Outcome<std::vector<MeasuredRow>> check_measured(const std::vector<CardRow>& rows,
                                                 std::string_view text, const std::string& file,
                                                 Units units) {
  text = without_byte_order_mark(text);
  const PlaceFinder places(text, file);
  const auto root = parse_toml(text, places, "what was measured", kMostJobBytes);
  if (!root) return tl::unexpected(root.error());
  if (rows.empty() && root->contains("row"))
    return refuse(Why::UnknownName,
                  "this job's card has no lines, so nothing of it can be measured, expected a job "
                  "with a season",
                  {file});
  return Reader(rows, places, units).read(*root);
}

}  // namespace swathe
