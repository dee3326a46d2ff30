#include "job/text_edit.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <optional>
#include <span>

#include "base/print.hpp"
#include "base/toml_text.hpp"
#include "job/spelling.hpp"

namespace swathe {

/// How far a path leads in the text.
struct TextEdit::Found {
  std::size_t steps = 0;              ///< of the path, up to `value`
  const LaidPair* pair = nullptr;     ///< the last passed
  const LaidValue* holder = nullptr;  ///< what `value` stands in; null where a line is its own
  const LaidValue* value = nullptr;   ///< null where no value is on the way
  bool open_table = false;            ///< the path is a table that stands on several lines
  KeyPath spelled;
};

namespace {

constexpr std::string_view kBlank = " \t\r";

bool same_step(const PathStep& a, const PathStep& b) {
  const auto *name_a = std::get_if<std::string>(&a), *name_b = std::get_if<std::string>(&b);
  return name_a && name_b ? same_name(*name_a, *name_b) : a == b;
}

/// How many steps two paths have in common.
std::size_t common(const KeyPath& a, const KeyPath& b) {
  std::size_t steps = 0;
  while (steps < a.size() && steps < b.size() && same_step(a[steps], b[steps])) ++steps;
  return steps;
}

bool leads_to(const KeyPath& above, const KeyPath& path) {
  return common(above, path) == above.size();
}

KeyPath first(const KeyPath& path, std::size_t steps) {
  return {path.begin(), path.begin() + static_cast<std::ptrdiff_t>(steps)};
}

using Steps = std::span<const PathStep>;

/// `a.b = value` for what is not there yet; a list becomes one of a single item. Nothing where
/// that item would not be its first.
std::optional<std::string> pair_text(Steps steps, const std::string& value) {
  std::string name;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    if (const auto* part = std::get_if<std::string>(&steps[i])) {
      name += (name.empty() ? "" : ".") + key_part(*part);
      continue;
    }
    if (std::get<std::size_t>(steps[i]) != 0) return std::nullopt;
    const Steps rest = steps.subspan(i + 1);
    if (rest.empty()) return fmt::format("{} = [{}]", name, value);
    const auto item = pair_text(rest, value);
    if (!item) return std::nullopt;
    return fmt::format("{} = [{{ {} }}]", name, *item);
  }
  return fmt::format("{} = {}", name, value);
}

/// `[cloth.hook_and_loop]`, `[[bumper]]`.
std::string header_text(const KeyPath& table) {
  std::string names;
  for (const PathStep& step : table)
    if (const auto* name = std::get_if<std::string>(&step))
      names += (names.empty() ? "" : ".") + key_part(*name);
  const bool list = std::holds_alternative<std::size_t>(table.back());
  return list ? "[[" + names + "]]" : "[" + names + "]";
}

/// The keys of an inline table, each on a line of its own, a line end before each.
std::string lines_of(const std::string& table, const std::string& line_end) {
  const std::string text = "key = " + table;
  const std::vector<LaidSection> laid = lay_out(text);
  std::string lines;
  for (const LaidPair& pair : laid[0].pairs[0].value.pairs)
    lines += line_end + text.substr(pair.at.begin, pair.at.end - pair.at.begin);
  return lines;
}

/// Where a table stands in the order of the new job; past the last for one that nobody knows.
std::size_t rank_of(std::string_view table) {
  const auto tables = job_tables();
  const auto found = std::ranges::find_if(
      tables, [&](const KeyTable& known) { return same_name(known.path, table); });
  return static_cast<std::size_t>(found - tables.begin());
}

/// What a section and its headers' lists are called; `counts` has how many items each list has.
KeyPath section_path(const LaidSection& section, std::map<KeyPath, std::size_t>& counts) {
  KeyPath path;
  for (std::size_t i = 0; i < section.header.size(); ++i) {
    path.emplace_back(section.header[i]);
    if (section.list && i + 1 == section.header.size())
      path.emplace_back(counts[first(path, path.size())]++);
    else if (const auto found = counts.find(path); found != counts.end() && found->second > 0)
      path.emplace_back(found->second - 1);
  }
  return path;
}

}  // namespace

TextEdit::TextEdit(std::string_view text, std::string file)
    : text_(text), file_(std::move(file)), sections_(lay_out(text)) {
  std::map<KeyPath, std::size_t> counts;
  for (const LaidSection& section : sections_) paths_.push_back(section_path(section, counts));
}

// --- finding ------------------------------------------------------------------------------------

KeyPath TextEdit::full_path(std::size_t section, const LaidPair& pair) const {
  KeyPath path = paths_[section];
  path.insert(path.end(), pair.key.begin(), pair.key.end());
  return path;
}

/// Follows the path into inline tables and lists.
void TextEdit::look_inside(Found& found, const KeyPath& path) const {
  while (found.steps < path.size()) {
    const LaidValue& value = *found.value;
    const PathStep& step = path[found.steps];
    if (const auto* place = std::get_if<std::size_t>(&step)) {
      if (*place >= value.items.size()) return;
      found.value = &value.items[*place];
      found.spelled.push_back(step);
      ++found.steps;
    } else {
      const auto pair = std::ranges::find_if(value.pairs, [&](const LaidPair& one) {
        KeyPath so_far = found.spelled;
        so_far.insert(so_far.end(), one.key.begin(), one.key.end());
        return leads_to(so_far, path);
      });
      if (pair == value.pairs.end()) return;
      found.value = &pair->value;
      found.pair = &*pair;
      found.spelled.insert(found.spelled.end(), pair->key.begin(), pair->key.end());
      found.steps += pair->key.size();
    }
    found.holder = &value;
  }
}

TextEdit::Found TextEdit::find(const KeyPath& path) const {
  Found found;
  for (std::size_t s = 0; s < sections_.size(); ++s) {
    if (leads_to(path, paths_[s])) found.open_table = true;
    for (const LaidPair& pair : sections_[s].pairs) {
      KeyPath full = full_path(s, pair);
      if (leads_to(full, path)) {
        found.steps = full.size();
        found.pair = &pair;
        found.value = &pair.value;
        found.spelled = std::move(full);
        look_inside(found, path);
        return found;
      }
      if (leads_to(path, full)) found.open_table = true;
    }
  }
  return found;
}

bool TextEdit::is_there(const KeyPath& path) const {
  return std::ranges::any_of(paths_, [&](const KeyPath& one) { return leads_to(path, one); });
}

std::size_t TextEdit::count_of(const KeyPath& list) const {
  std::size_t count = 0;
  for (KeyPath item = list;; item.pop_back(), ++count) {
    item.emplace_back(count);
    if (!is_there(item)) return count;
  }
}

// --- what is done -------------------------------------------------------------------------------

Outcome<Edits> TextEdit::set(const KeyPath& path, const std::string& value) const {
  const Found found = find(path);
  if (found.open_table)
    return refuse(
        Why::WrongType,
        fmt::format("{} is a table on lines of its own, expected one of its keys", to_text(path)),
        {file_, 1, 1});
  Edits edits;
  edits.path = path;
  if (!found.value) return add_line(path, value, std::move(edits));
  if (found.steps < path.size()) return add_inside(found, path, value, std::move(edits));
  edits.path = found.spelled;
  edits.before = text_.substr(found.value->at.begin, found.value->at.end - found.value->at.begin);
  edits.list = {{found.value->at, value}};
  return edits;
}

Outcome<Edits> TextEdit::remove(const KeyPath& path) const {
  const Found found = find(path);
  if (found.open_table ||
      (found.holder && found.holder->kind == LaidValue::Kind::List && found.steps == path.size()))
    return refuse(
        Why::WrongType,
        fmt::format("{} is a table or a part of a list, expected a key to take out", to_text(path)),
        {file_, 1, 1});
  if (!found.value || found.steps < path.size())
    return refuse(Why::Missing,
                  fmt::format("{} is not there, expected a key that this job gives", to_text(path)),
                  {file_, 1, 1});
  Edits edits;
  edits.path = found.spelled;
  edits.before = text_.substr(found.value->at.begin, found.value->at.end - found.value->at.begin);
  ByteSpan where;
  if (!found.holder) {
    where = {found.pair->line.begin, next_line(found.pair->line.end)};
    // The last line has no line end to take with it: it takes that of the line above.
    if (where.end == found.pair->line.end && where.begin > sections_[0].line.begin)
      where.begin -= where.begin > 1 && text_[where.begin - 2] == '\r' ? 2 : 1;
  } else {
    const std::vector<LaidPair>& pairs = found.holder->pairs;
    const auto rank = static_cast<std::size_t>(found.pair - pairs.data());
    if (rank > 0)
      where = {pairs[rank - 1].at.end, found.pair->at.end};
    else if (pairs.size() > 1)
      where = {found.pair->at.begin, pairs[1].at.begin};
    else
      where = {found.holder->at.begin + 1, found.holder->at.end - 1};
  }
  edits.list = {{where, ""}};
  return edits;
}

/// Into an inline table or list.
Outcome<Edits> TextEdit::add_inside(const Found& found, const KeyPath& path,
                                    const std::string& value, Edits edits) const {
  const LaidValue& holder = *found.value;
  const Steps rest = Steps(path).subspan(found.steps);
  const auto wrong = [&](Why why, std::string_view expected) {
    return refuse(
        why,
        fmt::format("{} is {}, expected {}", to_text(found.spelled),
                    clip(text_.substr(holder.at.begin, holder.at.end - holder.at.begin)), expected),
        place_of(holder.at.begin));
  };
  edits.path = found.spelled;
  edits.path.insert(edits.path.end(), rest.begin(), rest.end());
  const auto* place = std::get_if<std::size_t>(&rest[0]);
  if (holder.kind != (place ? LaidValue::Kind::List : LaidValue::Kind::Table))
    return wrong(Why::WrongType, place ? "a list" : "a table");
  if (place) {
    const auto item = rest.size() == 1 ? std::optional(value) : pair_text(rest.subspan(1), value);
    if (*place != holder.items.size() || !item)
      return wrong(Why::OutOfRange, fmt::format("a number from 1 to {}", holder.items.size() + 1));
    edits.list = add_item(holder, rest.size() == 1 ? *item : fmt::format("{{ {} }}", *item));
    return edits;
  }
  const auto pair = pair_text(rest, value);
  if (!pair) return wrong(Why::OutOfRange, "the first item of its list before others");
  for (const LaidPair& one : holder.pairs)
    if (leads_to(KeyPath(rest.begin(), rest.end()), {one.key.begin(), one.key.end()}))
      return wrong(Why::WrongType, "one key of it");
  if (holder.pairs.empty())
    edits.list = {{holder.at, fmt::format("{{ {} }}", *pair)}};
  else
    edits.list = {{{holder.pairs.back().at.end, holder.pairs.back().at.end}, ", " + *pair}};
  return edits;
}

/// Behind the last item of a list: on a line of its own where that one has one, below its comment.
std::vector<Edit> TextEdit::add_item(const LaidValue& list, const std::string& item) const {
  if (list.items.empty()) return {{{list.at.begin + 1, list.at.begin + 1}, item}};
  const ByteSpan last = list.items.back().at;
  const std::size_t line = last.begin - [&] {
    std::size_t back = 0;
    while (back < last.begin && text_[last.begin - back - 1] != '\n') ++back;
    return back;
  }();
  const bool own_line =
      text_.substr(line, last.begin - line).find_first_not_of(kBlank) == std::string_view::npos;
  const std::size_t end = end_of_line(last.end);
  if (!own_line || list.at.end <= end) return {{{last.end, last.end}, ", " + item}};
  const std::string_view behind = text_.substr(last.end, list.at.end - last.end);
  const auto comma = std::min(behind.find(','), behind.size());
  const bool has_comma = comma < behind.size() && comma < behind.find('#');
  const std::string on_next = line_end(last.end) + indent_of(line) + item;
  if (has_comma) return {{{end, end}, on_next + ","}};
  return {{{last.end, last.end}, ","}, {{end, end}, on_next}};
}

/// A line of its own, in a table that is there or in a new one.
Outcome<Edits> TextEdit::add_line(const KeyPath& path, const std::string& value,
                                  Edits edits) const {
  const KeyPath table = first(path, path.size() - 1);
  std::size_t section = 0;  // whose header says most of the table
  std::size_t dotted = 0, dotted_in = 0;
  const LaidPair* like = nullptr;  // the last that says more of it in a dotted key
  for (std::size_t s = 0; s < sections_.size(); ++s) {
    if (leads_to(paths_[s], table) && paths_[s].size() > paths_[section].size()) section = s;
    for (const LaidPair& pair : sections_[s].pairs) {
      const std::size_t same = common(full_path(s, pair), table);
      if (same <= paths_[s].size() || same < dotted) continue;
      dotted = same;
      dotted_in = s;
      like = &pair;
    }
  }
  const std::size_t known = std::max(dotted, paths_[section].size());
  const KeyPath spelled = dotted == known && like ? full_path(dotted_in, *like) : paths_[section];
  std::copy_n(spelled.begin(), known, edits.path.begin());
  if (like && dotted > paths_[section].size()) {
    const auto line = pair_text(Steps(edits.path).subspan(paths_[dotted_in].size()), value);
    if (!line)
      return refuse(Why::OutOfRange,
                    fmt::format("{} comes after others that are not there", to_text(path)),
                    place_of(like->at.begin));
    edits.list = {below(*like, *line)};
    return edits;
  }
  if (known < table.size()) return add_section(value, std::move(edits));
  const LaidSection& there = sections_[section];
  const std::string line = *pair_text(Steps(edits.path).subspan(known), value);
  if (there.pairs.empty())
    edits.list = {{{there.line.end, there.line.end},
                   line_end(there.line.end) + indent_of(there.line.begin) + line}};
  else
    edits.list = {below(there.pairs.back(), line)};
  return edits;
}

/// In a table that is not there yet, with its header; the next of a list, or a whole list.
Outcome<Edits> TextEdit::add_section(const std::string& value, Edits edits) const {
  const KeyPath& path = edits.path;
  KeyPath table = first(path, path.size() - 1);
  for (std::size_t i = 0; i < path.size(); ++i) {
    const auto* place = std::get_if<std::size_t>(&path[i]);
    if (!place || is_there(first(path, i + 1))) continue;
    const KeyPath list = first(path, i);
    const std::size_t count = count_of(list);
    if (*place != count)
      return refuse(Why::OutOfRange,
                    fmt::format("{} is not there, expected a number from 1 to {}",
                                to_text(first(path, i + 1)), count + 1),
                    {file_, 1, 1});
    table = first(path, i + 1);
    break;
  }
  const std::string end = line_end(sections_.back().line.begin);
  if (table.size() == path.size()) {
    edits.list = {new_section(table, header_text(table) + lines_of(value, end))};
    return edits;
  }
  const auto line = pair_text(Steps(path).subspan(table.size()), value);
  if (!line)
    return refuse(Why::OutOfRange,
                  fmt::format("{} comes after others that are not there", to_text(path)),
                  {file_, 1, 1});
  edits.list = {new_section(table, header_text(table) + end + *line)};
  return edits;
}

// --- where lines go -----------------------------------------------------------------------------

/// A line right below a key's, as far in as that one.
Edit TextEdit::below(const LaidPair& pair, const std::string& line) const {
  const std::size_t end = pair.line.end;
  return {{end, end}, line_end(end) + indent_of(pair.line.begin) + line};
}

/// Below the table's kin; a table of its own goes where a new job has it.
Edit TextEdit::new_section(const KeyPath& table, const std::string& lines) const {
  const auto last_below = [&](const KeyPath& above) {
    std::size_t last = 0;
    for (std::size_t s = 1; s < paths_.size(); ++s)
      if (leads_to(above, paths_[s])) last = s;
    return last;
  };
  const auto before = [&](std::size_t section) {
    const LaidSection& above = sections_[section - 1];
    const bool nothing = section == 1 && above.pairs.empty();
    const std::size_t least =
        nothing ? above.line.begin
                : next_line(above.pairs.empty() ? above.line.end : above.pairs.back().line.end);
    std::size_t at = sections_[section].line.begin;
    while (at > least) {  // a comment right above a header belongs to it
      const std::size_t end = at - 1;
      const auto break_above = end == 0 ? std::string_view::npos : text_.rfind('\n', end - 1);
      const std::size_t line = break_above == std::string_view::npos ? 0 : break_above + 1;
      if (line < least || !line_at(line).starts_with('#')) break;
      at = line;
    }
    return Edit{{at, at}, lines + line_end(at) + line_end(at)};
  };
  const bool list = std::holds_alternative<std::size_t>(table.back());
  if (!list)
    for (std::size_t s = 1; s < paths_.size(); ++s)
      if (leads_to(table, paths_[s])) return before(s);
  for (std::size_t steps = table.size() - 1; steps > 0; --steps)
    if (const std::size_t last = last_below(first(table, steps))) return after_section(last, lines);
  const std::size_t mine = rank_of(std::get<std::string>(table[0]));
  std::optional<std::size_t> best, best_rank;
  for (std::size_t s = 0; s < sections_.size(); ++s) {
    std::optional<std::size_t> rank;
    const auto consider = [&](std::string_view name) {
      if (const std::size_t one = rank_of(name); one < mine && (!rank || one > *rank)) rank = one;
    };
    if (s > 0) consider(sections_[s].header[0]);
    if (s == 0)
      for (const LaidPair& pair : sections_[s].pairs) consider(pair.key[0]);
    if (!rank || (best_rank && *rank < *best_rank)) continue;
    best = s;
    best_rank = rank;
  }
  if (best) return after_section(*best, lines);
  return sections_.size() > 1 ? before(1) : after_section(0, lines);
}

/// Below a section and the comments that hang on it, a blank line between.
Edit TextEdit::after_section(std::size_t section, const std::string& lines) const {
  const LaidSection& above = sections_[section];
  if (section == 0 && above.pairs.empty()) {  // no table yet: perhaps comments
    const std::size_t end = text_.size();
    const std::string line = line_end(end);
    const bool anything = end > above.line.begin;
    const std::string gap = !anything ? "" : text_.ends_with('\n') ? line : line + line;
    return {{end, end}, gap + lines + line};
  }
  const std::size_t own = above.pairs.empty() ? above.line.end : above.pairs.back().line.end;
  std::size_t end = own, at = next_line(own);
  while (at < text_.size() && line_at(at).starts_with('#')) {
    end = end_of_line(at);
    at = next_line(end);
  }
  const std::string line = line_end(own);
  const bool gap_below = at >= text_.size() || line_at(at).empty();
  if (gap_below) return {{end, end}, line + line + lines};
  // A comment that touches the next header belongs to that.
  const bool header_below = next_line(own) < text_.size();
  return {{own, own}, line + line + lines + (header_below ? line : "")};
}

// --- lines --------------------------------------------------------------------------------------

std::size_t TextEdit::end_of_line(std::size_t at) const {
  const std::size_t end = std::min(text_.find('\n', at), text_.size());
  return end < text_.size() && end > at && text_[end - 1] == '\r' ? end - 1 : end;
}

std::size_t TextEdit::next_line(std::size_t at) const {
  return std::min(std::min(text_.find('\n', at), text_.size()) + 1, text_.size());
}

/// Without the blanks round it.
std::string_view TextEdit::line_at(std::size_t at) const {
  std::string_view line = text_.substr(at, end_of_line(at) - at);
  const auto begin = line.find_first_not_of(kBlank);
  return begin == std::string_view::npos ? std::string_view() : line.substr(begin);
}

std::string TextEdit::line_end(std::size_t near) const {
  std::size_t end = text_.find('\n', near);
  if (end == std::string_view::npos) end = text_.find('\n');
  if (end == std::string_view::npos) return "\n";
  return end > 0 && text_[end - 1] == '\r' ? "\r\n" : "\n";
}

std::string TextEdit::indent_of(std::size_t line) const {
  const auto end = std::min(text_.find_first_not_of(" \t", line), text_.size());
  return std::string(text_.substr(line, end - line));
}

Place TextEdit::place_of(std::size_t at) const {
  const std::size_t mark = text_.size() - without_byte_order_mark(text_).size();
  const std::string_view before = text_.substr(mark, at - mark);
  const auto line = std::ranges::count(before, '\n');
  const auto last = before.rfind('\n');
  const std::size_t column =
      last == std::string_view::npos ? before.size() : before.size() - last - 1;
  return {file_, static_cast<int>(line) + 1, static_cast<int>(column) + 1};
}

}  // namespace swathe
