#include <doctest/doctest.h>

#include <algorithm>
#include <optional>

#include "base/toml_text.hpp"
#include "fuzz/drawn_text.hpp"
#include "job/dressed_text.hpp"
#include "job/key_path.hpp"
#include "job/keys.hpp"
#include "support/drawn.hpp"
#include "swathe/job.hpp"

// Against the parser: what stands in the new text is the old tree with one node changed. The tree
// is changed by toml++, which knows nothing of our text.
using namespace swathe;
using namespace swathe::test;

namespace {

toml::table tree_of(std::string_view text) {
  INFO(text);
  text = without_byte_order_mark(text);
  auto tree = parse_toml(text, PlaceFinder(text, "job"), "the job", kMostJobBytes);
  REQUIRE_MESSAGE(tree.has_value(), tree.error()[0].sentence);
  return std::move(*tree);
}

/// The node of a path; null where there is none.
toml::node* node_at(toml::node& from, const KeyPath& path) {
  toml::node* at = &from;
  for (const PathStep& step : path) {
    if (const auto* name = std::get_if<std::string>(&step))
      at = at->is_table() ? at->as_table()->get(*name) : nullptr;
    else
      at = at->is_array() ? at->as_array()->get(std::get<std::size_t>(step)) : nullptr;
    if (!at) return nullptr;
  }
  return at;
}

/// Puts a value there, and the tables and lists that lead to it.
void put(toml::table& tree, const KeyPath& path, const toml::node& value) {
  toml::node* at = &tree;
  for (std::size_t i = 0; i < path.size(); ++i) {
    const bool last = i + 1 == path.size();
    const bool list_next = !last && std::holds_alternative<std::size_t>(path[i + 1]);
    if (const auto* name = std::get_if<std::string>(&path[i])) {
      toml::table& table = *at->as_table();
      if (last)
        value.visit([&](const auto& node) { table.insert_or_assign(*name, node); });
      else if (!table.contains(*name) && list_next)
        table.insert(*name, toml::array());
      else if (!table.contains(*name))
        table.insert(*name, toml::table());
      at = table.get(*name);
    } else {
      toml::array& list = *at->as_array();
      const auto place = std::get<std::size_t>(path[i]);
      if (place == list.size()) list.push_back(toml::table());
      at = list.get(place);
    }
  }
}

bool is_list_path(const KeyPath& path) {
  std::string names;
  for (const PathStep& step : path)
    if (const auto* name = std::get_if<std::string>(&step))
      names += (names.empty() ? "" : ".") + *name;
  return is_list_of_tables(names);
}

/// A key of the job, in one of the tables there or in the next.
KeyPath drawn_path(std::mt19937_64& rng, toml::table& tree) {
  const auto keys = job_keys();
  std::string_view rest = keys[rng() % keys.size()].path;
  KeyPath path;
  while (!rest.empty()) {
    const std::string part(rest.substr(0, rest.find('.')));
    rest.remove_prefix(std::min(part.size() + 1, rest.size()));
    path.emplace_back(part);
    if (!is_list_path(path)) continue;
    const toml::node* list = node_at(tree, path);
    const std::size_t count = list ? list->as_array()->size() : 0;
    path.emplace_back(static_cast<std::size_t>(rng() % (count + 1)));
  }
  const bool colors = path == KeyPath{"cloth", "colors"};
  if ((colors || path == KeyPath{"numerals", "axes"}) && rng() % 2 == 0) {
    const toml::node* table = node_at(tree, path);
    path.emplace_back(std::string(rng() % 2 == 0 ? "red" : colors ? "dark red" : "wght"));
    if (table && !table->is_table()) path.pop_back();
  }
  return path;
}

std::string drawn_value(std::mt19937_64& rng) {
  static constexpr std::string_view kValues[] = {"\"27 in\"",
                                                 "'27 in'",
                                                 "\"\"\"\n[a] # b\"\"\"\"\"",
                                                 "27.5",
                                                 "-3",
                                                 "true",
                                                 "[\"front\", \"50%\"]",
                                                 "[ [1, 2], # one\n  [3, 4] ]",
                                                 "{ red = \"#123456\", \"a b\" = 1 }",
                                                 "\"n\xc3\xa4h\""};
  return std::string(kValues[rng() % std::size(kValues)]);
}

struct Middles {
  std::string_view before, after;
};

/// What is left of both texts less what they begin and end with in common.
Middles middles(std::string_view a, std::string_view b) {
  const std::size_t most = std::min(a.size(), b.size());
  std::size_t front = 0, back = 0;
  while (front < most && a[front] == b[front]) ++front;
  while (back < most - front && a[a.size() - 1 - back] == b[b.size() - 1 - back]) ++back;
  return {a.substr(front, a.size() - front - back), b.substr(front, b.size() - front - back)};
}

std::vector<std::string> lines_of(std::string_view text) {
  std::vector<std::string> lines;
  while (!text.empty()) {
    lines.emplace_back(text.substr(0, text.find('\n')));
    text.remove_prefix(std::min(lines.back().size() + 1, text.size()));
  }
  return lines;
}

bool is_space(std::string_view text) {
  return text.find_first_not_of(" \t\r\n") == std::string_view::npos;
}

}  // namespace

TEST_CASE("dressed text: it says the same job") {
  for_drawn_cases("dressed", 200, [](auto& rng) {
    const std::string plain = job_text(fuzz::drawn_whole(rng));
    CHECK(tree_of(Dresser(rng).dressed(plain)) == tree_of(plain));
  });
}

TEST_CASE("set value (1), (2), (3): drawn jobs, however they are written") {
  for_drawn_cases("set-value", kDrawnJobs, [](auto& rng) {
    const std::string text = Dresser(rng).dressed(job_text(fuzz::drawn_whole(rng)));
    toml::table tree = tree_of(text);
    const KeyPath path = drawn_path(rng, tree);
    std::string value = drawn_value(rng);
    const Key* key = find_key(std::string(std::get<std::string>(path[0])) + "." +
                              std::get<std::string>(path.back()));
    const bool text_key = key && is_always_text(key->holds);
    if (text_key || path.back() == PathStep("dark red")) value = "\"27 in\"";
    CAPTURE(text);
    CAPTURE(to_text(path));
    CAPTURE(value);
    const toml::node* old = node_at(tree, path);
    const auto change = set_value(text, to_text(path), value);
    if (!change) {  // only a table that several lines make has no place for one value
      REQUIRE(change.error()[0].why == Why::WrongType);
      REQUIRE((old && old->is_table()));
      return;
    }
    CAPTURE(change->text);
    const toml::table expected_value = tree_of("v = " + change->after);
    put(tree, path, *expected_value.get("v"));
    CHECK(tree_of(change->text) == tree);
    CHECK(change->key == to_text(path));

    const auto [before, after] = middles(text, change->text);
    CHECK(change->before.empty() == !old);
    if (old) {
      CHECK(before.size() <= change->before.size());
      CHECK(after.size() <= change->after.size());
      const auto back = set_value(change->text, to_text(path), change->before);
      REQUIRE(back.has_value());
      CHECK(back->text == text);
    } else if (!is_space(before)) {
      // A comma, and a line below: between the two stands a comment, which stays where it was.
      CHECK(change->text.find("," + std::string(before.substr(0, before.find('\n')))) !=
            std::string::npos);
      CHECK(lines_of(change->text).size() ==
            lines_of(text).size() + lines_of(change->after).size());
    }
    if (!old) {
      CHECK(change->text.size() > text.size());
      const auto removed = remove_value(change->text, to_text(path));
      if (removed) {
        const auto again = set_value(removed->text, to_text(path), value);
        REQUIRE(again.has_value());
        CHECK(tree_of(again->text) == tree);
      }
    }
  });
}

TEST_CASE("remove value: drawn jobs, however they are written") {
  for_drawn_cases("remove-value", kDrawnJobs, [](auto& rng) {
    const std::string text = Dresser(rng).dressed(job_text(fuzz::drawn_whole(rng)));
    toml::table tree = tree_of(text);
    const KeyPath path = drawn_path(rng, tree);
    CAPTURE(text);
    CAPTURE(to_text(path));
    const toml::node* old = node_at(tree, path);
    const auto change = remove_value(text, to_text(path));
    if (!old) {
      REQUIRE_FALSE(change.has_value());
      CHECK(change.error()[0].why == Why::Missing);
      return;
    }
    if (!change) {
      CHECK(change.error()[0].why == Why::WrongType);
      CHECK(old->is_table());
      return;
    }
    CAPTURE(change->text);
    toml::node* above = node_at(tree, KeyPath(path.begin(), path.end() - 1));
    above->as_table()->erase(std::get<std::string>(path.back()));
    // Dotted keys leave no empty table behind them.
    toml::table now = tree_of(change->text);
    if (above->as_table()->empty() && !node_at(now, KeyPath(path.begin(), path.end() - 1))) return;
    CHECK(now == tree);
    const auto [before, after] = middles(text, change->text);
    CHECK(after.empty());
    CHECK(before.size() >= change->before.size());
  });
}
