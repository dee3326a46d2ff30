#include "book/book_sheet.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>

#include "book/steps.hpp"
#include "draw/flow.hpp"
#include "job/limits.hpp"
#include "support/examples.hpp"
#include "support/label_font.hpp"
#include "support/made.hpp"
#include "support/made_by_hand.hpp"
#include "support/overlaps.hpp"

namespace swathe {
namespace {

TEST_CASE("book: every page says which it is, of how many, and of which job") {
  const Made made = test::made_by_hand(test::demo_job());
  const Sheet book = book_sheet(made, made.job.paper, test::label_font());
  CHECK(book.stem == "book");
  CHECK(book.kind == SheetKind::Book);
  for (std::size_t k = 0; k < book.pages.size(); ++k) {
    const Drawing& drawing = book.pages[k].drawing;
    CHECK(test::says(drawing, fmt::format("page {} of {}", k + 1, book.pages.size())));
    CHECK(test::says(drawing, "Tin Heron, spring covers"));
    CHECK(test::says(drawing, "build book: "));
  }
}

TEST_CASE("book: a caution stands where the danger is") {
  const Made made = test::made_by_hand(test::demo_job());
  const Sheet book = book_sheet(made, made.job.paper, test::label_font());
  const auto page_says = [&](const std::string& words, const std::string& danger) {
    return std::ranges::any_of(book.pages, [&](const Page& page) {
      return test::says(page.drawing, words) && test::says(page.drawing, danger);
    });
  };
  CHECK(page_says("Saw: clamp", "Cuts, in the order"));
  CHECK(page_says("Drill: clamp", "Brackets"));
  CHECK(page_says("Staples: safety glasses", "Drive the staples"));
  CHECK(page_says("Blade: cut on a mat", "same as"));
}

TEST_CASE("book: no page is left with a sentence alone") {
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made(test::bytes_of(path), path.filename().string());
    for (const Page& page : book_sheet(made, made.job.paper, test::label_font()).pages) {
      CAPTURE(page.name);
      if (page.name == "build book: labels") continue;  // the last may be one alone
      // A head is three texts and a line, a sentence up to five lines more; a table, a picture or a
      // label is more.
      CHECK(std::ranges::size(page.drawing.marks()) > 10);
    }
  }
}

TEST_CASE("book: labels are all lettered alike, and large where no word is too long for them") {
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made(test::bytes_of(path), path.filename().string());
    std::size_t labels = 0;
    for (const Page& page : book_sheet(made, made.job.paper, test::label_font()).pages) {
      if (page.name != "build book: labels") continue;
      for (const TextMark& text : test::texts_of(page.drawing))
        if (text.text.ends_with(" long")) {
          ++labels;
          CHECK(text.height_mm == doctest::Approx(3.5));
        }
    }
    CHECK(labels >= 8);
  }
}

// By hand: brackets 1 and 2 are 9 in from the frame's corners with the front, so 9 1/16 in from the
// boards' ends, for 1/16 in of play. Their holes are 3/4 and 2 1/4 in on, and 3/4 in below their
// tops, which are 1/2 in below the board's.
TEST_CASE("book: a bracket's holes are told from the end that it is measured from") {
  const Made made = test::made(test::bytes_of(SWATHE_SOURCE "/examples/tin-heron.toml"));
  std::vector<std::string> holes;
  for (const Page& page : book_sheet(made, made.job.paper, test::label_font()).pages)
    for (const TextMark& text : test::texts_of(page.drawing))
      if (text.text.find(" / 1 1/4") != std::string::npos) holes.push_back(text.text);
  CHECK(holes == std::vector<std::string>{"9 13/16 / 1 1/4;", "11 5/16 / 1 1/4", "9 13/16 / 1 1/4;",
                                          "11 5/16 / 1 1/4"});
}

TEST_CASE("book: two boards of one bumper on one side have names of their own") {
  Job job = test::demo_job();
  job.bumpers.resize(1);
  job.bumpers[0].from = {"front", RunEnd::Share{0.6}};  // left, back, right, and front again
  job.bumpers[0].to = {"front", RunEnd::Share{0.4}};
  job.brackets.clear();
  const Made made = test::made_by_hand(job);
  CHECK(piece_name(made.boards.front()) == "A front by left");
  CHECK(piece_name(made.boards.back()) == "A front by right");
  CHECK(piece_name(made.boards[1]) == "A left");
  int pages = 0;
  for (const Page& page : book_sheet(made, job.paper, test::label_font()).pages) {
    // Wherever the one is told of, so is the other: in lists, on backs and on labels.
    const bool one = test::says(page.drawing, "A front by left");
    CHECK(one == test::says(page.drawing, "A front by right"));
    pages += one ? 1 : 0;
  }
  CHECK(pages >= 3);
}

TEST_CASE("book: the longest names lie over nothing") {
  const Font face = test::label_font();
  Job job = test::demo_job();
  const std::string longest = "Mittelwestnordoststossst";  // as many letters as a name may have
  REQUIRE(longest.size() == static_cast<std::size_t>(kMostName));
  job.bumpers[0].name = longest;
  for (std::string& side : job.frame.sides)
    if (side == "left") side = "linksundlinksundlinksund";
  job.boards.lapping = job.padding.lapping = {"front", "back"};
  job.brackets.clear();
  job.cloth.colors[0].name = "feuerrotfeuerrotfeuerrot";
  for (const Page& page : book_sheet(test::made_by_hand(job), job.paper, face).pages) {
    CAPTURE(page.name);
    for (const std::string& fault : test::text_faults(page, face)) FAIL_CHECK(fault);
    for (const std::string& fault : test::lines_through_text(page, face))
      if (fault != "a line runs through \"!\"") FAIL_CHECK(fault);
  }
}

TEST_CASE("flow: a heading goes to the next page with what it heads") {
  const Font face = test::label_font();
  const PaperKeys paper;
  for (const double taken : {150.0, 190.0, 200.0, 205.0, 210.0}) {
    Flow flow(paper, face, {{"job", "part", "", {}}, {}, false, {}, {}});
    flow.picture({{}, {{0, 0}, {50, taken}}});
    flow.heading("A heading");
    flow.words("Words");
    Picture picture;
    picture.box = {{0, 0}, {50, 30}};
    picture.drawing.text({1, 1}, "pictured");
    flow.picture(picture);
    const std::vector<Page> pages = flow.pages();
    for (const Page& page : pages) {
      const bool here = test::says(page.drawing, "A heading");
      CHECK(here == test::says(page.drawing, "Words"));
      CHECK(here == test::says(page.drawing, "pictured"));
    }
  }
}

TEST_CASE("flow: a table over two pages has its headings on both, and every row once") {
  Flow flow(PaperKeys{}, test::label_font(), {{"job", "part", "", {}}, {}, false, {}, {}});
  Table table;
  table.columns = {{"number"}};
  for (int k = 0; k < 60; ++k) table.rows.push_back({fmt::format("row {};", k)});
  flow.table(table);
  const std::vector<Page> pages = flow.pages();
  REQUIRE(pages.size() >= 2);
  for (const Page& page : pages) CHECK(test::says(page.drawing, "number"));
  for (int k = 0; k < 60; ++k)
    CHECK(std::ranges::count_if(pages, [&](const Page& page) {
            return test::says(page.drawing, fmt::format("row {};", k));
          }) == 1);
}

// The first two hold two halves each: were all pages to leave more free, it would take two more.
TEST_CASE("flow: of a chapter's last two pages the first leaves more to the other") {
  Flow flow(PaperKeys{}, test::label_font(), {{"job", "part", "", {}}, {}, false, {}, {}});
  const double high = flow.height();
  const auto add = [&](double share, const std::string& name) {
    Picture picture;
    picture.box = {{0, 0}, {50, share * high}};
    picture.drawing.text({1, 1}, name);
    flow.picture(picture);
  };
  for (const char* name : {"first;", "second;", "third;", "fourth;"}) add(0.49, name);
  for (const char* name : {"one;", "two;", "three;", "four;", "five;"}) add(0.22, name);
  const std::vector<Page> pages = flow.pages();
  REQUIRE(pages.size() == 4);
  CHECK(test::says(pages[0].drawing, "second;"));
  CHECK(test::says(pages[1].drawing, "fourth;"));
  CHECK(test::says(pages[2].drawing, "three;"));
  CHECK(test::says(pages[3].drawing, "four;"));
  CHECK(test::says(pages[3].drawing, "five;"));
}

TEST_CASE("steps: what dries says how long, and no marks of the text are left") {
  for (const NumeralMethod method : {NumeralMethod::Stencil, NumeralMethod::IronOn,
                                     NumeralMethod::SewOn, NumeralMethod::PaintMask}) {
    Job job = test::demo_job();
    job.numerals.method = method;
    std::string waits;
    for (const WorkStep& step : steps_of(test::made_by_hand(job))) {
      for (const std::string* words : {&step.what, &step.tools, &step.waits}) {
        CHECK(words->find_first_of("@+>~") == std::string::npos);
        CHECK(words->find("  ") == std::string::npos);
      }
      CHECK(!step.what.empty());
      waits += step.waits;
    }
    CHECK(waits.find("Glue") != std::string::npos);
    const bool paint = method == NumeralMethod::Stencil || method == NumeralMethod::PaintMask;
    CHECK((waits.find("Paint") != std::string::npos) == paint);
    CHECK((waits.find("Press") != std::string::npos) == (method == NumeralMethod::IronOn));
  }
}

}  // namespace
}  // namespace swathe
