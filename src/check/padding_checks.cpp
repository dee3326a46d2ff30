#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "check/checks.hpp"

namespace swathe {
namespace {

/// Height of the padding that has board behind it.
double backed_height(const Section& section) {
  return std::min(section.padding_top_mm(), section.height_mm()) -
         std::max(section.padding_bottom_mm(), 0.0);
}

void judge_core(const CheckedSet& s, const Season& season, Book& book) {
  const PaddingKeys& padding = s.job.padding;
  const bool hollow_allowed = season.padding_hollow->value;
  Judged j{"padding-core",
           "padding",
           hollow_allowed ? "hollow or solid" : "solid noodles",
           "",
           Verdict::Pass,
           "",
           {{Subject::padding()}, {"padding.core"}}};
  if (padding.form == PaddingForm::Block) {
    j.measured = "block";
  } else if (padding.core == Core::Unstated) {
    j.measured = "noodles, core unstated";
    j.verdict = hollow_allowed ? Verdict::Pass : Verdict::Unknown;
    j.advice = "look at the noodles' ends, and set padding.core";
  } else {
    const bool hollow = padding.core == Core::Hollow;
    j.measured = hollow ? "hollow noodles" : "solid noodles";
    j.verdict = hollow && !hollow_allowed ? Verdict::Fail : Verdict::Pass;
    j.advice = "take solid noodles: hollow ones are no longer allowed";
    j.about.mend = {{"padding.core", "\"solid\""}};
  }
  book.add(*season.padding_hollow, j);
}

void judge_even(const CheckedSet& s, const Season& season, Book& book) {
  const PaddingKeys& padding = s.job.padding;
  Judged j{
      "padding-form", "padding", "no wedge: not tapered, stepped or one half-round",       "block",
      Verdict::Pass,  "",        {{Subject::padding()}, {"padding.form", "padding.stack"}}};
  if (padding.form == PaddingForm::Noodles) {
    j.measured = fmt::format("{} equal noodle{}", padding.stack, padding.stack == 1 ? "" : "s");
    if (padding.stack == 1) {
      j.verdict = Verdict::Unknown;
      j.advice = "a single round may be read as a wedge: ask the inspector, or stack two";
    }
  }
  book.add(*season.padding_even, j);
}

/// "Nominal" names no tolerance, and foam is sold by none: near is passed, further off is a
/// warning.
void judge_noodle_pair(const CheckedSet& s, const Season& season, Book& book) {
  constexpr Length kNear = inches(1.0 / 8), kOff = inches(1.0 / 4);  // common practice, no source
  const PaddingKeys& padding = s.job.padding;
  const Length nominal = season.padding_noodle_pair->value;
  Judged j{"padding-form",
           "padding",
           fmt::format("a stacked pair of round noodles, {} nominal", book.exactly(nominal)),
           "block",
           Verdict::Fail,
           "take a stacked pair of round noodles",
           {{Subject::padding()},
            {"padding.form", "padding.stack", "padding.diameter"},
            {{"padding.form", "\"noodles\""},
             {"padding.stack", "2"},
             {"padding.diameter", book.value(nominal)}}}};
  if (padding.form == PaddingForm::Noodles) {
    const double off = std::abs((padding.diameter - nominal).mm());
    j.measured = fmt::format("{} noodle{} of {}", padding.stack, padding.stack == 1 ? "" : "s",
                             book.about(padding.diameter.mm()));
    if (padding.stack == 2 && off <= kOff.mm() + kNoTape) {
      j.verdict = off <= kNear.mm() + kNoTape ? Verdict::Pass : Verdict::Warn;
      j.advice = "the noodles are off nominal: ask the inspector";
    }
  }
  book.add(*season.padding_noodle_pair, j);
}

/// The furthest that padding runs past the end of the board behind it.
void judge_past_board(const CheckedSet& s, const Season& season, Book& book) {
  double most = 0;
  const Piece* where = nullptr;
  for (const Piece& padding : s.padding) {
    for (const Piece& board : s.boards) {
      if (board.bumper != padding.bumper || board.side != padding.side) continue;
      const double past = std::max(board.from_x - padding.from_x, padding.to_x - board.to_x);
      if (!where || past > most) {
        most = past;
        where = &padding;
      }
    }
  }
  if (!where) return;
  book.at_most(
      *season.padding_past_board,
      {"padding-form",
       fmt::format("bumper {}, {} padding past its board's end", where->bumper, where->side),
       std::max(0.0, most),
       "let the board run further, or cut the padding shorter",
       {{Subject::bumper(where->bumper)}, {"padding.lapping", "boards.lapping"}}},
      Grace::Inspection);
}

/// Padding and, where they are lower, boards of that height.
About as_high(const CheckedSet& s, Length height, const Book& book) {
  const PaddingKeys& padding = s.job.padding;
  About about{{Subject::padding(), Subject::boards()}, {"boards.height"}};
  if (padding.form == PaddingForm::Block) {
    about.keys.emplace_back("padding.height");
    if (padding.height < height) about.mend = {{"padding.height", book.value(height)}};
  } else {
    about.keys.insert(about.keys.end(), {"padding.stack", "padding.diameter"});
    const double needs = std::ceil((height.mm() - kNoTape) / padding.diameter.mm());
    if (needs > padding.stack)
      about.mend = {{"padding.stack", std::to_string(static_cast<int>(needs))}};
  }
  if (s.job.boards.height < height) about.mend.push_back({"boards.height", book.value(height)});
  return about;
}

}  // namespace

void check_padding(const CheckedSet& s, const Season& season, Book& book) {
  if (season.padding_depth) {
    book.at_least(*season.padding_depth,
                  {"padding-depth",
                   "padding before the boards",
                   s.section.padding_depth_mm(),
                   fmt::format("take padding {} deep", book.exactly(season.padding_depth->value)),
                   {{Subject::padding()},
                    {padding_depth_key(s.job)},
                    {{padding_depth_key(s.job), book.value(season.padding_depth->value)}}}},
                  Grace::Inspection);
  }
  if (season.padding_height) {
    const double has = backed_height(s.section);
    book.at_least(*season.padding_height,
                  {"padding-height", "padding backed by board", has,
                   fmt::format("{} is missing: stack it higher, or take higher boards",
                               book.on_tape(season.padding_height->value.mm() - has)),
                   as_high(s, season.padding_height->value, book)},
                  Grace::Inspection);
  }
  if (season.padding_hollow) judge_core(s, season, book);
}

void check_padding_form(const CheckedSet& s, const Season& season, Book& book) {
  if (season.padding_even && season.padding_even->value) judge_even(s, season, book);
  if (season.padding_noodle_pair) judge_noodle_pair(s, season, book);
  if (season.padding_past_board) judge_past_board(s, season, book);
}

}  // namespace swathe
