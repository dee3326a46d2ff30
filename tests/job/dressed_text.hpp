#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <random>
#include <string>
#include <string_view>
#include <vector>

// The same job as people might write it: tables in each of the ways that TOML has, comments, blank
// lines, indents, quoted keys, other line ends.
namespace swathe::test {

class Dresser {
 public:
  explicit Dresser(std::mt19937_64& rng) : rng_(rng) {}

  /// Of a text as job_text() writes it: `[table]`, then `key = value`, each on one line.
  std::string dressed(std::string_view plain) {
    std::vector<Table> tables = tables_of(plain);
    std::string top, rest;
    for (std::size_t i = 0; i < tables.size();) {
      std::size_t end = i + 1;  // a list's items and a table's own tables stand together
      while (end < tables.size() && head(tables[end].name) == head(tables[i].name)) ++end;
      write({tables.begin() + static_cast<std::ptrdiff_t>(i),
             tables.begin() + static_cast<std::ptrdiff_t>(end)},
            top, rest);
      i = end;
    }
    std::string text = comment_lines() + top + rest;
    if (chance(3)) text = with_line_ends(text, "\r\n");
    if (chance(3))
      while (text.ends_with('\n') || text.ends_with('\r')) text.pop_back();
    if (chance(6)) text.insert(0, "\xef\xbb\xbf");
    return text;
  }

 private:
  struct Table {
    std::string name;
    bool list = false;
    std::vector<std::pair<std::string, std::string>> pairs;
  };

  bool chance(unsigned one_in) { return rng_() % one_in == 0; }
  static std::string head(const std::string& name) { return name.substr(0, name.find('.')); }
  static std::string tail(const std::string& name) { return name.substr(name.rfind('.') + 1); }

  static std::vector<Table> tables_of(std::string_view plain) {
    std::vector<Table> tables;
    while (!plain.empty()) {
      const std::string line(plain.substr(0, plain.find('\n')));
      plain.remove_prefix(std::min(line.size() + 1, plain.size()));
      const auto is = line.find(" = ");
      if (line.starts_with("[[") && is == std::string::npos)
        tables.push_back({line.substr(2, line.size() - 4), true, {}});
      else if (line.starts_with('[') && is == std::string::npos)
        tables.push_back({line.substr(1, line.size() - 2), false, {}});
      else if (is != std::string::npos)
        tables.back().pairs.emplace_back(line.substr(0, is), line.substr(is + 3));
    }
    return tables;
  }

  std::string comment() {
    static constexpr std::string_view kComments[] = {
        "# as measured",
        "#",
        "# [frame]",
        "# width = \"1 in\"",
        "# \"\"\" ''' \" ] } ,",
        "# na\xc3\xafve \xe2\x80\x94 \xf0\x9f\xa6\x9c"};
    return std::string(kComments[rng_() % std::size(kComments)]);
  }
  std::string comment_lines() {
    std::string lines;
    while (chance(3)) lines += (chance(3) ? "\n" : comment() + "\n");
    return lines;
  }
  std::string key(const std::string& name) {
    if (chance(12)) return "\"" + name + "\"";
    if (chance(12)) return "'" + name + "'";
    return name;
  }
  std::string is() { return chance(8) ? "=" : chance(8) ? "   = \t" : " = "; }
  std::string value(const std::string& plain) {
    if (!plain.starts_with("[\"") || !chance(3)) return plain;
    std::string out = "[ " + comment() + "\n  ";
    bool quoted = false;
    for (std::size_t i = 1; i + 1 < plain.size(); ++i) {
      out += plain[i];
      if (plain[i] == '"' && plain[i - 1] != '\\') quoted = !quoted;
      if (plain[i] == ',' && !quoted) out += " " + comment() + "\n  ";
    }
    return out + (chance(2) ? ",\n" : " " + comment() + "\n") + "]";
  }
  std::string line(const std::string& indent, const std::string& name, const std::string& plain) {
    return comment_lines() + indent + name + is() + value(plain) +
           (chance(4) ? "  " + comment() : std::string()) + "\n";
  }
  std::string inlined(const Table& table) {
    std::string all;
    for (const auto& [name, plain] : table.pairs)
      all += (all.empty() ? "" : chance(4) ? "," : ", ") + key(name) + is() + plain;
    return chance(4) ? "{" + all + "}" : "{ " + all + " }";
  }
  std::string listed(const std::vector<Table>& items) {
    const bool lines = chance(2), last_comma = chance(2);
    std::string all = lines ? "[\n" : "[";
    for (std::size_t i = 0; i < items.size(); ++i) {
      const bool comma = i + 1 < items.size() || last_comma;
      all += (lines ? "  " : "") + inlined(items[i]) + (comma ? "," : "");
      all += lines ? (chance(2) ? " " + comment() + "\n" : "\n") : " ";
    }
    return all + "]";
  }
  std::string header(const Table& table) {
    const std::string name =
        key(head(table.name)) + (head(table.name) == table.name ? "" : "." + key(tail(table.name)));
    return comment_lines() + (table.list ? "[[" + name + "]]" : "[" + name + "]") +
           (chance(5) ? " " + comment() : std::string()) + "\n";
  }

  /// All that belongs to one table, or one list of tables: what stands before the first header, and
  /// what stands anywhere.
  void write(const std::vector<Table>& kin, std::string& top, std::string& rest) {
    const std::string name = head(kin[0].name);
    const std::string indent = chance(5) ? "  " : "";
    if (kin[0].list) {
      if (chance(3)) {
        top += key(name) + is() + listed(kin) + "\n";
        return;
      }
      for (const Table& item : kin) {
        rest += header(item);
        for (const auto& [one, plain] : item.pairs) rest += line(indent, key(one), plain);
        rest += chance(2) ? "\n" : "";
      }
      return;
    }
    std::vector<Table> below(kin.begin() + 1, kin.end());
    const std::string below_key = below.empty() ? "" : tail(below[0].name);
    const bool below_inline = !below.empty() && chance(2);
    const std::string below_value = !below_inline   ? ""
                                    : below[0].list ? listed(below)
                                                    : inlined(below[0]);
    if (chance(4)) {  // dotted keys
      for (const auto& [one, plain] : kin[0].pairs)
        top += line(indent, key(name) + (chance(5) ? " . " : ".") + key(one), plain);
      if (below.empty()) return;
      if (below[0].list) {
        top += key(name) + "." + below_key + is() + listed(below) + "\n";
        return;
      }
      for (const auto& [one, plain] : below[0].pairs)
        top += line(indent, name + "." + below_key + "." + key(one), plain);
      return;
    }
    if (below.empty() && chance(4)) {
      top += key(name) + is() + inlined(kin[0]) + "\n";
      return;
    }
    rest += header(kin[0]);
    for (const auto& [one, plain] : kin[0].pairs) rest += line(indent, key(one), plain);
    if (below_inline) rest += line(indent, key(below_key), below_value);
    if (!below_inline)
      for (const Table& item : below) {
        rest += header(item);
        for (const auto& [one, plain] : item.pairs) rest += line(indent, key(one), plain);
      }
    rest += chance(2) ? "\n" : "";
  }

  static std::string with_line_ends(const std::string& text, std::string_view line_end) {
    std::string out;
    for (const char c : text) {
      if (c == '\n')
        out += line_end;
      else
        out += c;
    }
    return out;
  }

  std::mt19937_64& rng_;
};

}  // namespace swathe::test
