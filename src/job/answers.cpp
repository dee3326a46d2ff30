#include "job/answers.hpp"

#include <algorithm>
#include <array>
#include <initializer_list>
#include <utility>

namespace swathe {
namespace {

constexpr std::array<std::string_view, 4> kSides = {"front", "left", "back", "right"};

/// Small letters, curly quotes and signs made plain, blanks in one's place: how
/// an answer is read.
std::string plain(std::string_view text) {
  constexpr std::pair<std::string_view, std::string_view> kPlain[] = {
      {"×", " x "}, {"”", "\""}, {"“", "\""}, {"″", "\""}, {"’", "'"}, {"′", "'"}, {"\t", " "}};
  std::string read(text);
  for (const auto& [sign, instead] : kPlain)
    for (auto at = read.find(sign); at != std::string::npos; at = read.find(sign, at + 1))
      read.replace(at, sign.size(), instead);
  std::string words;
  for (char c : read) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    if (c == ' ' && (words.empty() || words.back() == ' ')) continue;
    words += c;
  }
  if (words.ends_with(' ')) words.pop_back();
  return words;
}

std::string trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == ',')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == ',')) text.remove_suffix(1);
  return std::string(text);
}

std::vector<std::string> split(std::string_view text, char at) {
  std::vector<std::string> parts;
  while (true) {
    const auto end = text.find(at);
    parts.push_back(trimmed(text.substr(0, end)));
    if (end == std::string_view::npos) return parts;
    text.remove_prefix(end + 1);
  }
}

/// Takes a word out, where it stands by itself; whether it was there.
bool take_word(std::string& text, std::string_view word) {
  const auto letter = [](char c) { return (c >= 'a' && c <= 'z') || c == '-'; };
  for (auto at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
    const std::size_t end = at + word.size();
    if ((at > 0 && letter(text[at - 1])) || (end < text.size() && letter(text[end]))) continue;
    text = trimmed(text.substr(0, at)) + " " + trimmed(text.substr(end));
    text = trimmed(text);
    return true;
  }
  return false;
}

bool take_any(std::string& text, std::initializer_list<std::string_view> words) {
  bool taken = false;
  for (const std::string_view word : words) taken |= take_word(text, word);
  return taken;
}

/// The side that a text names, taken out of it; nothing where it names none, or
/// two.
std::optional<std::string> take_side(std::string& text) {
  std::optional<std::string> found;
  for (const std::string_view side : kSides) {
    if (!take_word(text, side)) continue;
    if (found) return std::nullopt;
    found = std::string(side);
  }
  return found;
}

/// A length above zero.
std::optional<Length> size_of(std::string_view text, Units units) {
  const auto length = parse_length(text, units);
  return length && *length > Length() ? length : std::nullopt;
}

/// The unit at the end of a text, as it stands there: "mm" of "760 mm".
std::string_view unit_of(std::string_view text) {
  const auto digit = text.find_last_of("0123456789.");
  return digit == std::string_view::npos ? text : text.substr(digit + 1);
}

/// "28 in x 30 in", "28 x 30 in", "28 by 30".
std::optional<std::array<Length, 2>> two_sizes(const std::string& text, Units units) {
  std::string between = text;
  for (auto at = between.find(" by "); at != std::string::npos; at = between.find(" by "))
    between.replace(at, 4, "x");
  std::vector<std::string> parts = split(between, 'x');
  if (parts.size() != 2) return std::nullopt;
  if (trimmed(unit_of(parts[0])).empty()) parts[0] += std::string(unit_of(parts[1]));
  const auto first = size_of(parts[0], units), second = size_of(parts[1], units);
  if (!first || !second) return std::nullopt;
  return std::array<Length, 2>{*first, *second};
}

}  // namespace

std::size_t side_number(std::string_view side) {
  return static_cast<std::size_t>(std::ranges::find(kSides, side) - kSides.begin());
}

std::string side_name(std::size_t number) { return std::string(kSides[number % kSides.size()]); }

Length side_length(const FrameAnswer& frame, std::size_t number) {
  return number % 2 == 0 ? frame.width : frame.depth;
}

bool says_none(std::string_view text) {
  const std::string word = plain(text);
  return word == "none" || word == "no" || word == "-";
}

std::optional<FrameAnswer> read_frame_answer(std::string_view text) {
  const std::string words = plain(text);
  const bool metric = words.find("mm") != std::string::npos ||
                      words.find("cm") != std::string::npos || words.ends_with("m");
  const Units units = metric ? Units::Millimeters : Units::Inches;
  const auto sizes = two_sizes(words, units);
  if (!sizes) return std::nullopt;
  return FrameAnswer{(*sizes)[0], (*sizes)[1], units};
}

std::optional<OpeningAnswer> read_opening_answer(std::string_view text, Units units) {
  std::string words = plain(text);
  const auto side = take_side(words);
  take_any(words, {"wide", "the", "in the", "at the", "on the", "side", "on", "at"});
  const auto width = size_of(words, units);
  if (!side || !width) return std::nullopt;
  return OpeningAnswer{*side, *width};
}

std::optional<BumperSet> read_bumpers_answer(std::string_view text) {
  std::string words = plain(text);
  take_any(words, {"bumpers", "bumper", "at the", "on the", "at", "on", "one", "each", "pieces"});
  if (words == "1" || (words.empty() && plain(text).starts_with("one"))) return BumperSet::One;
  if (words == "2" || words == "two" || words == "2 halves" || words == "halves")
    return BumperSet::Halves;
  if (words == "4 sides" || words == "sides" || words == "4 side") return BumperSet::Sides;
  if (words == "4 corners" || words == "corners" || words == "4 corner") return BumperSet::Corners;
  return std::nullopt;
}

std::optional<std::vector<BracketAnswer>> read_brackets_answer(std::string_view text, Units units) {
  std::vector<BracketAnswer> brackets;
  for (std::string words : split(plain(text), ';')) {
    if (words.empty()) continue;
    BracketAnswer bracket;
    // The side stands first; after "from" is the corner's other side.
    const auto from = words.find(" from ");
    std::string before = words.substr(0, from);
    std::string after = from == std::string::npos ? "" : words.substr(from + 6);
    if (!after.empty()) {
      const auto side = take_side(before);
      take_any(after, {"the", "corner", "with"});
      const auto neighbor = take_side(after);
      bracket.from_corner = parse_length(before, units);
      if (!side || !neighbor || !bracket.from_corner || *bracket.from_corner < Length())
        return std::nullopt;
      bracket.side = *side;
      bracket.neighbor = *neighbor;
      words = after;
    } else {
      const auto side = take_side(words);
      if (!side || !take_any(words, {"middle", "center", "centered", "50%"})) return std::nullopt;
      bracket.side = *side;
    }
    const auto sizes = two_sizes(trimmed(words), units);
    if (!sizes) return std::nullopt;
    bracket.width = (*sizes)[0];
    bracket.height = (*sizes)[1];
    brackets.push_back(std::move(bracket));
  }
  if (brackets.empty()) return std::nullopt;
  return brackets;
}

std::optional<PaddingAnswer> read_padding_answer(std::string_view text, Units units) {
  PaddingAnswer answer;
  bool board = false, foam = false;
  for (std::string words : split(plain(text), ',')) {
    if (words.empty()) continue;
    const bool hollow = take_any(words, {"hollow", "with a hole", "with hole"});
    const bool solid = take_any(words, {"solid", "without a hole", "without hole", "no hole"});
    if (hollow && solid) return std::nullopt;
    if (hollow || solid) answer.core = hollow ? Core::Hollow : Core::Solid;
    const bool is_block = take_any(words, {"block", "blocks"});
    take_any(words, {"boards", "board", "plywood", "noodles", "noodle", "foam", "thick", "high",
                     "padding", "round", "of"});
    if (words.empty()) continue;
    const auto two = two_sizes(words, units);
    const auto one = size_of(words, units);
    if (two && !is_block && !board) {
      board = true;
      answer.board_thickness = (*two)[0];
      answer.board_height = (*two)[1];
    } else if (two && is_block && !foam) {
      foam = true;
      answer.form = PaddingForm::Block;
      answer.size = (*two)[0];
      answer.block_height = (*two)[1];
    } else if (one && !is_block && !foam) {
      foam = true;
      answer.size = *one;
    } else {
      return std::nullopt;
    }
  }
  if (!board || !foam) return std::nullopt;
  return answer;
}

std::optional<NumberAnswer> read_number_answer(std::string_view text) {
  std::string words = plain(text);
  NumberAnswer answer;
  int methods = 0;
  const auto method = [&](NumeralMethod means, std::initializer_list<std::string_view> said) {
    if (!take_any(words, said)) return;
    answer.method = means;
    ++methods;
  };
  method(NumeralMethod::PaintMask, {"paint-mask", "paint mask", "mask"});
  method(NumeralMethod::IronOn, {"iron-on", "iron on", "ironed on", "ironed", "iron"});
  method(NumeralMethod::SewOn, {"sew-on", "sew on", "sewn on", "sewn", "sew"});
  method(NumeralMethod::Stencil, {"stencil", "stenciled", "stencils", "painted", "paint"});
  if (words.empty() || words.size() > 5 || methods > 1) return std::nullopt;
  if (!std::ranges::all_of(words, [](char c) { return c >= '0' && c <= '9'; })) return std::nullopt;
  answer.number = words;
  return answer;
}

std::optional<PaperAnswer> read_paper_answer(std::string_view text, Units units) {
  std::string words = plain(text);
  if (take_word(words, "roll")) {
    take_any(words, {"of", "wide", "paper"});
    const auto width = size_of(words, units);
    if (!width) return std::nullopt;
    return PaperAnswer{std::string(kRoll), width};
  }
  take_any(words, {"paper", "sheets", "sheet"});
  if (!find_paper(words)) return std::nullopt;
  return PaperAnswer{words, std::nullopt};
}

}  // namespace swathe
