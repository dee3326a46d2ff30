#include "sheet/numeral_sheets.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <optional>
#include <tuple>
#include <utility>

#include "draw/page_head.hpp"
#include "draw/shelves.hpp"
#include "sheet/cautions.hpp"
#include "sheet/numeral_cells.hpp"
#include "sheet/placing.hpp"
#include "sheet/stroke_page.hpp"
#include "sheet/texts.hpp"
#include "tile/correction.hpp"
#include "tile/tile_on_paper.hpp"

namespace swathe {
namespace {

using sheet_texts::say;

constexpr double kGap = 4.0;
constexpr double kBanner = 10.0;        ///< capitals read from across the bench
constexpr std::size_t kMostOrders = 6;  ///< digits of which every order is tried: 720

/// The words for a method on its sheet, as ids of texts.
struct MethodWords {
  const char* title;
  const char* how;
  const char* banner;                 ///< in large type on every page; may be empty
  std::vector<const char*> cautions;  ///< by name
};

MethodWords words_of(const NumeralKeys& keys) {
  switch (keys.method) {
    case NumeralMethod::Stencil:
      return {"title.stencils",
              is_one_sheet(keys) ? "digits.one-stencil-how" : "digits.stencils-how",
              "",
              {"blade", "spray"}};
    case NumeralMethod::PaintMask:
      return {"title.paint-masks", "digits.masks-how", "", {"blade", "spray"}};
    case NumeralMethod::IronOn:
      return {"title.iron-on", "digits.iron-on-how", "digits.iron-on-banner", {"blade", "iron"}};
    case NumeralMethod::SewOn:
      return {"title.sew-on", "digits.sew-on-how", "", {"shears", "needle"}};
  }
  return {};
}

std::string height_words(const Numerals& numerals, Units units) {
  double least = 1e300, most = 0;
  for (const Digit& digit : numerals.digits) {
    least = std::min(least, digit.height);
    most = std::max(most, digit.height);
  }
  const std::string high = dimension_with_unit(mm(most), units);
  if (dimension_with_unit(mm(least), units) == high)
    return say("digits.height", {{"height", high}});
  return say("digits.heights", {{"least", dimension(mm(least), units)}, {"most", high}});
}

/// "DejaVu Sans, digits 4 in high; for 3 places and 1 spare, on red and blue cloth"
std::string about_words(const Made& made) {
  const int places = made.numerals->showings(), spares = made.job.numerals.spares;
  const std::string& font = made.numerals->font;
  const std::string height = height_words(*made.numerals, made.job.units);
  const std::string places_words = places == 1
                                       ? say("digits.one-place")
                                       : say("digits.places", {{"count", std::to_string(places)}});
  std::vector<std::string> names;
  for (const ClothColor& color : made.job.cloth.colors) names.push_back(color.name);
  const std::string colors = sheet_texts::listed(names);
  if (spares == 0)
    return say("digits.about",
               {{"font", font}, {"height", height}, {"places", places_words}, {"colors", colors}});
  const std::string spares_words = spares == 1
                                       ? say("digits.one-spare")
                                       : say("digits.spares", {{"count", std::to_string(spares)}});
  return say("digits.about-with-spares", {{"font", font},
                                          {"height", height},
                                          {"places", places_words},
                                          {"spares", spares_words},
                                          {"colors", colors}});
}

std::string outline_words(const Made& made) {
  if (!(made.numerals->outline > 0)) return "";
  return say("digits.outline", {{"width", exact(made.job.numerals.outline, made.job.units)}});
}

/// What to do with the pieces, sentence by sentence.
std::vector<std::string> how_words(const Made& made, const MethodWords& words) {
  std::vector<std::string> how = {say(words.how)};
  const auto has_bridges = [](const Digit& digit) {
    return !digit.bridges.empty() || (digit.white && !digit.white->bridges.empty());
  };
  if (needs_bridges(made.job.numerals.method) &&
      std::ranges::any_of(made.numerals->digits, has_bridges))
    how.push_back(say("digits.bridges"));
  if (covers_neighbor(made)) how.push_back(say("digits.wet-neighbor"));
  return how;
}

/// Which way the first page lies, and the others.
struct Ways {
  bool first_wide, later_wide;
};

/// Lays cells on pages.
class Pages {
 public:
  /// `words` run across the first page below its head.
  Pages(const std::vector<NumeralCell>& cells, const PaperKeys& paper, PageHead head,
        std::string words, std::string banner, const Font& labels)
      : cells_(cells),
        paper_(paper),
        head_(std::move(head)),
        words_(std::move(words)),
        banner_(std::move(banner)),
        labels_(labels) {}

  /// Cells that no page holds.
  std::vector<const NumeralCell*> too_large;

  /// Plans the fewest pages, in the cells' own order where that will do; how many there are.
  std::size_t plan() {
    for (const Ways ways : {Ways{false, false}, {true, true}, {false, true}, {true, false}})
      if (auto plan = plan_for(ways); !best_ || better(plan, *best_)) best_ = std::move(plan);
    too_large = best_->too_large;
    return best_->pages();
  }

  /// The pages as planned, as the first of `of` pages.
  std::vector<Page> lay(PageFill fill, std::size_t of) const {
    if (!best_) return {};
    return fill == PageFill::Blank ? blank(*best_) : drawn(*best_, of);
  }

 private:
  struct Plan {
    Ways ways;
    std::vector<const NumeralCell*> cells, too_large;  ///< in the order in which they are laid
    std::vector<Shelved> places;
    bool own_order = true;

    std::size_t pages() const { return places.empty() ? 0 : places.back().page + 1; }
  };

  static bool better(const Plan& a, const Plan& b) {
    const auto cost = [](const Plan& p) {
      return std::tuple{p.too_large.size(), p.pages(), !p.own_order};
    };
    return cost(a) < cost(b);
  }

  /// A page with its head, and what is left of it for cells.
  Page page_with(bool first, bool wide, const std::string& number, plane::Box& room) const {
    PageHead head = head_;
    head.title.sheet = number;
    if (!first) head.cautions.clear();
    Page page = blank_page(wide);
    room = draw_page_head(page.drawing, labels_, printable(page, paper_), head);
    if (first) {
      const plane::Box box =
          draw_text_block(page.drawing, labels_, {room.lo.x, room.hi.y}, room.width(), words_);
      room.hi.y = box.lo.y - kGap;
    }
    if (!banner_.empty()) {
      const double fits = kBanner * room.width() / labels_.text_width_mm(banner_, kBanner);
      const double height = std::min(kBanner, fits);
      page.drawing.text({room.lo.x, room.hi.y - height}, banner_, height);
      room.hi.y -= height + kGap;
    }
    return page;
  }

  plane::Box room_of(bool first, bool wide) const {
    plane::Box room;
    page_with(first, wide, of_pages(cells_.size(), cells_.size() + 1), room);  // a line of its own
    return room;
  }

  Plan plan_for(Ways ways) const {
    const plane::Box first = room_of(true, ways.first_wide),
                     later = room_of(false, ways.later_wide);
    Plan plan{ways, {}, {}, {}};
    for (const NumeralCell& cell : cells_) {
      const bool fits = cell.size.x <= later.width() && cell.size.y <= later.height();
      (fits ? plan.cells : plan.too_large).push_back(&cell);
    }
    std::vector<std::size_t> order(plan.cells.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto shelved = [&] {
      std::vector<FlatPoint> sizes;
      for (const std::size_t k : order) sizes.push_back(plan.cells[k]->size);
      return shelve(sizes, first, later, kGap);
    };
    plan.places = shelved();
    if (order.size() > kMostOrders) return plan;
    std::vector<std::size_t> best = order;
    while (std::ranges::next_permutation(order).found) {
      auto places = shelved();
      if (places.back().page >= plan.places.back().page) continue;
      plan.places = std::move(places);
      plan.own_order = false;
      best = order;
    }
    std::vector<const NumeralCell*> sorted;
    for (const std::size_t k : best) sorted.push_back(plan.cells[k]);
    plan.cells = std::move(sorted);
    return plan;
  }

  Page blank_page(bool wide) const {
    Page page = empty_page(paper_, wide);
    page.name = head_.title.subject;
    return page;
  }

  std::vector<Page> blank(const Plan& plan) const {
    std::vector<Page> pages;
    for (std::size_t k = 0; k < plan.pages(); ++k)
      pages.push_back(blank_page(k == 0 ? plan.ways.first_wide : plan.ways.later_wide));
    return pages;
  }

  std::vector<Page> drawn(const Plan& plan, std::size_t of) const {
    std::vector<Page> pages;
    for (std::size_t k = 0; k < plan.pages(); ++k) {
      plane::Box room;
      pages.push_back(page_with(k == 0, k == 0 ? plan.ways.first_wide : plan.ways.later_wide,
                                of_pages(k + 1, of), room));
    }
    for (std::size_t k = 0; k < plan.cells.size(); ++k)
      pages[plan.places[k].page].drawing.add(plan.cells[k]->drawing, {false, 0, plan.places[k].at});
    return pages;
  }

  const std::vector<NumeralCell>& cells_;
  const PaperKeys& paper_;
  PageHead head_;
  std::string words_;
  std::string banner_;
  const Font& labels_;
  std::optional<Plan> best_;
};

}  // namespace

std::optional<SheetName> numeral_name(const Made& made, const PaperKeys& paper) {
  if (!made.numerals) return {};
  const MethodWords words = words_of(made.job.numerals);
  return SheetName{"numerals", say(words.title, {{"number", made.job.number}}), SheetKind::Numerals,
                   paper.sheet};
}

Sheet numeral_sheets(const Made& made, const PaperKeys& paper, const Font& labels, PageFill fill) {
  auto name = numeral_name(made, paper);
  if (!name) return {};
  Sheet sheet{std::move(*name), {}};
  const Numerals& numerals = *made.numerals;
  const NumeralMethod method = made.job.numerals.method;
  const MethodWords words = words_of(made.job.numerals);
  const std::vector<NumeralCell> cells = numeral_cells(made, labels);

  PageHead head;
  head.title = {made.job.title, sheet.title, "", {print_words(), correction_words(paper)}};
  head.scales = true;
  for (const char* one : words.cautions) head.cautions.push_back(caution(one));
  if (method == NumeralMethod::SewOn) {
    Drawing all;
    for (const NumeralCell& cell : cells) all.add(cell.drawing, {});
    head.key = kinds_to_explain(all);
  }
  std::string told = about_words(made);
  for (const std::string& line : {numerals.change, outline_words(made)})
    if (!line.empty()) told += "\n" + line;
  for (const std::string& line : how_words(made, words)) told += "\n" + line;

  const std::string banner = *words.banner ? say(words.banner) : "";
  Pages pages(cells, paper, head, told, banner, labels);
  const std::size_t laid = cells.empty() ? 0 : pages.plan();
  std::vector<Page> tiles;
  for (const NumeralCell* cell : pages.too_large) {
    const Page page{cell->size.x, cell->size.y, cell->drawing,
                    fmt::format("{}: {}", head.title.subject, cell->name)};
    for (Page& one :
         tile_on_paper(page, paper, labels, {sheet.stem, made.job.title, "", banner, ""}, fill)
             .pages)
      tiles.push_back(std::move(one));
  }
  // The page of strokes comes last, or before tiles. Tiles have no room for a head, so what a head
  // says stands on that page.
  const std::size_t of = laid + tiles.size() + 1;
  PageHead about = head;
  about.title.sheet = of_pages(laid == 0 ? 1 : of, of);
  about.scales = false;
  about.key.clear();
  about.title.lines = {told};
  if (laid > 0) about.cautions.clear();
  Page stroke = stroke_page(made, paper, labels, about, fill);
  sheet.pages = pages.lay(fill, of);
  if (laid == 0) sheet.pages.push_back(stroke);
  for (Page& one : tiles) sheet.pages.push_back(std::move(one));
  if (laid > 0) sheet.pages.push_back(std::move(stroke));
  return sheet;
}

}  // namespace swathe
