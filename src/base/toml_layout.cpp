#include "base/toml_layout.hpp"

#include <algorithm>
#include <cassert>
#include <utility>

#include "base/toml_text.hpp"

namespace swathe {
namespace {

/// A quoted part of a key, without its quotes and escapes.
std::string unquoted(std::string_view quoted) {
  const std::string pair = "key = " + std::string(quoted);
  const auto table = parse_toml(pair, PlaceFinder(pair, ""), "a key", pair.size());
  assert(table && "the text was parsed before");
  return table->get("key")->value_or(std::string());
}

class Scanner {
 public:
  explicit Scanner(std::string_view text)
      : text_(text), at_(text.size() - without_byte_order_mark(text).size()) {}

  std::vector<LaidSection> sections() {
    std::vector<LaidSection> all(1);
    all.back().line = {at_, at_};
    while (at_ < text_.size()) {
      const std::size_t line = at_;
      skip_spaces();
      if (here() == '[') {
        all.push_back(header(line));
      } else if (here() != '#' && !at_line_end()) {
        LaidPair one = pair();
        skip_to_line_end();
        one.line = {line, at_};
        all.back().pairs.push_back(std::move(one));
      } else {
        skip_to_line_end();
      }
      skip_line_end();
    }
    return all;
  }

  LaidValue value() {
    LaidValue value;
    value.at.begin = at_;
    switch (here()) {
      case '"':
      case '\'':
        skip_string();
        break;
      case '[':
        value.kind = LaidValue::Kind::List;
        read_items(value);
        break;
      case '{':
        value.kind = LaidValue::Kind::Table;
        read_pairs(value);
        break;
      default:
        skip_word();
    }
    value.at.end = at_;
    return value;
  }

  bool at_end() const { return at_ == text_.size(); }

 private:
  char here(std::size_t ahead = 0) const {
    return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\n';
  }
  bool at_line_end() const { return here() == '\n' || (here() == '\r' && here(1) == '\n'); }
  void step(std::size_t bytes = 1) { at_ = std::min(at_ + bytes, text_.size()); }

  void skip_spaces() {
    while (here() == ' ' || here() == '\t') step();
  }
  void skip_to_line_end() {
    while (!at_line_end()) step();
  }
  void skip_line_end() { step(here() == '\r' ? 2 : 1); }

  /// Between the items of a list stand line ends and comments too.
  void skip_between() {
    while (at_ < text_.size()) {
      skip_spaces();
      if (here() == '#')
        skip_to_line_end();
      else if (at_line_end())
        skip_line_end();
      else
        return;
    }
  }

  /// One, or three for a text of several lines; up to two more of them may stand before its end.
  void skip_string() {
    const char quote = here();
    const bool escapes = quote == '"';
    const bool many = here(1) == quote && here(2) == quote;
    step(many ? 3 : 1);
    while (at_ < text_.size()) {
      if (escapes && here() == '\\') {
        step(2);
      } else if (here() != quote) {
        step();
      } else if (!many) {
        return step();
      } else if (here(1) == quote && here(2) == quote) {
        step(3);
        for (int more = 0; more < 2 && at_ < text_.size() && here() == quote; ++more) step();
        return;
      } else {
        step();
      }
    }
  }

  /// A number, a date, true or false.
  void skip_word() {
    const std::size_t begin = at_;
    while (!at_line_end() && std::string_view(",]}#").find(here()) == std::string_view::npos)
      step();
    while (at_ > begin && (text_[at_ - 1] == ' ' || text_[at_ - 1] == '\t')) --at_;
  }

  std::vector<std::string> key() {
    std::vector<std::string> parts;
    while (true) {
      skip_spaces();
      const std::size_t begin = at_;
      if (here() == '"' || here() == '\'') {
        skip_string();
        parts.push_back(unquoted(text_.substr(begin, at_ - begin)));
      } else {
        while (!at_line_end() && std::string_view(" \t.=]").find(here()) == std::string_view::npos)
          step();
        parts.emplace_back(text_.substr(begin, at_ - begin));
      }
      skip_spaces();
      if (here() != '.') return parts;
      step();
    }
  }

  LaidSection header(std::size_t line) {
    LaidSection section;
    section.list = here(1) == '[';
    step(section.list ? 2 : 1);
    section.header = key();
    skip_to_line_end();
    section.line = {line, at_};
    return section;
  }

  LaidPair pair() {
    LaidPair pair;
    pair.at.begin = at_;
    pair.key = key();
    step();  // =
    skip_spaces();
    pair.value = value();
    pair.at.end = pair.value.at.end;
    return pair;
  }

  void read_items(LaidValue& list) {
    step();
    for (skip_between(); at_ < text_.size() && here() != ']'; skip_between()) {
      list.items.push_back(value());
      skip_between();
      if (here() == ',') step();
    }
    step();
  }

  void read_pairs(LaidValue& table) {
    step();
    for (skip_between(); at_ < text_.size() && here() != '}'; skip_between()) {
      table.pairs.push_back(pair());
      skip_between();
      if (here() == ',') step();
    }
    step();
  }

  std::string_view text_;
  std::size_t at_;
};

}  // namespace

std::vector<LaidSection> lay_out(std::string_view text) { return Scanner(text).sections(); }

bool is_one_value(std::string_view text) {
  Scanner scanner(text);
  scanner.value();
  return scanner.at_end();
}

}  // namespace swathe
