#include "draw/flow.hpp"

#include <algorithm>
#include <utility>

namespace swathe {
namespace {

constexpr double kAfter = 3.0;  ///< below an item
constexpr double kBeforeHeading = 4.0;
constexpr double kLeastTable = 24.0;  ///< a table is begun in no less room
constexpr double kSmallTable = 0.3;   ///< of a page's height
// Of a page's height:
constexpr double kLeastLast = 0.35;  ///< a chapter's last page is filled so far, where it can be,
constexpr double kMostFree = 0.5;    ///< the others being left free so far at most,
constexpr double kShareStep = 0.03;  ///< in steps
constexpr double kClose = 0.4;       ///< of the room between things, where that saves a page
constexpr double kMostText = 175.0;  ///< longer lines are hard to follow
constexpr std::size_t kMostPages = 200;
constexpr std::size_t kEveryPage = kMostPages;
constexpr std::size_t kAnyPage = 88;   ///< a page number as wide as any other
constexpr double kLeastColumn = 30.0;  ///< no column is made narrower than this
constexpr double kNarrower = 1.0;      ///< taken off a column at a time

double width_of(const Table& table, const Font& labels, double height_mm) {
  double width = 0;
  for (std::size_t c = 0; c < table.columns.size(); ++c)
    width += natural_width(table, c, labels, height_mm);
  return width;
}

/// The same table; where it is wider than its room, its widest columns are made narrower, as far as
/// their words allow.
Table fitted(Table table, const Font& labels, double room, double height_mm) {
  std::vector<double> widths, least;
  double over = -room;
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    widths.push_back(natural_width(table, c, labels, height_mm));
    over += widths.back();
  }
  for (std::size_t c = 0; c < table.columns.size() && over > 1e-6; ++c)
    least.push_back(std::max(kLeastColumn, least_width(table, c, labels, height_mm)));
  while (over > 1e-6) {
    std::size_t widest = widths.size();
    for (std::size_t c = 0; c < widths.size(); ++c)
      if (widths[c] > least[c] && (widest == widths.size() || widths[c] > widths[widest]))
        widest = c;
    if (widest == widths.size()) break;
    // A little at a time, so that columns as wide as one another stay so.
    const double narrower = std::max(least[widest], widths[widest] - std::min(over, kNarrower));
    over -= widths[widest] - narrower;
    widths[widest] = narrower;
    table.columns[widest].width_mm = narrower;
  }
  return table;
}

}  // namespace

Flow::Flow(const PaperKeys& paper, const Font& labels, PageHead head)
    : paper_(paper), labels_(labels), head_(std::move(head)) {
  Drawing trial;
  room_ = draw_page_head(trial, labels_, printable(empty_page(paper_, false), paper_),
                         head_of(1, kAnyPage, head_.title.subject));
}

void Flow::chapter(const std::string& name) {
  items_.push_back({Item::Kind::Chapter, name, {}, {}, 0});
}

void Flow::heading(const std::string& words) {
  Picture picture;
  picture.box = draw_text_block(picture.drawing, labels_, {0, 0}, std::min(width(), kMostText),
                                words, kTitleHeight);
  items_.push_back({Item::Kind::Heading, "", std::move(picture), {}, 0});
}

void Flow::words(const std::string& words) {
  Picture picture;
  picture.box =
      draw_text_block(picture.drawing, labels_, {0, 0}, std::min(width(), kMostText), words);
  items_.push_back({Item::Kind::Words, "", std::move(picture), {}, 0});
}

void Flow::caution(const std::string& words) {
  Picture picture;
  picture.box =
      draw_caution(picture.drawing, labels_, {0, 0}, std::min(width(), kCautionWidth), words);
  items_.push_back({Item::Kind::Caution, "", std::move(picture), {}, 0});
}

void Flow::table(const Table& table, double height_mm) {
  if (width_of(table, labels_, height_mm) > width() + 1e-6) height_mm = kTableHeight;
  Item item{Item::Kind::Table, "", {}, fitted(table, labels_, width(), height_mm), height_mm};
  Drawing trial;
  item.whole_mm = draw_table(trial, labels_, {0, 0}, item.table, 1e9, 0, height_mm).box.height();
  items_.push_back(std::move(item));
}

void Flow::picture(Picture picture) {
  items_.push_back({Item::Kind::Picture, "", std::move(picture), {}, 0});
}

PageHead Flow::head_of(std::size_t page, std::size_t of, const std::string& chapter) const {
  PageHead head = head_;
  head.title.subject = chapter;
  head.title.sheet = of_pages(page + 1, of);
  if (page > 0) {
    head.title.lines.clear();
    head.how.clear();
    head.cautions.clear();
  }
  return head;
}

bool Flow::leads(std::size_t item) const {
  using Kind = Item::Kind;
  if (item + 1 >= items_.size()) return false;
  const Kind kind = items_[item].kind, next = items_[item + 1].kind;
  if (next == Kind::Chapter) return false;
  if (kind == Kind::Heading || kind == Kind::Caution) return true;
  return kind == Kind::Words &&
         (next == Kind::Table || next == Kind::Picture || (next == Kind::Words && leads(item + 1)));
}

/// With less room than this the item goes to the next page, with what must follow it.
double Flow::wanted(std::size_t item, double after) const {
  const Item& it = items_[item];
  if (it.kind == Item::Kind::Table) {
    // A small one stays whole: a row or two would look lost on the next page.
    return it.whole_mm <= kSmallTable * room_.height() ? it.whole_mm : kLeastTable;
  }
  const double own = it.picture.box.height();
  return leads(item) ? own + after + wanted(item + 1, after) : own;
}

std::vector<Page> Flow::pages() {
  std::vector<Page> pages;
  std::vector<std::string> chapters;  // of each page

  struct Laid {
    std::vector<Page> pages;
    double used = 0;  ///< of the last one's height
  };
  // A chapter's items with `after` below each, on pages whose lowest part stays free; or only one
  // page's, counted from the chapter's first.
  const auto lay = [&](std::size_t first, std::size_t last, const std::string& chapter,
                       double most_free, double after = kAfter, std::size_t of = kEveryPage) {
    Laid laid;
    plane::Box room;
    double y = 0, free = 0;
    const auto turn = [&] {
      Page page = empty_page(paper_, false);
      page.name = chapter;
      Drawing trial;
      room = draw_page_head(trial, labels_, printable(page, paper_),
                            head_of(pages.size() + laid.pages.size(), kAnyPage, chapter));
      y = room.hi.y;
      free = of == kEveryPage || of == laid.pages.size() ? most_free : 0.0;
      room.lo.y += free;
      laid.pages.push_back(std::move(page));
    };
    const auto fresh = [&] { return y >= room.hi.y; };
    const auto set_table = [&](const Item& item) {
      std::size_t row = 0;
      do {
        Drawing trial;
        const TableDrawn drawn = draw_table(trial, labels_, {room.lo.x, y}, item.table,
                                            y - room.lo.y, row, item.height_mm);
        if (drawn.next == row && !item.table.rows.empty() && !fresh()) {
          turn();
          continue;
        }
        laid.pages.back().drawing.add(trial, {});
        y = drawn.box.lo.y - after;
        row = std::max(drawn.next, row + 1);  // a row too high for any page is left out
        if (row < item.table.rows.size()) turn();
      } while (row < item.table.rows.size() && pages.size() + laid.pages.size() < kMostPages);
    };
    turn();
    for (std::size_t k = first; k < last; ++k) {
      const Item& item = items_[k];
      if (item.kind == Item::Kind::Heading && !fresh()) y -= kBeforeHeading * after / kAfter;
      const double most =
          room_.height() - free;  // what is higher than a page is separated all the same
      if (!fresh() && y - std::min(wanted(k, after), most) < room.lo.y) turn();
      if (item.kind == Item::Kind::Table) {
        set_table(item);
        continue;
      }
      const plane::Box& box = item.picture.box;
      laid.pages.back().drawing.add(item.picture.drawing,
                                    {false, 0, {room.lo.x - box.lo.x, y - box.hi.y}});
      y -= box.height() + after;
    }
    laid.used = (room.hi.y - y) / (room.hi.y - room.lo.y + free);
    return laid;
  };
  // Where a chapter would leave little for its last page, a page less may hold it if all stands
  // closer; else its other pages leave it more, or the one before it does.
  const auto balanced = [&](std::size_t first, std::size_t last, const std::string& chapter) {
    Laid laid = lay(first, last, chapter, 0);
    const auto is_full = [&] { return laid.pages.size() < 2 || laid.used >= kLeastLast; };
    if (is_full()) return laid;
    double after = kAfter;
    if (Laid close = lay(first, last, chapter, 0, kClose * kAfter);
        close.pages.size() < laid.pages.size()) {
      laid = std::move(close);
      after = kClose * kAfter;
      if (is_full()) return laid;
    }
    for (const std::size_t of : {kEveryPage, laid.pages.size() - 2})
      for (double share = kShareStep; share < kMostFree && laid.used < kLeastLast;
           share += kShareStep) {
        Laid other = lay(first, last, chapter, share * room_.height(), after, of);
        if (other.pages.size() == laid.pages.size() && other.used > laid.used)
          laid = std::move(other);
      }
    return laid;
  };

  std::string chapter = head_.title.subject;
  for (std::size_t first = 0; first < items_.size();) {
    if (items_[first].kind == Item::Kind::Chapter) chapter = items_[first++].words;
    std::size_t last = first;
    while (last < items_.size() && items_[last].kind != Item::Kind::Chapter) ++last;
    for (Page& page : balanced(first, last, chapter).pages) {
      pages.push_back(std::move(page));
      chapters.push_back(chapter);
    }
    first = last;
  }
  for (std::size_t k = 0; k < pages.size(); ++k)
    draw_page_head(pages[k].drawing, labels_, printable(pages[k], paper_),
                   head_of(k, pages.size(), chapters[k]));
  items_.clear();
  return pages;
}

}  // namespace swathe
