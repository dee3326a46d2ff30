#include "tile/correction.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "support/label_font.hpp"
#include "support/made_by_hand.hpp"
#include "support/picture.hpp"
#include "swathe/write.hpp"

namespace swathe {
namespace {

/// A printer that makes 100 mm so long, along each edge of its paper.
constexpr double kShort = 99.2, kLong = 100.4;
constexpr int kDpi = 600;

/// The ends of a page's 100 mm scale, across or down; nothing where it has none.
std::optional<std::pair<FlatPoint, FlatPoint>> scale_of(const Page& page, bool down) {
  for (const draw::Mark& mark : page.drawing.marks()) {
    const auto* const line = std::get_if<LineMark>(&mark);
    if (!line || line->kind != LineKind::Scale || line->path.vertices.size() != 2) continue;
    const FlatPoint a = line->path.vertices[0].at, b = line->path.vertices[1].at;
    const FlatPoint way{std::abs(b.x - a.x), std::abs(b.y - a.y)};
    if (std::abs((down ? way.y : way.x) - 100) < 1e-6 && (down ? way.x : way.y) < 1e-6)
      return std::pair{a, b};
  }
  return std::nullopt;
}

/// How long a scale is on the raster of its page, mm: the dark dots about its middle, less the
/// width of the ticks at its ends.
double drawn_length(const test::Picture& picture, FlatPoint middle, bool down) {
  const int x = static_cast<int>(std::lround(middle.x * picture.dots_per_mm));
  const int y = picture.height - static_cast<int>(std::lround(middle.y * picture.dots_per_mm));
  int longest = 0;
  for (int off = -4; off <= 4; ++off) {
    const int across = down ? x + off : x, along = down ? y : y + off;
    const auto dark = [&](int k) {
      const int px = down ? across : across + k, py = down ? along + k : along;
      return px >= 0 && py >= 0 && px < picture.width && py < picture.height &&
             picture.is_dark(px, py);
    };
    if (!dark(0)) continue;
    int from = 0, to = 0;
    while (dark(from - 1)) --from;
    while (dark(to + 1)) ++to;
    longest = std::max(longest, to - from + 1);
  }
  return longest / picture.dots_per_mm - style_of(LineKind::Scale).width_mm;
}

Job measured_job() {
  Job job = test::demo_job();
  job.paper.measured = {mm(kShort), mm(kLong)};
  return job;
}

TEST_CASE("printer correction: a corrected page times the printer's error is true") {
  const Font face = test::label_font();
  int pages = 0, upright = 0;
  for (const Sheet& sheet : all_sheets(test::made_by_hand(measured_job()), face)) {
    if (sheet.kind != SheetKind::Tiles && sheet.kind != SheetKind::Templates &&
        sheet.kind != SheetKind::Numerals)
      continue;
    if (!sheet.stem.starts_with("A-") && sheet.kind != SheetKind::Numerals) continue;
    std::string pdf;
    for (std::size_t k = 0; k < sheet.pages.size(); ++k) {
      const Page& page = sheet.pages[k];
      const bool stands = page.width_mm < page.height_mm;
      const double error_x = (stands ? kShort : kLong) / 100;
      const double error_y = (stands ? kLong : kShort) / 100;
      // The paper is what it is. Source: ANSI/ASME Y14.1, size A.
      CHECK(page.width_mm * page.print.x == doctest::Approx(stands ? 215.9 : 279.4));
      CHECK(page.height_mm * page.print.y == doctest::Approx(stands ? 279.4 : 215.9));
      for (const bool down : {false, true}) {
        const auto scale = scale_of(page, down);
        if (!scale || (!down && k > 1)) continue;  // every tile has one across: two are enough
        if (pdf.empty()) pdf = to_pdf(sheet, face);
        const test::Picture picture = test::raster(pdf, static_cast<int>(k) + 1, kDpi);
        const FlatPoint middle = 0.5 * (scale->first + scale->second);
        const double drawn =
            drawn_length(picture, {middle.x * page.print.x, middle.y * page.print.y}, down);
        CAPTURE(sheet.stem);
        CAPTURE(k);
        CAPTURE(down);
        CHECK(std::abs(drawn * (down ? error_y : error_x) / 100 - 1) < 0.002);
        CHECK(std::abs(drawn / 100 - 1) > 0.003);  // without the printer's error it is not
        ++(down ? upright : pages);
      }
    }
  }
  CHECK(pages >= 4);
  CHECK(upright >= 1);
}

TEST_CASE("printer correction: sheets at full size say so, drawings for cutters stay true") {
  const Font face = test::label_font();
  const std::vector<Sheet> plain = all_sheets(test::made_by_hand(test::demo_job()), face);
  const std::vector<Sheet> corrected = all_sheets(test::made_by_hand(measured_job()), face);
  const std::string words = correction_words(measured_job().paper);
  CHECK(words.find("99.2 mm") != std::string::npos);
  CHECK(words.find("100.4 mm") != std::string::npos);
  CHECK(correction_words(test::demo_job().paper).empty());
  const auto says = [](const Page& page) {
    std::string all;
    for (const draw::Mark& mark : page.drawing.marks())
      if (const auto* const text = std::get_if<TextMark>(&mark)) all += text->text + " ";
    return all.find("PDF corrected: 100 mm printed as") != std::string::npos;
  };
  for (const Sheet& sheet : corrected)
    if (sheet.kind == SheetKind::Pattern || sheet.kind == SheetKind::Tiles ||
        sheet.kind == SheetKind::Templates)
      for (const Page& page : sheet.pages) CHECK_MESSAGE(says(page), sheet.stem);
  for (const Sheet& sheet : plain)
    for (const Page& page : sheet.pages) {
      CHECK_FALSE(says(page));
      CHECK(page.print.x == 1);
      CHECK(page.print.y == 1);
    }
  // The cover's own lines, as a cutter gets them.
  const auto cut = [](const std::vector<Sheet>& sheets) {
    double sum = 0;
    for (const draw::Mark& mark : sheets.front().pages.front().drawing.marks())
      if (const auto* const line = std::get_if<LineMark>(&mark);
          line && line->kind == LineKind::Cut)
        sum += length(line->path);
    return sum;
  };
  CHECK(cut(corrected) == doctest::Approx(cut(plain)).epsilon(1e-12));
  const Page& page = corrected.front().pages.front();
  const std::string svg = to_svg(page, "", face);
  CHECK(svg.find("width=\"" + plain_number(page.width_mm, 4) + "mm\"") != std::string::npos);
}

}  // namespace
}  // namespace swathe
