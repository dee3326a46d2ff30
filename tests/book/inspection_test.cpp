#include "book/inspection.hpp"

#include <algorithm>

#include "book/book_sheet.hpp"
#include "support/examples.hpp"
#include "support/label_font.hpp"
#include "support/made.hpp"
#include "support/made_examples.hpp"
#include "support/overlaps.hpp"
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
    const std::vector<InspectionRow> rows = inspection_rows(made);
    const auto ruled = std::ranges::count_if(
        made.findings, [](const Finding& finding) { return !finding.rule.empty(); });
    CHECK(static_cast<long>(rows.size()) == ruled);
    for (const Finding& finding : made.findings)
      if (!finding.rule.empty())
        CHECK(std::ranges::count_if(rows, [&](const InspectionRow& row) {
                return row.asks == finding.required && row.expects == finding.measured;
              }) >= 1);
    CHECK(card_of(made).size() == 1);
  }
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
    for (const InspectionRow& row : inspection_rows(made))
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
