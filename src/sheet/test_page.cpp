#include "sheet/test_page.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "draw/furniture.hpp"
#include "draw/page_head.hpp"
#include "sheet/texts.hpp"
#include "tile/correction.hpp"

namespace swathe {
namespace {

using sheet_texts::say;

constexpr double kScale = 100.0;  ///< mm, as the job's key asks for
constexpr double kAcross = 16.0;  ///< height of the scale across, with the gap below it
constexpr double kDown = 22.0;    ///< width of the scale down, with the gap beside it
constexpr double kGap = 3.0;      ///< between sentences
constexpr double kAnswer = 5.0;   ///< height of what is written on
constexpr double kLeastWide = 120.0, kLeastHigh = 200.0;  ///< inside the margins

}  // namespace

std::optional<SheetName> test_page_name(const PaperKeys& paper) {
  const Length wide = std::min(paper.width, paper.height) - 2 * paper.margin;
  const Length high = std::max(paper.width, paper.height) - 2 * paper.margin;
  if (wide.mm() < kLeastWide || high.mm() < kLeastHigh) return {};
  return SheetName{"test-page", say("title.test-page"), SheetKind::TestPage, paper.sheet};
}

Sheet test_page(const Made& made, const PaperKeys& paper, const Font& labels, PageFill fill) {
  auto name = test_page_name(paper);
  if (!name) return {};
  Sheet sheet{std::move(*name), {}};
  Page page = empty_page(paper, false);
  page.name = sheet.title;
  if (fill == PageFill::Drawn) {
    PageHead head;
    head.title = {made.job.title, say("test.head"), "", {correction_words(paper)}};
    const plane::Box room = draw_page_head(page.drawing, labels, printable(page, paper), head);
    FlatPoint at{room.lo.x, room.hi.y};
    const auto write = [&](const std::string& words, double height) {
      at.y = draw_text_block(page.drawing, labels, at, room.hi.x - at.x, words, height).lo.y - kGap;
    };
    write(say("test.print"), kTextHeight);
    // The scale across stands above the one down, which has the questions beside it.
    draw_check_scale(page.drawing, labels, {at.x + kDown, at.y}, kScale, say("test.across"));
    at.y -= kAcross;
    draw_check_scale(page.drawing, labels, at, kScale, say("test.down"), true);
    at.x += kDown;
    write(say("test.ask"), kTextHeight);
    write(say("test.answer-across"), kAnswer);
    write(say("test.answer-down"), kAnswer);
    if (paper.measured) {
      write(say("test.right-again"), kTextHeight);
      write(say("test.wrong-again"), kTextHeight);
    } else {
      write(say("test.right"), kTextHeight);
      write(say("test.wrong"), kTextHeight);
      write(say("test.type"), kAnswer);
      write(say("test.type-what"), kTextHeight);
    }
  }
  sheet.pages.push_back(std::move(page));
  return sheet;
}

}  // namespace swathe
