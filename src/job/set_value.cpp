#include <fmt/format.h>

#include <optional>

#include "base/print.hpp"
#include "base/toml_layout.hpp"
#include "base/toml_text.hpp"
#include "job/key_path.hpp"
#include "job/text_edit.hpp"
#include "swathe/job.hpp"

namespace swathe {
namespace {

Outcome<toml::table> parse(std::string_view text, const std::string& file) {
  text = without_byte_order_mark(text);
  return parse_toml(text, PlaceFinder(text, file), "the job", kMostJobBytes, lists_of_tables());
}

/// What a text is as TOML; nothing where it is none.
std::optional<toml::node_type> type_of(std::string_view value) {
  const std::string pair = "key = " + std::string(value);
  const auto table = parse_toml(pair, PlaceFinder(pair, ""), "the value", kMostJobBytes);
  if (!table || table->size() != 1 || !table->get("key") || !is_one_value(value))
    return std::nullopt;
  return table->get("key")->type();
}

/// "name" of a bumper.
std::string_view first_key_of(const KeyPath& path) {
  std::string table;
  for (const PathStep& step : path)
    if (const auto* name = std::get_if<std::string>(&step))
      table += (table.empty() ? "" : ".") + *name;
  return first_key_in(table).substr(table.size() + 1);
}

/// A value as it is to stand in the text.
Outcome<std::string> value_text(const NamedKey& named, std::string_view value,
                                const std::string& file) {
  const auto type = type_of(value);
  if (!named.key) {
    if (type == toml::node_type::table) return std::string(value);
    return refuse(Why::WrongType,
                  fmt::format("{0} is a table, expected one like {{ key = value }}, or one of its "
                              "keys, like {0}.{1}",
                              to_text(named.path), first_key_of(named.path)),
                  {file, 1, 1});
  }
  // A name in a table of colors holds a text, one in a table of axes a number.
  const bool text = named.whole ? is_always_text(named.key->holds)
                                : std::holds_alternative<OfColors>(named.key->holds);
  const bool date = type == toml::node_type::date || type == toml::node_type::time ||
                    type == toml::node_type::date_time;
  if (type && !date && (!text || type == toml::node_type::string)) return std::string(value);
  std::string quoted = quoted_text(value);
  if (!type_of(quoted))
    return refuse(Why::Malformed,
                  fmt::format("the value of {} is not UTF-8 text", to_text(named.path)),
                  {file, 1, 1});
  return quoted;
}

Outcome<ValueChange> applied(std::string_view text, Edits edits, std::string after,
                             const std::string& file) {
  ValueChange change;
  std::size_t at = 0;
  for (const Edit& edit : edits.list) {
    change.text.append(text.substr(at, edit.where.begin - at)).append(edit.text);
    at = edit.where.end;
  }
  change.text += text.substr(at);
  change.key = to_text(edits.path);
  change.before = std::move(edits.before);
  change.after = std::move(after);
  // A text that was already at a limit, or has a table of the key's name where a list should be.
  if (auto parsed = parse(change.text, file); !parsed)
    return tl::unexpected(std::move(parsed.error()));
  return change;
}

}  // namespace

Outcome<ValueChange> set_value(std::string_view text, std::string_view key, std::string_view value,
                               const std::string& file) {
  if (auto parsed = parse(text, file); !parsed) return tl::unexpected(std::move(parsed.error()));
  const auto named = read_key_path(key, file);
  if (!named) return tl::unexpected(named.error());
  auto after = value_text(*named, value, file);
  if (!after) return tl::unexpected(std::move(after.error()));
  auto edits = TextEdit(text, file).set(named->path, *after);
  if (!edits) return tl::unexpected(std::move(edits.error()));
  return applied(text, std::move(*edits), std::move(*after), file);
}

Outcome<ValueChange> remove_value(std::string_view text, std::string_view key,
                                  const std::string& file) {
  if (auto parsed = parse(text, file); !parsed) return tl::unexpected(std::move(parsed.error()));
  const auto named = read_key_path(key, file);
  if (!named) return tl::unexpected(named.error());
  auto edits = TextEdit(text, file).remove(named->path);
  if (!edits) return tl::unexpected(std::move(edits.error()));
  return applied(text, std::move(*edits), "", file);
}

}  // namespace swathe
