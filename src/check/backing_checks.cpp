#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "check/checks.hpp"

namespace swathe {
namespace {

About board_height(const Book& book, Length height) {
  return {{Subject::boards()}, {"boards.height"}, {{"boards.height", book.value(height)}}};
}

void judge_nominal_height(const CheckedSet& s, const Season& season, Book& book) {
  const Length nominal = season.backing_nominal_height->value;
  const Length within =
      season.backing_height_within ? season.backing_height_within->value : Length();
  const double off = std::abs((s.job.boards.height - nominal).mm());
  book.add(
      *season.backing_nominal_height,
      {"backing-height", "boards",
       fmt::format("{} to {}", book.exactly(nominal - within), book.exactly(nominal + within)),
       book.about(s.job.boards.height.mm()), book.verdict(off - within.mm(), Grace::Inspection),
       fmt::format("rip the boards {} high", book.exactly(nominal)), board_height(book, nominal)});
}

/// What is sold under a nominal thickness measures less: 3/4 in sheets are made to 23/32 in or 3/4
/// in and a tolerance. Source: voluntary product standard PS 1, tolerances of unsanded panels:
/// 0.688 in is the least of 23/32, 0.781 in the most of 3/4.
void judge_thickness(const CheckedSet& s, const Season& season, Book& book) {
  const Length nominal = season.backing_nominal_thickness->value;
  const Length least = nominal - inches(0.062), most = nominal + inches(0.031);
  const Length has = s.job.boards.thickness;
  const double short_by = std::max((least - has).mm(), (has - most).mm());
  const Length may_be_read_so = inches(1.0 / 16);
  const Verdict verdict = short_by <= kNoTape                         ? Verdict::Pass
                          : short_by <= may_be_read_so.mm() + kNoTape ? Verdict::Warn
                                                                      : Verdict::Fail;
  book.add(*season.backing_nominal_thickness,
           {"backing-thickness",
            "boards",
            fmt::format("{} nominal: {} to {} measured", book.exactly(nominal),
                        book.about(least.mm()), book.about(most.mm())),
            book.about(has.mm()),
            verdict,
            fmt::format("take sheets sold as {}", book.exactly(nominal)),
            {{Subject::boards()}, {"boards.thickness"}}});
}

}  // namespace

void check_backing(const CheckedSet& s, const Season& season, Book& book) {
  if (season.backing_height) {
    book.at_least(
        *season.backing_height,
        {"backing-height", "boards", s.job.boards.height.mm(),
         fmt::format("rip the boards {} high", book.exactly(season.backing_height->value)),
         board_height(book, season.backing_height->value)},
        Grace::Inspection);
  }
  if (season.backing_nominal_height) judge_nominal_height(s, season, book);
  if (season.backing_nominal_thickness) judge_thickness(s, season, book);
}

// What stands behind the boards is the job's own word; the gap between is the fit.
void check_support(const CheckedSet& s, const Season& season, Book& book) {
  const bool backed = s.job.frame.backed;
  Judged by_word{"support",
                 "",
                 "",
                 backed ? "yes, by frame.backed" : "no, by frame.backed",
                 backed ? Verdict::Pass : Verdict::Fail,
                 "let the frame stand behind the boards",
                 {{Subject::frame(), Subject::boards()}, {"frame.backed"}}};
  if (season.support_end_backed) {
    by_word.subject = "ends of the boards";
    by_word.required =
        fmt::format("each backed by {} of frame", book.exactly(season.support_end_backed->value));
    book.add(*season.support_end_backed, by_word);
  }
  if (season.support_gap_depth && season.support_gap_width) {
    by_word.subject = "boards between their ends";
    by_word.required = fmt::format("no gap behind them both deeper than {} and wider than {}",
                                   book.exactly(season.support_gap_depth->value),
                                   book.exactly(season.support_gap_width->value));
    book.add(*season.support_gap_depth, by_word);
  }
  if (season.support_end_gap) {
    book.at_most(
        *season.support_end_gap,
        {"support",
         "gap between frame and boards",
         s.frame.fit().mm(),
         fmt::format("set frame.fit to {} or less", book.exactly(season.support_end_gap->value)),
         {{Subject::frame(), Subject::boards()},
          {"frame.fit"},
          {{"frame.fit", book.value(season.support_end_gap->value)}}}},
        Grace::Inspection);
  }
}

}  // namespace swathe
