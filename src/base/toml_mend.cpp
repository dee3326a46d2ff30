#include "base/toml_mend.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

#include "base/toml.hpp"
#include "swathe/base.hpp"

namespace swathe {
namespace {

constexpr bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\r'; }
constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }

constexpr std::string_view kCurly[] = {"“", "”", "„", "‟", "‘", "’", "‚", "‛", "«", "»"};

/// The curly quote at the front of a text; empty where none is.
std::string_view curly_quote(std::string_view text) {
  for (const std::string_view quote : kCurly)
    if (text.starts_with(quote)) return quote;
  return {};
}

/// A quote of any kind at the front of a text.
std::string_view any_quote(std::string_view text) {
  if (text.starts_with('"') || text.starts_with('\'')) return text.substr(0, 1);
  return curly_quote(text);
}

/// A quote of any kind that a text ends with.
std::string_view last_quote(std::string_view text) {
  if (text.ends_with('"') || text.ends_with('\'')) return text.substr(text.size() - 1);
  for (const std::string_view quote : kCurly)
    if (text.ends_with(quote)) return text.substr(text.size() - quote.size());
  return {};
}

std::string replaced(std::string text, std::string_view what, std::string_view by) {
  for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + by.size()))
    text.replace(at, what.size(), by);
  return text;
}

bool is_length(std::string_view text) {
  return !text.empty() && parse_length(text, Units::Inches).has_value();
}

/// A length with words for its marks: "26.5 in" of 26.5". Nothing where it is no length.
std::optional<std::string> length_words(std::string_view text) {
  if (!is_length(text)) return std::nullopt;
  std::string words(text);
  for (const std::string_view mark : {"''", "’’", "\"", "”", "“", "″"})
    words = replaced(words, mark, " in");
  for (const std::string_view mark : {"'", "’", "‘", "′"}) words = replaced(words, mark, " ft");
  words = replaced(words, "  ", " ");
  return is_length(words) ? std::optional(words) : std::nullopt;
}

/// The same where its point is written as a comma.
std::optional<std::string> length_with_comma(std::string_view text) {
  if (std::ranges::count(text, ',') != 1) return std::nullopt;
  return length_words(replaced(std::string(text), ",", "."));
}

bool has_unit(std::string_view length) {
  return !length.empty() && !is_digit(length.back()) && length.back() != '.';
}

/// How many values a list has; 0 where it is none.
std::size_t values_in(std::string_view list) {
  if (!is_toml_value(list)) return 0;
  const toml::table table = toml::parse(fmt::format("v = {}", list));
  const toml::array* values = table.get_as<toml::array>("v");
  return values ? values->size() : 0;
}

std::string lower(std::string_view text) {
  std::string out(text);
  for (char& c : out)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return out;
}

/// Walks over one value and writes it down as TOML has it.
class Scanner {
 public:
  Scanner(std::string_view text, std::size_t begin) : text_(text), pos_(begin) {}

  ScannedValue run() {
    skip_blanks();
    found_.begin = found_.at = pos_;
    if (at_line_end() || peek() == '#') {
      no_value();
      return finished();
    }
    do {
      if (!open_.empty() && !to_next_item()) break;
      step();
    } while (!open_.empty() && found_.slip != Slip::Unknown);
    if (open_.empty() && !ended_) {
      skip_blanks();
      if (!at_line_end() && peek() != '#') give_up();
    }
    return finished();
  }

 private:
  bool done() const { return pos_ >= text_.size(); }
  char peek() const { return text_[pos_]; }
  std::string_view rest() const { return text_.substr(pos_); }
  bool at_line_end() const { return done() || peek() == '\n'; }
  void skip_blanks() {
    while (!done() && is_blank(peek())) ++pos_;
  }

  ScannedValue finished() {
    if (found_.slip == Slip::Unknown || !is_toml_value(out_)) {
      found_.mended.clear();
      if (found_.slip == Slip::None) found_.slip = Slip::Unknown;
    } else {
      found_.mended = out_;
    }
    if (found_.slip == Slip::Unknown) pos_ = end_of_line(text_, std::min(pos_, text_.size()));
    found_.end = std::max(pos_, found_.begin);
    return std::move(found_);
  }

  void give_up() {
    found_.slip = Slip::Unknown;
    found_.at = std::min(pos_, text_.size());
  }

  /// Notes what is wrong with the piece that ends here and was mended; the first of all.
  void note(Slip slip, std::size_t at) {
    if (found_.slip != Slip::None) return;
    found_.slip = slip;
    found_.at = at;
    found_.piece = trimmed(text_.substr(at, pos_ - at));
  }

  /// A color without quotes looks like a remark.
  void no_value() {
    const std::size_t at = pos_;
    const std::string_view line = text_.substr(pos_, end_of_line(text_, pos_) - pos_);
    const std::string_view word = line.substr(0, line.find_first_of(" \t\r"));
    if (!parse_color(word)) {
      found_.slip = Slip::NoValue;
      return;
    }
    pos_ += word.size();
    out_ = in_quotes(word);
    note(Slip::NoQuotes, at);
  }

  /// Inside brackets: over blanks, line breaks and remarks. False where the list was not closed.
  bool to_next_item() {
    while (true) {
      skip_blanks();
      if (!done() && peek() == '#') pos_ = end_of_line(text_, pos_);
      const std::size_t next = next_line();
      if (done() || (peek() == '\n' && begins_entry(line_at(next)))) {
        note(Slip::NoClosingBracket, opened_at_);
        while (!open_.empty()) close();
        ended_ = true;
        pos_ = next;
        return false;
      }
      if (peek() != '\n') return true;
      if (out_.back() != ' ' && out_.back() != '[') out_ += ' ';
      pos_ = next;
    }
  }

  std::string_view line_at(std::size_t at) const {
    return text_.substr(at, end_of_line(text_, at) - at);
  }

  /// Where the next line begins that says something, from the end of this one on.
  std::size_t next_line() const {
    std::size_t at = pos_;
    while (at < text_.size() && (is_blank(text_[at]) || text_[at] == '\n' || text_[at] == '#'))
      at = text_[at] == '#' ? end_of_line(text_, at) : at + 1;
    return at;
  }

  void close() {
    while (out_.back() == ' ') out_.pop_back();
    if (open_.back() == '{' && out_.back() != '{') out_ += ' ';
    out_ += open_.back() == '[' ? ']' : '}';
    open_.pop_back();
  }

  void step() {
    const char c = peek();
    if (c == '[' || c == '{') {
      if (open_.empty()) opened_at_ = pos_;
      open_ += c;
      out_ += c == '{' ? "{ " : "[";
      ++pos_;
      wants_key_ = c == '{';
    } else if ((c == ']' || c == '}') && !open_.empty()) {
      if (c != (open_.back() == '[' ? ']' : '}')) return give_up();
      close();
      ++pos_;
    } else if (c == ',' && !open_.empty()) {
      out_ += ", ";
      ++pos_;
      wants_key_ = open_.back() == '{';
    } else if (wants_key_ && !open_.empty()) {
      key();
    } else {
      scalar();
    }
  }

  /// The key of a pair in braces.
  void key() {
    const std::size_t equals = text_.find_first_of("=,}\n", pos_);
    if (equals == std::string_view::npos || text_[equals] != '=') return give_up();
    out_ += text_.substr(pos_, equals + 1 - pos_);
    out_ += ' ';
    pos_ = equals + 1;
    wants_key_ = false;
    skip_blanks();
  }

  /// Where the piece that begins here ends, if it is not in quotes.
  std::size_t piece_end(std::size_t from) const {
    std::size_t end = from;
    for (; end < text_.size() && text_[end] != '\n'; ++end) {
      const char c = text_[end];
      if (!open_.empty() && (c == ',' || c == ']' || c == '}')) break;
      if (c == '#' && end > 0 && is_blank(text_[end - 1])) break;
    }
    while (end > from && is_blank(text_[end - 1])) --end;
    return end;
  }

  bool ends_piece(std::size_t at) const {
    while (at < text_.size() && is_blank(text_[at])) ++at;
    if (at >= text_.size()) return true;
    const char c = text_[at];
    return c == '\n' || c == '#' || (!open_.empty() && (c == ',' || c == ']' || c == '}'));
  }

  void scalar() {
    const std::string_view start = rest();
    if (start.starts_with("\"\"\"") || start.starts_with("'''")) return long_text();
    const char c = peek();
    if (c == '"' || c == '\'') return text_in_quotes(c);
    if (const auto curly = curly_quote(start); !curly.empty()) return text_in_curly(curly.size());
    bare();
  }

  void put(std::string_view mended, std::size_t end, Slip slip) {
    const std::size_t begin = std::exchange(pos_, end);
    out_ += mended;
    if (slip == Slip::None) return;
    if (++mended_ > kMostMended) return give_up();
    note(slip, begin);
  }

  void long_text() {
    const std::size_t close = text_.find(text_.substr(pos_, 3), pos_ + 3);
    if (close == std::string_view::npos) return give_up();
    std::size_t end = close + 3;
    while (end < text_.size() && end < close + 5 && text_[end] == text_[pos_]) ++end;
    put(text_.substr(pos_, end - pos_), end, Slip::None);
  }

  std::optional<std::size_t> closing(char quote) const {
    for (std::size_t at = pos_ + 1; at < text_.size() && text_[at] != '\n'; ++at) {
      if (quote == '"' && text_[at] == '\\')
        ++at;
      else if (text_[at] == quote)
        return at;
    }
    return std::nullopt;
  }

  void text_in_quotes(char quote) {
    const auto close = closing(quote);
    if (close && ends_piece(*close + 1)) {
      const std::string_view whole = text_.substr(pos_, *close + 1 - pos_);
      if (is_toml_value(whole)) return put(whole, *close + 1, Slip::None);
      const std::string_view inner = whole.substr(1, whole.size() - 2);
      if (inner.find('\\') == std::string_view::npos) return give_up();
      return put(in_quotes(inner), *close + 1, Slip::BareBackslash);
    }
    if (close && open_.empty() && try_brackets()) return;
    const std::size_t end = piece_end(pos_ + 1);
    std::string_view inner = text_.substr(pos_ + 1, end - pos_ - 1);
    const bool closed = close && *close < end;
    inner.remove_suffix(last_quote(inner).size());
    if (closed) {  // its own mark for inches or feet ended it
      const auto length = length_words(inner);
      return length ? put(in_quotes(*length), end, Slip::QuoteInside) : give_up();
    }
    if (inner.empty()) return give_up();
    put(in_quotes(inner), end, Slip::NoClosingQuote);
  }

  void text_in_curly(std::size_t opening) {
    const std::size_t line_end = end_of_line(text_, pos_);
    std::size_t inner_end = 0, end = 0;
    for (std::size_t at = pos_ + opening; at < line_end && end == 0; ++at)
      if (const auto quote = any_quote(text_.substr(at));
          !quote.empty() && ends_piece(at + quote.size())) {
        inner_end = at;
        end = at + quote.size();
      }
    if (end == 0) {
      if (open_.empty() && try_brackets()) return;
      end = inner_end = piece_end(pos_ + opening);
    } else if (open_.empty() &&
               text_.substr(pos_, end - pos_).find(',') != std::string_view::npos &&
               try_brackets()) {
      return;
    }
    const std::string_view inner = text_.substr(pos_ + opening, inner_end - pos_ - opening);
    put(in_quotes(length_words(inner).value_or(std::string(inner))), end, Slip::CurlyQuotes);
  }

  void bare() {
    const std::size_t end = piece_end(pos_);
    const std::string_view piece = text_.substr(pos_, end - pos_);
    if (piece.empty()) return give_up();
    if (is_toml_value(piece)) return put(piece, end, Slip::None);
    if (piece.front() == '0' && std::ranges::all_of(piece, is_digit))
      return put(in_quotes(piece), end, Slip::LeadingZero);
    if (const std::string word = lower(piece); word == "true" || word == "false")
      return put(word, end, Slip::Capitals);
    if (parse_number(piece) && (piece.front() == '.' || piece.back() == '.'))
      return put(piece.front() == '.' ? "0" + std::string(piece)
                                      : std::string(piece.substr(0, piece.size() - 1)),
                 end, Slip::BarePoint);
    std::string_view unquoted = piece;
    unquoted.remove_suffix(last_quote(piece).size());
    if (unquoted != piece && is_length(unquoted) && has_unit(unquoted))
      return put(in_quotes(*length_words(unquoted)), end, Slip::NoOpeningQuote);
    if (const auto length = length_words(piece))
      return put(in_quotes(*length), end, Slip::NoQuotes);
    if (const auto length = length_with_comma(piece))
      return put(in_quotes(*length), end, Slip::DecimalComma);
    if (piece.find_first_not_of("0123456789+-._eE:") == std::string_view::npos)
      return give_up();  // a number too large, or a date that there is not
    if (open_.empty() && try_brackets()) return;
    if (piece.find_first_of("=[]{}") != std::string_view::npos) return give_up();
    if (unquoted != piece && !unquoted.empty())
      return put(in_quotes(unquoted), end, Slip::NoOpeningQuote);
    put(in_quotes(piece), end, Slip::NoQuotes);
  }

  /// Several values with commas and no brackets round them: the rest of the line as a list.
  bool try_brackets() {
    const std::size_t end = piece_end(pos_);
    const std::string_view line = text_.substr(pos_, end - pos_);
    if (line.find(',') == std::string_view::npos ||
        line.find_first_of("[]{}") != std::string_view::npos)
      return false;
    const std::string listed = fmt::format("[{}]", line);
    const ScannedValue list = scan_value(listed, 0);
    if (list.end != listed.size() || values_in(list.mended) < 2) return false;
    put(list.mended, end, Slip::NoBrackets);
    return true;
  }

  std::string_view text_;
  std::size_t pos_;
  static constexpr int kMostMended = 64;  // pieces of a value; nobody types more by hand
  int mended_ = 0;
  std::string open_;  ///< brackets and braces that are open
  std::size_t opened_at_ = 0;
  bool wants_key_ = false;  ///< in braces
  bool ended_ = false;      ///< by what belongs to the next key
  std::string out_;
  ScannedValue found_;
};

}  // namespace

ScannedValue scan_value(std::string_view text, std::size_t begin) {
  return Scanner(text, begin).run();
}

bool is_toml_value(std::string_view value) {
  if (trimmed(value).empty()) return false;
  try {
    return toml::parse(fmt::format("v = {}", value)).size() == 1;
  } catch (const toml::parse_error&) {  // it says that it is none
    return false;
  }
}

std::string in_quotes(std::string_view text) {
  if (text.find_first_of("\"\\") == std::string_view::npos) return fmt::format("\"{}\"", text);
  if (text.find('\'') == std::string_view::npos) return fmt::format("'{}'", text);
  return fmt::format("\"{}\"", replaced(replaced(std::string(text), "\\", "\\\\"), "\"", "\\\""));
}

std::size_t end_of_line(std::string_view text, std::size_t from) {
  return std::min(text.find('\n', std::min(from, text.size())), text.size());
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
  return text;
}

bool begins_entry(std::string_view line) {
  constexpr std::string_view kName =
      "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-.";
  const bool header = line.starts_with('[');
  while (line.starts_with('[')) line.remove_prefix(1);
  const std::size_t name = std::min(line.find_first_not_of(kName), line.size());
  const bool word = name > 0 && !is_digit(line.front()) && line.front() != '-';
  if (!word) return false;
  line = trimmed(line.substr(name));
  return header ? line.starts_with(']') && line.find_first_not_of("] \t") == std::string_view::npos
                : line.starts_with('=');
}

}  // namespace swathe
