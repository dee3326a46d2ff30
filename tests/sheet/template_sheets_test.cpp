#include "sheet/template_sheets.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "sheet/template_parts.hpp"
#include "sheet/texts.hpp"
#include "support/label_font.hpp"
#include "support/made_examples.hpp"
#include "support/overlaps.hpp"

namespace swathe {
namespace {

/// Where a template is laid, way by way, as one line; without its places in inches.
std::string uses_in_words(const TemplatePart& part) {
  std::vector<std::pair<std::string, std::string>> ways;
  for (const auto& [where, at, how] : part.uses) {
    const auto way = std::ranges::find(ways, how, &std::pair<std::string, std::string>::first);
    if (way == ways.end())
      ways.emplace_back(how, where);
    else
      way->second += "; " + where;
  }
  std::string words;
  for (const auto& [how, where] : ways) {
    if (!words.empty()) words += " ";
    words +=
        how.empty() ? where : sheet_texts::say("template.laid", {{"how", how}, {"where", where}});
  }
  return words;
}

/// The page's columns of text, read downwards: lines that begin at one place, each just below the
/// one before it.
std::vector<std::string> columns_of(const Page& page) {
  constexpr double kMostStep = 9.0;  // mm, from base line to base line
  std::vector<TextMark> texts = test::texts_of(page.drawing);
  std::erase_if(texts, [](const TextMark& text) {
    return text.turn != 0 || text.anchor != draw::Anchor::Left;
  });
  std::ranges::stable_sort(texts, [](const TextMark& a, const TextMark& b) {
    return std::abs(a.at.x - b.at.x) > 1e-6 ? a.at.x < b.at.x : a.at.y > b.at.y;
  });
  std::vector<std::string> columns;
  for (std::size_t k = 0; k < texts.size(); ++k) {
    const bool on = k > 0 && std::abs(texts[k].at.x - texts[k - 1].at.x) <= 1e-6 &&
                    texts[k - 1].at.y - texts[k].at.y < kMostStep;
    if (on)
      columns.back() += " " + texts[k].text;
    else
      columns.push_back(texts[k].text);
  }
  return columns;
}

bool is_tile(const Page& page) {
  return std::ranges::any_of(test::texts_of(page.drawing),
                             [](const TextMark& text) { return text.text.starts_with("tile "); });
}

TEST_CASE("templates on tiles: where each is laid stands together, in its order, off all lines") {
  const Font face = test::label_font();
  std::size_t on_tiles = 0;
  for (const auto& path : test::example_jobs())
    for (const char* paper : {"letter", "a4"}) {
      CAPTURE(path.filename().string());
      CAPTURE(std::string(paper));
      const Made made =
          test::made(test::bytes_of(path) + fmt::format("\n[paper]\nsheet = \"{}\"\n", paper));
      for (std::size_t bumper = 0; bumper < made.patterns.size(); ++bumper) {
        const Sheet sheet = template_sheets(made, bumper, made.job.paper, face);
        if (sheet.pages.empty()) continue;
        std::vector<std::string> on_pages, on_their_tiles;
        for (const Page& page : sheet.pages) {
          const std::vector<std::string> columns = columns_of(page);
          auto& all = is_tile(page) ? on_their_tiles : on_pages;
          all.insert(all.end(), columns.begin(), columns.end());
          if (!is_tile(page)) continue;
          for (const std::string& fault : test::text_faults(page, face, 0.3)) FAIL_CHECK(fault);
          for (const std::string& fault : test::lines_through_text(page, face)) FAIL_CHECK(fault);
        }
        for (const TemplatePart& part : template_parts(made, bumper)) {
          const std::string first = part.uses.front().where, all = uses_in_words(part);
          const auto names_it = [&](const std::string& column) {
            return column.find(first) != std::string::npos;
          };
          if (std::ranges::any_of(on_pages, names_it)) continue;
          ++on_tiles;
          CHECK_MESSAGE(std::ranges::count_if(
                            on_their_tiles,
                            [&](const std::string& column) { return column.find(all) == 0; }) == 1,
                        all);
        }
      }
    }
  CHECK(on_tiles > 20);
}

TEST_CASE("templates: pages that are numbered count the tiles after them") {
  const Font face = test::label_font();
  int before_tiles = 0;
  for (const auto& path : test::example_jobs())
    for (const char* paper : {"letter", "a4"}) {
      CAPTURE(path.filename().string());
      const Made made =
          test::made(test::bytes_of(path) + fmt::format("\n[paper]\nsheet = \"{}\"\n", paper));
      for (std::size_t bumper = 0; bumper < made.patterns.size(); ++bumper) {
        const Sheet sheet = template_sheets(made, bumper, made.job.paper, face);
        const bool has_tiles = std::ranges::any_of(sheet.pages, is_tile);
        for (std::size_t k = 0; k < sheet.pages.size() && sheet.pages.size() > 1; ++k) {
          if (is_tile(sheet.pages[k])) continue;
          CHECK(test::says(sheet.pages[k].drawing,
                           fmt::format("page {} of {}", k + 1, sheet.pages.size())));
          before_tiles += has_tiles ? 1 : 0;
        }
      }
    }
  CHECK(before_tiles > 10);
}

}  // namespace
}  // namespace swathe
