#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include "support/drawn_number.hpp"
#include "swathe/job.hpp"

namespace swathe::fuzz {

/// A drawn job with all that its other tables may say.
inline Job drawn_whole(std::mt19937_64& rng) {
  using test::drawn;
  static const std::vector<Paper> kPapers = papers();
  Job job = test::drawn_number(rng);
  if (rng() % 6 == 0) {
    job.number.clear();
    job.numerals.sides.reset();
  }
  if (rng() % 2 == 0) job.units = Units::Millimeters;
  if (rng() % 4 == 0) job.cloth.fixing = Fixing::HookAndLoop;
  if (rng() % 4 == 0) job.cloth.stretch_along = drawn(rng, 0, 0.05);
  if (rng() % 4 == 0) {
    job.cloth.may_join = true;
    job.cloth.longest_piece = mm(drawn(rng, 400, 1500));
  }
  if (rng() % 3 == 0) job.paper.face = PaperFace::Outside;
  if (rng() % 4 == 0) job.paper.measured = {mm(drawn(rng, 98, 102)), mm(drawn(rng, 98, 102))};
  const Paper& paper = kPapers[rng() % kPapers.size()];
  job.paper.sheet = paper.name;
  job.paper.width = paper.width;
  job.paper.height = paper.height;
  if (rng() % 8 == 0) {
    job.paper.sheet = kRoll;
    job.paper.width = mm(drawn(rng, 300, 1000));
  }
  if (rng() % 4 == 0) job.numerals.make_legal = true;
  if (rng() % 4 == 0) job.numerals.spacing.tabular = true;
  for (auto blinds = rng() % 3; blinds > 0; --blinds) {
    const double x = drawn(rng, -300, 300), y = drawn(rng, -300, 300);
    job.sight.blind.push_back(
        {{mm(x), mm(y), mm(0)},
         {mm(x + drawn(rng, 20, 300)), mm(y + 100), mm(drawn(rng, 50, 900))}});
  }
  for (BracketKeys& bracket : job.brackets)
    if (rng() % 2 == 0) {
      bracket.cloth = BracketCloth::Under;
      bracket.holes = {{0.5 * bracket.width.mm(), 0.5 * bracket.height.mm()}};
    }
  return job;
}

/// A job's text that a few bytes change, a line at a time: dropped, given another line's value or
/// word, its numbers scaled or set, its whole table said once more.
class TextChanger {
 public:
  explicit TextChanger(std::string_view text) {
    while (!text.empty()) {
      const auto end = std::min(text.find('\n'), text.size() - 1);
      lines_.emplace_back(text.substr(0, end));
      text.remove_prefix(end + 1);
    }
  }

  void change(std::uint8_t where, std::uint8_t how, std::uint8_t much) {
    std::string& line = lines_[where % lines_.size()];
    const int rank = how / 16;
    switch (how % 16) {
      case 0:
        line.clear();
        break;
      case 1:
        give(line, value_of(lines_[(where + much) % lines_.size()]));
        break;
      case 2:
        give(line, kWords[much % std::size(kWords)]);
        break;
      case 3:
        say_again(where % lines_.size());
        break;
      case 4:
      case 5:
        number(line, rank, [&](double) { return static_cast<double>(much) - 16; });
        break;
      default:  // most jobs shall still stand
        number(line, rank, [&](double was) { return was * std::exp2((much - 128) / 32.0); });
    }
  }

  std::string text() const {
    std::string all;
    for (const std::string& line : lines_) all += line + "\n";
    return all;
  }

 private:
  static constexpr std::string_view kWords[] = {
      "\"corner\"", "\"roll\"",    "\"tabular\"", "\"font\"",         "true",
      "false",      "[]",          "\"block\"",   "\"mitred\"",       "\"butted\"",
      "\"lapped\"", "\"sewn\"",    "\"window\"",  "\"sew-on\"",       "\"paint-mask\"",
      "\"a4\"",     "\"bent\"",    "\"2020\"",    "\"none\"",         "\"right\"",
      "\"side0\"",  "\"iron-on\"", "\"outside\"", "\"letter\"",       "{}",
      "\"12345\"",  "\"OSP-DIN\"", "\"A\"",       "\"hook-and-loop\""};

  static std::string value_of(const std::string& line) {
    const auto at = line.find(" = ");
    return at == std::string::npos ? "0" : line.substr(at + 3);
  }
  static void give(std::string& line, std::string_view value) {
    const auto at = line.find(" = ");
    if (at != std::string::npos) line.replace(at + 3, std::string::npos, value);
  }

  /// Changes the number of that rank in the line's value.
  template <class Change>
  static void number(std::string& line, int rank, Change change) {
    const auto figure = [](char c) { return (c >= '0' && c <= '9') || c == '.' || c == '-'; };
    auto at = line.find(" = ");
    for (; at < line.size(); ++at) {
      if (!figure(line[at])) continue;
      auto end = at;
      while (end < line.size() && figure(line[end])) ++end;
      const auto was = parse_number(std::string_view(line).substr(at, end - at));
      if (was && rank-- == 0) {
        line.replace(at, end - at, plain_number(change(*was), 4));
        return;
      }
      at = end;
    }
  }

  void say_again(std::size_t line) {
    auto first = line;
    while (first > 0 && !lines_[first].starts_with('[')) --first;
    const auto begin = lines_.begin() + static_cast<std::ptrdiff_t>(first);
    const auto end =
        std::find_if(begin + 1, lines_.end(), [](const auto& l) { return l.starts_with('['); });
    const std::vector<std::string> table(begin, end);
    lines_.insert(lines_.end(), table.begin(), table.end());
  }

  std::vector<std::string> lines_;
};

/// What a fuzzed input says: a seed of eight bytes for a drawn job; then which writer; then three
/// bytes for each change.
struct DrawnInput {
  std::string text;
  int writer = -1;  ///< -1 where the input ends with the seed: all of them
};
inline DrawnInput drawn_input(const std::uint8_t* data, std::size_t size) {
  std::uint64_t seed = 0;
  for (std::size_t i = 0; i < 8 && i < size; ++i) seed = seed << 8 | data[i];
  std::mt19937_64 rng(seed);
  DrawnInput input{job_text(drawn_whole(rng))};
  if (size <= 8) return input;
  input.writer = data[8];
  constexpr std::size_t kMostChanges = 12;
  TextChanger changer(input.text);
  for (std::size_t at = 9; at + 3 <= size && at < 9 + 3 * kMostChanges; at += 3)
    changer.change(data[at], data[at + 1], data[at + 2]);
  input.text = changer.text();
  return input;
}

}  // namespace swathe::fuzz
