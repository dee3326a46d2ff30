#include "base/toml_faults.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/print.hpp"
#include "base/toml_mend.hpp"

namespace swathe {
namespace {

constexpr std::size_t kMostDescription = 200;  ///< of what the parser says: it quotes the text
constexpr std::size_t kMostTyped = 100;        ///< of a line to type, characters
constexpr std::size_t kMostScanned = std::size_t{1} << 17;  ///< bytes; a longer text is no person's

/// What is wrong with a value, in words; and what was expected.
std::string slip_words(const ScannedValue& value) {
  const std::string piece = clip(value.piece);
  switch (value.slip) {
    case Slip::NoQuotes:
      return fmt::format("{} stands without quotes, expected quotes round it", piece);
    case Slip::CurlyQuotes:
      return fmt::format("{} has curly quotes, expected straight ones", piece);
    case Slip::NoClosingQuote:
      return fmt::format("{} has no closing quote, expected one at its end", piece);
    case Slip::NoOpeningQuote:
      return fmt::format("{} has no opening quote, expected one in front of it", piece);
    case Slip::QuoteInside:
      return fmt::format("{} has a quote inside its quotes, expected the unit as a word", piece);
    case Slip::LeadingZero:
      return fmt::format("{} is a number that begins with 0, expected quotes round it", piece);
    case Slip::BareBackslash:
      return fmt::format("{} has a backslash, expected single quotes round it", piece);
    case Slip::Capitals:
      return fmt::format("{} has capital letters, expected small ones", piece);
    case Slip::DecimalComma:
      return fmt::format("{} has a comma, expected a point, and quotes round it", piece);
    case Slip::BarePoint:
      return fmt::format("{} has no digit on one side of its point, expected one", piece);
    case Slip::NoBrackets:
      return fmt::format("{} is several values, expected brackets round them", piece);
    case Slip::NoClosingBracket:
      return fmt::format("{} has no closing bracket, expected one at its end",
                         clip(value.piece.substr(0, value.piece.find('\n'))));
    case Slip::None:
    case Slip::NoValue:
    case Slip::Unknown:
      break;
  }
  return "";
}

/// A line of a text that starts a table or a key.
struct Entry {
  std::size_t begin = 0, end = 0;  ///< bytes; the end is behind its value
  std::optional<Refusal> fault;
};

class Reader {
 public:
  Reader(std::string_view text, const PlaceFinder& places, const toml::parse_error& error,
         std::span<const std::string_view> lists)
      : text_(text), places_(places), lists_(lists), said_(error.description()) {
    error_ = places.at(error.source());
    error_byte_ = places.byte_of(error_);
  }

  Refusals run() {
    bool explained = false;
    for (std::size_t pos = 0; pos < text_.size() && text_.size() <= kMostScanned;) {
      const std::size_t begin = text_.find_first_not_of(" \t\r\n", pos);
      if (begin == std::string_view::npos) break;
      if (text_[begin] == '#') {
        pos = end_of_line(text_, begin);
        continue;
      }
      Entry entry = text_[begin] == '[' ? header(begin) : pair(begin);
      const bool here = error_byte_ >= begin && error_byte_ <= entry.end;
      if (!entry.fault && here) entry.fault = twice(begin);
      if (entry.fault) {
        explained = explained || here;
        if (faults_.size() < kMostTextFaults) faults_.push_back(*std::move(entry.fault));
      }
      pos = std::max(entry.end, begin + 1);
    }
    if (!explained && !is_of_single()) faults_.insert(faults_.begin(), as_the_parser_says());
    std::ranges::stable_sort(faults_, {}, [](const Refusal& fault) {
      return std::pair(fault.place.line, fault.place.column);
    });
    return std::move(faults_);
  }

 private:
  Refusal fault(std::size_t byte, std::string sentence) const {
    return {Why::Malformed, std::move(sentence), places_.at_byte(byte)};
  }

  Refusal as_the_parser_says() const {
    std::string_view said = said_;
    constexpr std::string_view kParsing = "Error while parsing ";
    if (said.starts_with(kParsing)) said.remove_prefix(kParsing.size());
    std::string sentence = "this is not TOML: " + clip(said, kMostDescription);
    if (sentence.find("expected") == std::string::npos)
      sentence += ", expected TOML, like width = \"28 in\"";
    return {Why::Malformed, std::move(sentence), error_};
  }

  /// The start of a table: [frame], [[bumper]].
  Entry header(std::size_t begin) {
    Entry entry{begin, end_of_line(text_, begin), {}};
    std::string_view line = text_.substr(begin, entry.end - begin);
    line = trimmed(line.substr(0, line.find('#')));
    const std::size_t opening = line.find_first_not_of('[');
    if (opening == std::string_view::npos) return entry;
    const std::size_t last = line.find_last_not_of("] \t");
    if (last == std::string_view::npos || last < opening) return entry;
    const std::string_view name = trimmed(line.substr(opening, last + 1 - opening));
    const auto closing = static_cast<std::size_t>(std::ranges::count(line.substr(last + 1), ']'));
    const bool many = std::ranges::find(lists_, name) != lists_.end();
    const bool balanced = opening == closing && opening <= 2;
    if (balanced && (opening == 2 || !many)) return entry;
    const bool one = !many && (opening == 1 || opening != 2);
    const std::string typed = one ? fmt::format("[{}]", name) : fmt::format("[[{}]]", name);
    if (!is_header(typed)) return entry;
    if (balanced) single_.emplace_back(name);
    entry.fault = fault(
        begin,
        balanced ? fmt::format("[{0}] is for a table that is there once, expected double brackets "
                               "for each {0}: type {1}",
                               clip(name), clip(typed, kMostTyped))
                 : fmt::format("{} has not its brackets, expected {} round the name: type {}",
                               clip(line), one ? "[ ]" : "[[ ]]", clip(typed, kMostTyped)));
    return entry;
  }

  /// A key with its value: width = "28 in".
  Entry pair(std::size_t begin) const {
    const std::size_t line_end = end_of_line(text_, begin);
    const std::string_view line = text_.substr(begin, line_end - begin);
    const std::size_t equals = line.find('=');
    const std::size_t blank = line.find_first_of(" \t:\"'#");
    if (equals == std::string_view::npos) return without_equals(begin, blank, line_end);
    const std::string_view key = trimmed(line.substr(0, equals));
    const ScannedValue value = scan_value(text_, begin + equals + 1);
    // A list that is not closed ends where the next key begins, others end with their line.
    Entry entry{begin,
                value.slip == Slip::NoClosingBracket ? value.end : end_of_line(text_, value.end),
                {}};
    if (key.find_first_of("\"'") == std::string_view::npos && !is_key(key)) {
      std::string joined;
      for (const char c : key) joined += c == ' ' || c == '\t' ? '_' : c;
      if (is_key(joined) && !value.mended.empty())
        entry.fault = fault(begin, fmt::format("{} has a blank in it, expected one word: type {}",
                                               clip(key), typed(joined, value.mended)));
      return entry;
    }
    // What the parser has read up to its error is sound.
    const bool before = entry.end < error_byte_;
    if (value.slip == Slip::None || before) return entry;
    if (value.slip == Slip::NoValue) {
      entry.fault = fault(begin, fmt::format("{} has no value, expected one, like {} = \"28 in\"",
                                             clip(key), clip(key)));
    } else if (!value.mended.empty() && value.mended.find('\n') == std::string::npos) {
      entry.fault =
          fault(value.at, fmt::format("{}: type {}", slip_words(value), typed(key, value.mended)));
    }
    return entry;
  }

  /// width: "28 in", or width "28 in".
  Entry without_equals(std::size_t begin, std::size_t name, std::size_t line_end) const {
    Entry entry{begin, line_end, {}};
    if (name == std::string_view::npos || name == 0) return entry;
    const std::string_view key = text_.substr(begin, name);
    std::size_t from = begin + name;
    while (from < line_end && (text_[from] == ' ' || text_[from] == '\t')) ++from;
    if (from < line_end && text_[from] == ':') ++from;
    const ScannedValue value = scan_value(text_.substr(0, line_end), from);
    if (!is_key(key) || value.mended.empty()) return entry;
    entry.fault = fault(begin, fmt::format("{} is not followed by =, expected key = value: type {}",
                                           clip(key), typed(key, value.mended)));
    return entry;
  }

  /// Whether the parser stopped at a table whose single brackets have been told.
  bool is_of_single() const {
    return std::ranges::any_of(single_, [&](const std::string& name) {
      return said_.find(fmt::format("'{}'", name)) != std::string::npos;
    });
  }

  /// What is there for a second time.
  std::optional<Refusal> twice(std::size_t begin) const {
    if (said_.find("cannot redefine") == std::string::npos || is_of_single()) return std::nullopt;
    const std::string_view line = text_.substr(begin, end_of_line(text_, begin) - begin);
    if (line.starts_with('[')) {
      const std::string_view name = trimmed(line.substr(0, line.find('#')));
      return fault(begin, fmt::format("{} is there for the second time, expected it once: put what "
                                      "follows below the first one",
                                      clip(name)));
    }
    return fault(begin, fmt::format("{} is there for the second time in its table, expected it "
                                    "once: take one of the two out",
                                    clip(trimmed(line.substr(0, line.find('='))))));
  }

  static std::string typed(std::string_view key, const std::string& value) {
    std::string line = fmt::format("{} = {}", key, value);
    return characters_in(line) <= static_cast<int>(kMostTyped) ? line : clip(line, kMostTyped);
  }

  static bool is_key(std::string_view key) {
    return key.find_first_of(" \t\n") == std::string_view::npos &&
           parses(fmt::format("{} = 1", key));
  }
  static bool is_header(const std::string& line) { return parses(line); }

  static bool parses(const std::string& line) {
    if (std::ranges::count(line, '.') > kMostDots) return false;
    try {
      return toml::parse(line).size() == 1;
    } catch (const toml::parse_error&) {  // it says that it is none
      return false;
    }
  }

  static constexpr int kMostDots = 4;  // no table of ours is deeper

  std::string_view text_;
  const PlaceFinder& places_;
  std::span<const std::string_view> lists_;
  std::string said_;
  Place error_;
  std::size_t error_byte_ = 0;
  std::vector<std::string> single_;  ///< lists of tables that stand in single brackets
  Refusals faults_;
};

}  // namespace

Refusals faults_of_text(std::string_view text, const PlaceFinder& places,
                        const toml::parse_error& error, std::span<const std::string_view> lists) {
  return Reader(text, places, error, lists).run();
}

}  // namespace swathe
