#include "sheet/same_cover_words.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "book/book_sheet.hpp"
#include "pattern/joins.hpp"
#include "sheet/pattern_sheet.hpp"
#include "support/jobs.hpp"
#include "support/label_font.hpp"
#include "support/made_by_hand.hpp"
#include "support/overlaps.hpp"

namespace swathe {
namespace {

bool any_page_says(const Sheet& sheet, const std::string& words) {
  return std::ranges::any_of(sheet.pages,
                             [&](const Page& page) { return test::says(page.drawing, words); });
}

TEST_CASE("one print for two covers: both say so, and the list says which side is which") {
  Job job = test::c_halves(711.2, 762);
  Made made = test::made_by_hand(job);
  CHECK(same_words(made, 0) ==
        "For bumper A, use this print as it is. Cut the same again for bumper B");
  CHECK(same_words(made, 1) == "Same as bumper A: print A once and cut 2 more");
  const Font face = test::label_font();
  CHECK(any_page_says(pattern_sheet(made, 0, face), "Cut the same again for bumper B"));
  CHECK(any_page_says(book_sheet(made, made.job.paper, face), "front is back"));

  job.bumpers[0].from = {"front", RunEnd::Share{0.7}};
  job.bumpers[1].to = {"front", RunEnd::Share{0.3}};
  made = test::made_by_hand(job);
  CHECK(
      same_words(made, 0) ==
      "For bumper A, use this print as it is. Cut again for bumper B: turn this paper half round, "
      "not over");
  CHECK(same_words(made, 1) ==
        "Same as bumper A: print A once and cut 2 more. Turn A's paper half round, not over");
  CHECK(any_page_says(pattern_sheet(made, 1, face),
                      "This drawing is bumper B's own: use it as it is"));
}

TEST_CASE("a cover with a print of its own is told to use it as it is, and no paper is turned") {
  // Sameness by hand: the words are for what it holds, whatever the covers are.
  Made made = test::made_by_hand(test::demo_job());
  for (const auto how : {Sameness::How::Same, Sameness::How::Turned, Sameness::How::Mirrored}) {
    made.same[1] = Sameness{0, how, {"windows"}, {}};
    CHECK(same_words(made, 1) ==
          "For bumper B, use this print as it is. Bumper A has other windows");
    CHECK(same_words(made, 0).empty());
    made.same[1] = Sameness{0, how, {}, {}};
    const bool over = how == Sameness::How::Mirrored;
    CHECK((same_words(made, 0).find("turn this paper over") != std::string::npos) == over);
    CHECK((same_words(made, 1).find("Turn A's paper over") != std::string::npos) == over);
  }
}

TEST_CASE("a joined cover's pieces are named at their seams and in the list") {
  Job job = test::c_halves(711.2, 762);
  job.cloth.may_join = true;
  job.cloth.longest_piece = inches(60);
  Made made = test::made_by_hand(job);
  for (std::size_t b = 0; b < made.patterns.size(); ++b)
    made.joins[b] = *lay_joins(made.patterns[b], job, {});
  const Font face = test::label_font();
  for (const char* piece : {"A1", "A2"}) {
    CHECK(any_page_says(pattern_sheet(made, 0, face), std::string("PIECE ") + piece));
    CHECK(any_page_says(book_sheet(made, made.job.paper, face), piece));
  }
  CHECK(any_page_says(book_sheet(made, made.job.paper, face), "Sew each cover's"));
}

}  // namespace
}  // namespace swathe
