#include "draw/page_head.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "draw/texts.hpp"

namespace swathe {
namespace {

constexpr double kGap = 6.0;  ///< between the parts of a head, and below it
constexpr double kGapCautions = 2.5;
constexpr double kLeastTitle = 70.0;  ///< width
constexpr double kMostTitle = 170.0;
constexpr std::size_t kKeyRows = 5;
constexpr double kShareOfHow = 0.58;  ///< of what is left beside the title
constexpr double kGapHow = 1.75;      ///< between its sentences

/// A part of the head drawn on its own at the origin.
struct Part {
  Drawing drawing;
  plane::Box box;
};

void put(Drawing& onto, const Part& part, FlatPoint top_left) {
  onto.add(part.drawing, {false, 0.0, top_left - FlatPoint{part.box.lo.x, part.box.hi.y}});
}

constexpr std::array kExplained = {
    LineKind::Cut,    LineKind::CutLast, LineKind::Fold,  LineKind::Stitch,  LineKind::Corner,
    LineKind::Staple, LineKind::Punch,   LineKind::Match, LineKind::Numeral, LineKind::Bridge};

}  // namespace

plane::Box draw_page_head(Drawing& onto, const Font& labels, const plane::Box& room,
                          const PageHead& head) {
  std::vector<Part> beside;  // right of the title, from the right edge inwards
  if (head.scales) {
    Part part;
    part.box = draw_check_scales(part.drawing, labels, {0, 0});
    beside.push_back(std::move(part));
  }
  if (!head.key.empty()) {
    Part part;
    const int columns = static_cast<int>((head.key.size() + kKeyRows - 1) / kKeyRows);
    part.box = draw_line_key(part.drawing, labels, {0, 0}, head.key, columns);
    beside.push_back(std::move(part));
  }
  double right = room.hi.x, bottom = room.hi.y;
  for (const Part& part : beside) {
    if (right - part.box.width() - kGap - room.lo.x < kLeastTitle) break;
    right -= part.box.width();
    put(onto, part, {right, room.hi.y});
    bottom = std::min(bottom, room.hi.y - part.box.height());
    right -= kGap;
  }
  if (!head.how.empty()) {
    const double width = kShareOfHow * (right - room.lo.x);
    right -= width;
    FlatPoint at{right, room.hi.y};
    for (const std::string& line : head.how)
      at.y = draw_text_block(onto, labels, at, width, line).lo.y - kGapHow;
    bottom = std::min(bottom, at.y + kGapHow);
    right -= kGap;
  }
  const double width = std::min(right - room.lo.x, kMostTitle);
  const plane::Box title =
      draw_title_block(onto, labels, {room.lo.x, room.hi.y}, width, head.title);
  bottom = std::min(bottom, title.lo.y) - kGap;
  if (!head.cautions.empty()) {
    // Side by side where each keeps its two lines, else one below the other.
    const auto columns =
        std::clamp<double>(std::floor((room.width() + kGap) / (kCautionWidth + kGap)), 1,
                           static_cast<double>(head.cautions.size()));
    double x = room.lo.x, lowest = bottom;
    for (std::size_t k = 0; k < head.cautions.size(); ++k) {
      if (k > 0 && std::fmod(static_cast<double>(k), columns) == 0.0) {
        x = room.lo.x;
        bottom = lowest - kGapCautions;
      }
      const plane::Box box = draw_caution(onto, labels, {x, bottom},
                                          std::min(kCautionWidth, room.width()), head.cautions[k]);
      lowest = std::min(lowest, box.lo.y);
      x += kCautionWidth + kGap;
    }
    bottom = lowest - kGap;
  }
  return {room.lo, {room.hi.x, bottom}};
}

Page empty_page(const PaperKeys& paper, bool wide) {
  const double longer = std::max(paper.width, paper.height).mm();
  const double shorter = std::min(paper.width, paper.height).mm();
  Page page;
  page.width_mm = wide ? longer : shorter;
  page.height_mm = wide ? shorter : longer;
  return page;
}

plane::Box printable(const Page& page, const PaperKeys& paper) {
  return plane::Box{{0, 0}, {page.width_mm, page.height_mm}}.grown(-paper.margin.mm());
}

std::string of_pages(std::size_t page, std::size_t pages) {
  return pages < 2 ? ""
                   : draw_texts::say("page", {{"page", std::to_string(page)},
                                              {"pages", std::to_string(pages)}});
}

std::vector<LineKind> kinds_to_explain(const Drawing& drawing) {
  std::vector<LineKind> kinds;
  for (const LineKind kind : kExplained) {
    const bool used = std::ranges::any_of(drawing.marks(), [&](const draw::Mark& mark) {
      const auto* line = std::get_if<LineMark>(&mark);
      const auto* fill = std::get_if<FillMark>(&mark);
      return (line && line->kind == kind) || (fill && fill->kind == kind);
    });
    if (used) kinds.push_back(kind);
  }
  return kinds;
}

}  // namespace swathe
