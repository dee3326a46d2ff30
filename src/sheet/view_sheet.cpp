#include "sheet/view_sheet.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "draw/page_head.hpp"
#include "sheet/sight_chart.hpp"
#include "sheet/texts.hpp"
#include "sheet/view_picture.hpp"
#include "swathe/base.hpp"

namespace swathe {
namespace {

using sheet_texts::say;

constexpr double kGap = 5.0;
constexpr double kCaption = 22.0;  // mm below each picture
constexpr double kHighestPicture = 40.0, kLowestPicture = 28.0;
constexpr std::size_t kMostRows = 8;

std::string deg(double value) { return plain_number(value, 0); }
std::string arcmin(double value) { return say("chart.angle", {{"angle", plain_number(value, 1)}}); }

std::string capital(std::string words) {
  for (char& c : words)
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  return words;
}

/// Heights of a number's shortest digit.
struct Heights {
  double cloth = 1e300, seen = 1e300;
};
Heights heights_of(const NumberInSpace& number) {
  Heights heights;
  for (const DigitInSpace& digit : number.digits) {
    heights.cloth = std::min(heights.cloth, digit.height);
    heights.seen = std::min(heights.seen, digit.seen_height);
  }
  return heights;
}

std::string arcs_words(const std::vector<std::pair<double, double>>& arcs) {
  std::string words;
  for (const auto& [from, to] : arcs) words += (words.empty() ? "" : ", ") + arc_words(from, to);
  return words.empty() ? say("chart.nowhere") : words;
}

class Views {
 public:
  Views(const Made& made, const PaperKeys& paper, const Font& labels, PageFill fill)
      : made_(made),
        paper_(paper),
        sight_(*made.sight),
        labels_(labels),
        fill_(fill),
        units_(made.job.units) {
    // The highest eye at the nearest distance: there the rounds show most.
    ring_ = &sight_.rings.front();
    for (const SightRing& ring : sight_.rings)
      if (ring.distance < ring_->distance ||
          (ring.distance == ring_->distance && ring.eye_height > ring_->eye_height))
        ring_ = &ring;
  }

  std::vector<Page> pages() const {
    std::vector<Page> pages;
    for (std::size_t n = 0; n < std::min(kMostRows, sight_.scene.numbers.size());)
      pages.push_back(picture_page(n));
    for (Page& page : chart_pages()) pages.push_back(std::move(page));
    return pages;
  }

 private:
  PageHead head(const std::string& subject, std::vector<std::string> how) const {
    PageHead head;
    head.title = {made_.job.title, subject, "", {}};
    head.how = std::move(how);
    return head;
  }

  Page picture_page(std::size_t& next) const {
    Page page = empty_page(paper_, false);
    page.name = say("views.page");
    const plane::Box room = draw_page_head(
        page.drawing, labels_, printable(page, paper_),
        head(say("views.head"), {say("views.from", {{"distance", walked(ring_->distance, units_)},
                                                    {"height", exact(ring_->eye_height, units_)}}),
                                 say("views.note", {{"chart", say("chart.head")}})}));
    const double wide = 0.5 * (room.width() - kGap);
    const double most = std::min(kHighestPicture, 0.45 * wide) + kCaption;
    const double least = std::min(most, kLowestPicture + kCaption);
    const auto most_rows =
        static_cast<std::size_t>(std::max(1.0, std::floor(room.height() / least)));
    const std::size_t fit = std::min(most_rows, sight_.scene.numbers.size());
    const double row = std::min(most, room.height() / static_cast<double>(fit));
    const std::size_t end = std::min({next + fit, kMostRows, sight_.scene.numbers.size()});
    if (fill_ == PageFill::Blank) {
      next = end;
      return page;
    }
    for (double top = room.hi.y; next < end; ++next) {
      const plane::Box left{{room.lo.x, top - row + kCaption}, {room.lo.x + wide, top}};
      const plane::Box right{{room.hi.x - wide, left.lo.y}, {room.hi.x, top}};
      square_on(page.drawing, left, next);
      at_worst(page.drawing, right, next);
      top -= row;
    }
    return page;
  }

  SpacePoint eye_at(double bearing_deg) const {
    const FlatPoint plan =
        sight_.scene.center + ring_->distance.mm() * towards(degrees(bearing_deg).radians());
    return {plan.x, plan.y, ring_->eye_height.mm()};
  }

  void caption(Drawing& onto, const plane::Box& box, const std::string& heading,
               const std::string& words) const {
    const plane::Box head =
        draw_text_block(onto, labels_, {box.lo.x, box.lo.y - 2}, box.width(), heading);
    draw_text_block(onto, labels_, {box.lo.x, head.lo.y - 1.2}, box.width(), words, kTableHeight);
  }

  void square_on(Drawing& onto, const plane::Box& box, std::size_t n) const {
    const NumberInSpace& number = sight_.scene.numbers[n];
    const NumberServes& serves = ring_->numbers[n];
    const bool reads = !serves.arcs_deg.empty();
    const double bearing =
        reads ? serves.square_deg : Angle::from_radians(number.bearing).degrees();
    draw_view(onto, box, made_, eye_at(bearing));
    std::string words = heights_words(number);
    if (reads)
      words = say("views.look", {{"digits", words},
                                 {"angle", arcmin(serves.square_arcmin)},
                                 {"least", plain_number(sight_.criterion.least.arcmin(), 0)}});
    const double turn =
        std::remainder(degrees(bearing).radians() - number.bearing, 2 * std::numbers::pi);
    const bool square = std::abs(Angle::from_radians(turn).degrees()) < 1.0;
    caption(onto, box,
            say(square ? "views.straight-on" : "views.best", {{"side", capital(number.side)}}),
            words);
  }

  void at_worst(Drawing& onto, const plane::Box& box, std::size_t n) const {
    const NumberInSpace& number = sight_.scene.numbers[n];
    const NumberServes& serves = ring_->numbers[n];
    const std::string side = capital(number.side);
    if (serves.arcs_deg.empty()) {
      caption(onto, box, say("views.cannot", {{"side", side}}), say("views.cannot-why"));
      return;
    }
    draw_view(onto, box, made_, eye_at(serves.worst_deg));
    const double share = serves.worst_arcmin / serves.square_arcmin;
    caption(onto, box, say("views.worst", {{"side", side}}),
            say("views.as-worst",
                {{"bearing", deg(std::fmod(serves.worst_deg, 360.0))},
                 {"off", deg(serves.worst_off_deg)},
                 {"like", dimension_with_unit(mm(share * heights_of(number).seen), units_)},
                 {"angle", arcmin(serves.worst_arcmin)},
                 {"digits", heights_words(number)}}));
  }

  /// "digits 3 7/8 in high on the cloth, seen 3 13/16 in"
  std::string heights_words(const NumberInSpace& number) const {
    const Heights heights = heights_of(number);
    return say("views.digits", {{"cloth", dimension_with_unit(mm(heights.cloth), units_)},
                                {"seen", dimension_with_unit(mm(heights.seen), units_)}});
  }

  /// The chart and its two tables. The tables are measured first, and the chart takes what they
  /// leave; where that is too little for all its bands, the second has a page of its own.
  std::vector<Page> chart_pages() const {
    std::vector<Page> pages;
    const plane::Box room = chart_page(pages, true);
    const Table circles = circle_table(), sides = side_table();
    Drawing trial;
    const double first_high = draw_table(trial, labels_, {0, 0}, circles).box.height(),
                 second_high = draw_table(trial, labels_, {0, 0}, sides).box.height();
    const double wanted = std::min(room.width(), sight_chart_side(sight_.rings.size()));
    const double left = room.height() - first_high - 3 * kGap;
    const bool together = left - second_high >= wanted || second_high > room.height();
    const double side =
        std::max(80.0, std::min(room.width(), together ? left - second_high : left));
    const FlatPoint middle{room.middle().x, room.hi.y - 0.5 * side};
    FlatPoint second{room.lo.x, room.hi.y - side - kGap - first_high - kGap};
    if (fill_ == PageFill::Drawn) {
      Drawing& onto = pages.front().drawing;
      draw_sight_chart(
          onto,
          {middle - FlatPoint{0.5 * side, 0.5 * side}, middle + FlatPoint{0.5 * side, 0.5 * side}},
          made_, labels_);
      draw_arc_key(onto, labels_, {room.lo.x, room.hi.y}, made_.job.number);
      draw_table(onto, labels_, {room.lo.x, room.hi.y - side - kGap}, circles);
    }
    if (!together) {
      const plane::Box next = chart_page(pages, false);
      second = {next.lo.x, next.hi.y};
    }
    if (fill_ == PageFill::Drawn) draw_table(pages.back().drawing, labels_, second, sides);
    return pages;
  }

  /// Adds a page with its head; the room below that.
  plane::Box chart_page(std::vector<Page>& pages, bool first) const {
    Page& page = pages.emplace_back(empty_page(paper_, false));
    page.name = say("chart.head");
    PageHead top = head(say("chart.head"), {});
    if (first)
      top.how = {say("chart.note", {{"least", plain_number(sight_.criterion.least.arcmin(), 0)},
                                    {"widest", deg(sight_.criterion.widest.degrees())}})};
    Drawing trial;
    return draw_page_head(fill_ == PageFill::Drawn ? page.drawing : trial, labels_,
                          printable(page, paper_), top);
  }

  Table circle_table() const {
    Table table;
    table.columns = {{say("chart.column-band"), draw::Anchor::Right},
                     {say("chart.column-distance"), draw::Anchor::Right},
                     {say("chart.column-eyes"), draw::Anchor::Right},
                     {say("chart.column-read"), draw::Anchor::Right},
                     {say("chart.column-cannot")},
                     {say("chart.column-another")}};
    for (std::size_t k = 0; k < sight_.rings.size(); ++k) {
      const SightRing& ring = sight_.rings[k];
      table.rows.push_back(
          {std::to_string(k + 1), walked(ring.distance, units_), exact(ring.eye_height, units_),
           say("chart.share", {{"share", plain_number(100 * ring.fraction(Reads::Number), 0)}}),
           arcs_in_words(ring.arcs, Reads::Nothing, sight_.step),
           arcs_in_words(ring.arcs, Reads::Another, sight_.step)});
    }
    table.columns[4].width_mm = 42;
    table.columns[5].width_mm = 62;
    return table;
  }

  Table side_table() const {
    Table table;
    table.columns = {{say("chart.column-side")},
                     {say("chart.column-read-at", {{"distance", walked(ring_->distance, units_)}})},
                     {say("chart.column-out-to"), draw::Anchor::Right},
                     {say("chart.column-cloth"), draw::Anchor::Right},
                     {say("chart.column-seen"), draw::Anchor::Right},
                     {say("chart.column-straight-on"), draw::Anchor::Right},
                     {say("chart.column-worst"), draw::Anchor::Right}};
    for (std::size_t n = 0; n < sight_.scene.numbers.size(); ++n) {
      const NumberServes& serves = ring_->numbers[n];
      const Heights heights = heights_of(sight_.scene.numbers[n]);
      table.rows.push_back({serves.side, arcs_words(serves.arcs_deg),
                            walked(serves.farthest, units_),
                            dimension_with_unit(mm(heights.cloth), units_),
                            dimension_with_unit(mm(heights.seen), units_),
                            arcmin(serves.square_arcmin), arcmin(serves.worst_arcmin)});
    }
    table.columns[1].width_mm = 45;
    return table;
  }

  const Made& made_;
  const PaperKeys& paper_;
  const Sight& sight_;
  const Font& labels_;
  PageFill fill_;
  Units units_;
  const SightRing* ring_;
};

}  // namespace

std::optional<SheetName> view_name(const Made& made, const PaperKeys& paper) {
  if (!made.sight || made.sight->scene.numbers.empty()) return {};
  return SheetName{"views", say("title.views"), SheetKind::Views, paper.sheet};
}

Sheet view_sheet(const Made& made, const PaperKeys& paper, const Font& labels, PageFill fill) {
  auto name = view_name(made, paper);
  if (!name) return {};
  return {std::move(*name), Views(made, paper, labels, fill).pages()};
}

}  // namespace swathe
