#include "book/start_sheet.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>

#include "book/book_sheet.hpp"
#include "book/steps.hpp"
#include "draw/marks.hpp"
#include "support/examples.hpp"
#include "support/label_font.hpp"
#include "support/made.hpp"
#include "support/made_by_hand.hpp"
#include "support/made_examples.hpp"
#include "support/overlaps.hpp"
#include "swathe/check.hpp"

namespace swathe {
namespace {

Sheet start_of(const Made& made) {
  const Font labels = test::label_font();
  return start_sheet(made, print_ways(made, labels), made.job.paper, labels);
}

std::string all_words(const Page& page) {
  std::string words;
  for (const TextMark& text : test::texts_of(page.drawing)) words += text.text + " ";
  return words;
}

bool has(const std::string& words, const std::string& part) {
  return words.find(part) != std::string::npos;
}

Made made_that_fails() {
  return test::made(test::bytes_of(SWATHE_TEST_DATA "/golden/jobs/fails-rules.toml"));
}

TEST_CASE("start: one page, which every example finds room on") {
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    CHECK(start_of(test::made_example(path)).pages.size() == 1);
  }
  CHECK(start_of(made_that_fails()).pages.size() == 1);
}

TEST_CASE("start: the book's first page is the same but for its head") {
  const Font labels = test::label_font();
  for (const Made& made : {test::made_by_hand(test::demo_job()), made_that_fails()}) {
    const auto texts = [&](const Sheet& sheet) {
      std::vector<std::string> all;
      for (const TextMark& text : test::texts_of(sheet.pages.front().drawing))
        if (!text.text.ends_with("start here") && !text.text.starts_with("page "))
          all.push_back(text.text);
      return all;
    };
    const Sheet start = start_of(made), book = book_sheet(made, made.job.paper, labels);
    CHECK(texts(start) == texts(book));
    CHECK(test::says(book.pages.front().drawing, "build book: start here"));
    CHECK(start.stem == "00-start-here");
    CHECK(start.kind == SheetKind::Start);
  }
}

TEST_CASE("start: it names the files of every way, the test page and the numerals") {
  const Made made = test::made_by_hand(test::demo_job());
  const std::string words = all_words(start_of(made).pages.front());
  for (const char* name :
       {"test-page.pdf", "A-measures.pdf", "B-measures.pdf", "A-templates.pdf", "B-templates.pdf",
        "A-tiles.pdf", "B-tiles.pdf", "B-fold.pdf", "A-pattern.pdf", "B-pattern.pdf",
        "numerals.pdf", "placing.pdf", "book.pdf"})
    CHECK_MESSAGE(has(words, name), std::string(name));
}

TEST_CASE("start: a rule that is not met is told in words and in a heavy frame") {
  const auto heaviest = [](const Page& page) {
    double most = 0;
    for (const draw::Mark& mark : page.drawing.marks())
      if (const auto* fill = std::get_if<FillMark>(&mark);
          fill && fill->color == kBlack && fill->outlines.size() == 2)
        most = std::max(most, bounds(fill->outlines[1]).lo.x - bounds(fill->outlines[0]).lo.x);
    return most;
  };
  const Made good = test::made_by_hand(test::demo_job()), bad = made_that_fails();
  const std::vector<CardRow> rows = card_rows(bad.findings, *bad.season);
  const auto fails = [](const CardRow& row) { return row.finding.verdict == Verdict::Fail; };
  const auto failed = std::ranges::count_if(rows, fails);
  REQUIRE(failed > 0);
  const Page page = start_of(bad).pages.front();
  const std::string words = all_words(page);
  CHECK(has(words, "NOT READY"));
  CHECK(has(words, failed == 1 ? "1 rule not met" : fmt::format("{} rules not met", failed)));
  const auto first = std::ranges::find_if(rows, fails);
  CHECK(has(words, first->rule + ", "));
  CHECK(heaviest(page) > 2 * heaviest(start_of(good).pages.front()));
  CHECK(!has(all_words(start_of(good).pages.front()), "NOT READY"));
  Job none = test::demo_job();
  none.season = "none";
  CHECK(has(all_words(start_of(test::made_by_hand(none)).pages.front()), "No rules checked"));
}

TEST_CASE("card: a line that is not met stands out, and no other") {
  const auto bars = [](const Made& made) {
    std::size_t count = 0;
    for (const Page& page : book_sheet(made, made.job.paper, test::label_font()).pages)
      if (page.name == "build book: inspector's card")
        for (const draw::Mark& mark : page.drawing.marks())
          if (const auto* fill = std::get_if<FillMark>(&mark); fill && fill->color == kBlack)
            ++count;
    return count;
  };
  const auto not_met = [](const Made& made) {
    const std::vector<CardRow> rows = card_rows(made.findings, *made.season);
    return static_cast<std::size_t>(std::ranges::count(rows, false, &CardRow::met));
  };
  const Made good = test::made_by_hand(test::demo_job()), bad = made_that_fails();
  CHECK(not_met(bad) > not_met(good));
  CHECK(bars(bad) == not_met(bad));
  CHECK(bars(good) == not_met(good));
}

TEST_CASE("start: every step of the order of work has a short name, numbered as in the book") {
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made_example(path);
    const std::vector<StepName> names = step_names(made);
    std::size_t next = 1;
    for (const StepName& step : names) {
      CHECK(!step.name.empty());
      CHECK(step.name.size() <= 22);  // three columns of them on letter paper
      CHECK(step.first == next);
      CHECK(step.last >= step.first);
      next = step.last + 1;
    }
    CHECK(next == steps_of(made).size() + 1);
    const std::string words = all_words(start_of(made).pages.front());
    for (const StepName& step : names) CHECK(has(words, step.name));
  }
}

}  // namespace
}  // namespace swathe
