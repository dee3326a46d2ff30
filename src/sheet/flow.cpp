#include "sheet/flow.hpp"

#include <algorithm>
#include <utility>

namespace swathe {
namespace {

constexpr double kAfter = 3.0;  ///< below an item
constexpr double kBeforeHeading = 4.0;
constexpr double kWithHeading = 24.0;  ///< room a heading wants below itself, and words a table
constexpr double kNumber = 9.0;        ///< room for a step's number
constexpr double kMostText = 175.0;    ///< longer lines are hard to follow
constexpr std::size_t kMostPages = 200;
constexpr double kLeastColumn = 30.0;  ///< of one that is made narrower

/// The same table; where it is wider than its room, its widest columns are made narrower.
Table fitted(Table table, const Face& labels, double room) {
  std::vector<double> widths;
  double over = -room;
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    widths.push_back(natural_width(table, c, labels, kTextHeight));
    over += widths.back();
  }
  while (over > 0) {
    const auto widest = std::ranges::max_element(widths);
    const double narrower = std::max(kLeastColumn, *widest - over);
    if (narrower >= *widest) break;
    over -= *widest - narrower;
    *widest = narrower;
    table.columns[static_cast<std::size_t>(widest - widths.begin())].width_mm = narrower;
  }
  return table;
}

}  // namespace

Flow::Flow(const PaperKeys& paper, const Face& labels, PageHead head)
    : paper_(paper), labels_(labels), head_(std::move(head)) {}

void Flow::heading(const std::string& words) {
  items_.push_back({Item::Kind::Heading, words, "", {}});
}

void Flow::words(const std::string& words) { items_.push_back({Item::Kind::Words, words, "", {}}); }

void Flow::steps(const std::vector<std::string>& steps) {
  for (std::size_t k = 0; k < steps.size(); ++k)
    items_.push_back({Item::Kind::Step, steps[k], std::to_string(k + 1), {}});
}

void Flow::table(const Table& table) { items_.push_back({Item::Kind::Table, "", "", table}); }

void Flow::caution(const std::string& words) {
  items_.push_back({Item::Kind::Caution, words, "", {}});
}

std::vector<Page> Flow::set(std::size_t of) const {
  std::vector<Page> pages;
  Box room;
  double y = 0;
  const auto turn = [&] {
    Page page = empty_page(paper_, false);
    page.name = head_.title.subject;
    PageHead head = head_;
    head.title.sheet = of_pages(pages.size() + 1, of);
    if (!pages.empty()) {
      head.title.lines.clear();
      head.cautions.clear();
    }
    room = draw_page_head(page.drawing, labels_, printable(page, paper_), head);
    y = room.hi.y;
    pages.push_back(std::move(page));
  };
  const auto fresh = [&] { return y >= room.hi.y; };
  turn();
  for (std::size_t k = 0; k < items_.size(); ++k) {
    const Item& item = items_[k];
    if (item.kind == Item::Kind::Table) {
      const Table table = fitted(item.table, labels_, room.width());
      std::size_t row = 0;
      do {
        Drawing trial;
        const TableDrawn drawn =
            draw_table(trial, labels_, {room.lo.x, y}, table, y - room.lo.y, row, kTextHeight);
        if (drawn.next == row && !table.rows.empty() && !fresh()) {
          turn();
          continue;
        }
        pages.back().drawing.add(trial, {});
        y = drawn.box.lo.y - kAfter;
        row = std::max(drawn.next, row + 1);
        if (row < table.rows.size()) turn();
      } while (row < table.rows.size() && pages.size() < kMostPages);
      continue;
    }
    const bool is_step = item.kind == Item::Kind::Step;
    const bool is_heading = item.kind == Item::Kind::Heading;
    const bool leads =
        is_heading || (k + 1 < items_.size() && items_[k + 1].kind == Item::Kind::Table);
    const auto draw = [&](Drawing& onto, double top) {
      const double width = std::min(room.width(), kMostText);
      if (item.kind == Item::Kind::Caution)
        return draw_caution(onto, labels_, {room.lo.x, top}, std::min(width, kCautionWidth),
                            item.words);
      if (is_step) draw_text_block(onto, labels_, {room.lo.x, top}, kNumber, item.number);
      const double indent = is_step ? kNumber : 0.0;
      return draw_text_block(onto, labels_, {room.lo.x + indent, top}, width - indent, item.words,
                             is_heading ? kTitleHeight : kTextHeight);
    };
    if (is_heading && !fresh()) y -= kBeforeHeading;
    Drawing trial;
    const Box box = draw(trial, y);
    if (!fresh() && box.lo.y - (leads ? kWithHeading : 0.0) < room.lo.y) {
      turn();
      y = draw(pages.back().drawing, y).lo.y - kAfter;
    } else {
      pages.back().drawing.add(trial, {});
      y = box.lo.y - kAfter;
    }
  }
  return pages;
}

std::vector<Page> Flow::pages() {
  // The head says how many pages there are, and its own height hangs on its words: set it twice.
  std::vector<Page> pages = set(set(2).size());
  items_.clear();
  return pages;
}

}  // namespace swathe
