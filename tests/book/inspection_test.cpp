#include <doctest/doctest.h>

#include <algorithm>

#include "book/book_sheet.hpp"
#include "book/card_words.hpp"
#include "support/examples.hpp"
#include "support/label_font.hpp"
#include "support/made.hpp"
#include "support/made_examples.hpp"
#include "support/overlaps.hpp"
#include "swathe/check.hpp"
#include "swathe/rules.hpp"

namespace swathe {
namespace {

std::vector<Page> card_of(const Made& made) {
  std::vector<Page> pages;
  for (Page& page : book_sheet(made, made.job.paper, test::label_font()).pages)
    if (page.name == "build book: inspector's card") pages.push_back(std::move(page));
  return pages;
}

TEST_CASE("inspector's card: every finding under a rule stands on it once, on one page") {
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made_example(path);
    const std::vector<CardRow> rows = card_rows(made.findings, *made.season);
    const auto ruled = std::ranges::count_if(
        made.findings, [](const Finding& finding) { return !finding.rule.empty(); });
    CHECK(static_cast<long>(rows.size()) == ruled);
    for (const Finding& finding : made.findings)
      if (!finding.rule.empty())
        CHECK(std::ranges::count_if(rows, [&](const CardRow& row) {
                return row.finding.required == finding.required &&
                       row.finding.measured == finding.measured;
              }) >= 1);
    CHECK(card_of(made).size() == 1);
  }
}

TEST_CASE("inspector's card: colors by name") {
  Job job;
  job.cloth.colors = {{"red", {0xb5 / 255.0, 0x12 / 255.0, 0x1b / 255.0}}};
  CHECK(card_words("at most 1 1/4 in", job) == "at most 1 1/4 in");
  CHECK(card_words("#b5121b", job) == "red");  // the cloth's own name
  CHECK(card_words("digits #ffffff", job) == "digits white");
  CHECK(card_words("#1b3a93", job) == "blue");
}

TEST_CASE("inspector's card: where two bumpers meet it says what fills the corner") {
  const Made made = test::made_example(test::example("kinds/one-a-side"));
  const std::vector<CardRow> rows = card_rows(made.findings, *made.season);
  CHECK(std::ranges::count_if(rows, [](const CardRow& row) {
          return row.finding.measured.find("fill the hollows by hand") != std::string::npos;
        }) == 1);
}

TEST_CASE("inspector's card: a line that the plan does not meet says so") {
  std::string text = test::bytes_of(SWATHE_SOURCE "/examples/tin-heron.toml");
  CHECK_FALSE(test::says(card_of(test::made(text)).front().drawing, "NOT MET"));
  const std::string height = "height = \"5 in\"";
  text.replace(text.find(height), height.size(), "height = \"4 in\"");  // boards
  const Made made = test::made(text);
  REQUIRE(std::ranges::any_of(made.findings, [](const Finding& finding) {
    return finding.id == "backing-height" && finding.verdict == Verdict::Fail;
  }));
  CHECK(test::says(card_of(made).front().drawing, "NOT MET: 4 in"));
}

TEST_CASE("inspector's card: it defers, and says how sure a rule is") {
  const std::string text = test::bytes_of(test::example("tin-heron"));
  const std::vector<Page> card = card_of(test::made(text));
  REQUIRE(card.size() == 1);
  CHECK(test::says(card[0].drawing, "the inspector decides"));
  for (const std::string& season : season_names()) {
    CAPTURE(season);
    std::string other = text;
    const std::string was = "season = \"2026\"";
    other.replace(other.find(was), was.size(), "season = \"" + season + "\"");
    const Made made = test::made(other);
    std::size_t at = 0;
    for (const CardRow& row : card_rows(made.findings, *made.season))
      at += row.rule.find('(') != std::string::npos ? 1 : 0;
    const auto unsure = std::ranges::count_if(made.findings, [](const Finding& finding) {
      return !finding.rule.empty() && finding.attested != Attested::Official;
    });
    CHECK(static_cast<long>(at) == unsure);
  }
  std::string none = text;
  none.replace(none.find("\"2026\""), 6, "\"none\"");
  CHECK(card_of(test::made(none)).empty());
}

}  // namespace
}  // namespace swathe
