#include "sheet/template_sheets.hpp"

#include <algorithm>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

#include "draw/furniture.hpp"
#include "draw/label_placer.hpp"
#include "draw/marks.hpp"
#include "draw/page_head.hpp"
#include "draw/shelves.hpp"
#include "sheet/file_names.hpp"
#include "sheet/pattern_drawing.hpp"
#include "sheet/same_cover_words.hpp"
#include "sheet/template_parts.hpp"
#include "sheet/texts.hpp"
#include "tile/correction.hpp"
#include "tile/tile_on_paper.hpp"

namespace swathe {
namespace {

using sheet_texts::say;

constexpr double kGap = 5.0;
constexpr double kWordsGap = 2.0;
constexpr double kLeastWords = 70.0;  ///< width for the list of uses
constexpr double kGrain = 40.0;       ///< length of the arrow
constexpr int kKeyColumns = 3;
constexpr double kLeastPleat = 25.0;  ///< a shorter stretch of fold has no room for its arrows

std::string title_of(const Made& made, std::size_t bumper) {
  return say("title.templates", {{"bumper", made.patterns[bumper].bumper}});
}

/// A line for each way the paper is laid: "turned half round: end on back, top half; ...".
std::vector<std::string> use_lines(const TemplatePart& part, bool with_place) {
  std::vector<std::pair<std::string, std::string>> lines;  // how, and where
  for (const auto& [place, at, how] : part.uses) {
    const std::string where =
        with_place ? say("template.where", {{"place", place}, {"at", at}}) : place;
    const auto there = std::ranges::find(lines, how, &std::pair<std::string, std::string>::first);
    if (there == lines.end())
      lines.emplace_back(how, where);
    else
      there->second += "; " + where;
  }
  std::vector<std::string> words;
  for (const auto& [how, where] : lines)
    words.push_back(how.empty() ? where : say("template.laid", {{"how", how}, {"where", where}}));
  return words;
}

/// What the piece says of itself once it is cut from its page, where its lines leave room.
void draw_own_words(Drawing& onto, const plane::Box& piece, const Made& made, std::size_t bumper,
                    const TemplatePart& part, const Font& labels) {
  LabelPlacer placer(onto, labels, piece);
  const TextBlock::Line name{say("template.name", {{"bumper", made.patterns[bumper].bumper},
                                                   {"use", part.uses.front().where}})},
      face{say("face.top-and-face", {{"face", face_words(made)}})};
  const FlatPoint aim = piece.middle();
  if (!placer.block({{name, face}}, piece, aim))
    for (const TextBlock::Line& line : {name, face}) placer.block({{line}}, piece, aim);
  const double high = kTextHeight + 4.0;
  if (const auto spot = placer.claim(kGrain, high, piece, aim)) {
    const FlatPoint from{spot->lo.x, spot->lo.y + 1.5};
    draw_long_grain(onto, from, from + FlatPoint{kGrain, 0});
    onto.text({spot->middle().x, from.y + 2.0}, say("face.grain"), kTextHeight,
              draw::Anchor::Middle);
  }
}

/// The kinds of line of all templates, to be explained on each page.
std::vector<LineKind> kinds_of(const std::vector<TemplatePart>& parts) {
  Drawing all;
  for (const TemplatePart& part : parts)
    for (const TemplateLine& line : part.lines) all.line(line.kind, line.path);
  return kinds_to_explain(all);
}

/// A drawing, lower left corner at the origin.
struct Block {
  Drawing drawing;
  FlatPoint size;
};

/// The key in so many columns, or in as many as the width holds.
Block key_of(const std::vector<LineKind>& kinds, const Font& labels, double most_width,
             int most_columns = kKeyColumns) {
  Drawing key;
  plane::Box box;
  for (int columns = most_columns; columns > 0; --columns) {
    key = {};
    box = draw_line_key(key, labels, {0, 0}, kinds, columns);
    if (box.width() <= most_width) break;
  }
  Block block{{}, {std::min(box.width(), most_width), box.height()}};
  block.drawing.add(key, {false, 0, FlatPoint{} - box.lo});
  return block;
}

/// A template with its uses below it. Its size is known before its lines are drawn, which takes
/// much longer and is not asked for where pages are only counted.
struct Cell {
  const TemplatePart* part;
  Drawing uses;       ///< upper left corner at the origin
  double uses_below;  ///< that it reaches below it
  FlatPoint size;
};
Cell cell_of(const TemplatePart& part, const Font& labels, double words_width,
             bool with_place = true) {
  Cell cell{&part, {}, 0, {}};
  const plane::Box uses =
      draw_text_blocks(cell.uses, labels, {1.0, 0}, words_width - 2.0, use_lines(part, with_place));
  cell.uses_below = kWordsGap - uses.lo.y;
  cell.size = {std::max(part.size.x, words_width), part.size.y + cell.uses_below + kWordsGap};
  return cell;
}

/// Templates that a page holds, and those that go on tiles.
struct Cells {
  std::vector<Cell> fit;
  std::vector<const TemplatePart*> too_large;
};

/// Where cells lie, one after another but for a last one that would have a page for itself, on
/// pages of that room, with the key after them.
std::vector<Shelved> laid(const std::vector<Cell>& cells, const plane::Box& room,
                          const std::optional<Block>& key = {}) {
  std::vector<FlatPoint> sizes;
  for (const Cell& cell : cells) sizes.push_back(cell.size);
  if (key) sizes.push_back(key->size);
  return shelve_on_fewer(sizes, room, room, kGap);
}
std::size_t pages_of(const std::vector<Shelved>& places) {
  std::size_t pages = 0;
  for (const Shelved& place : places) pages = std::max(pages, place.page + 1);
  return pages;
}

/// Where the kinds of line are explained.
enum class KeyPlace {
  EveryPage,
  AmongTemplates,  ///< once, where a key on every page would leave a template no room
};

/// The templates of one cover and the pages for them.
class Templates {
 public:
  Templates(const Made& made, std::size_t bumper, const PaperKeys& paper, const Font& labels)
      : made_(made),
        bumper_(bumper),
        paper_(paper),
        labels_(labels),
        parts_(template_parts(made, bumper)),
        kinds_(kinds_of(parts_)) {}

  /// How its pages are laid out.
  struct Layout {
    KeyPlace key;
    plane::Box room;  ///< on each page where there are several
    Cells cells;
  };
  /// With a key on every page, but where fewer templates would then find room on pages, and there
  /// is room for it beside them.
  Layout layout() const {
    const auto fit = [](const Layout& on) {
      return on.room.height() > 0 ? on.cells.fit.size() : 0;
    };
    Layout every = layout(KeyPlace::EveryPage);
    if (fit(every) == parts_.size()) return every;
    Layout among = layout(KeyPlace::AmongTemplates);
    if (fit(every) == fit(among)) return every;
    // What finds no room goes on tiles, where the paper holds them.
    return !holds_tiles(paper_) || key_among(among) ? among : every;
  }
  Layout layout(KeyPlace key) const {
    const plane::Box room = fresh_page(1, 2, key).room;
    return {key, room, cells_on(room)};
  }

  Page blank_page() const {
    Page page = empty_page(paper_, false);
    page.name = title_of(made_, bumper_);
    return page;
  }
  Page headed_page(std::size_t number, std::size_t of, KeyPlace key_place) const {
    return fresh_page(number, of, key_place).page;
  }
  /// The key after the templates, in a shape with which they take no page more; nothing where each
  /// would take one for itself.
  std::optional<Block> key_among(const Layout& on) const {
    const std::size_t pages = pages_of(laid(on.cells.fit, on.room));
    for (int columns = kKeyColumns; columns > 0; --columns) {
      Block key = key_of(kinds_, labels_, on.room.width(), columns);
      if (pages_of(laid(on.cells.fit, on.room, key)) == pages) return key;
    }
    return {};
  }
  Block key(double most_width) const { return key_of(kinds_, labels_, most_width); }

  /// A template without its uses, lower left corner at the origin.
  Drawing drawn(const TemplatePart& part) const {
    Drawing lines;
    for (const TemplateLine& line : part.lines) {
      const Showing shown(lines, line.shows);
      if (line.kind == LineKind::Fold && length(line.path) > kLeastPleat)
        draw_pleat(lines, line.path, line.under);
      else if (line.kind == LineKind::CutLast && line.path.closed)
        draw_window(lines, line.path);
      else
        lines.line(line.kind, line.path);
    }
    const plane::Box piece{{0, 0}, part.size};
    lines.line(LineKind::Thin, rectangle(piece.lo, piece.hi));
    draw_own_words(lines, piece, made_, bumper_, part, labels_);
    return lines;
  }
  /// A cell, lower left corner at the origin.
  Drawing drawn(const Cell& cell) const {
    Drawing all;
    all.add(drawn(*cell.part), {false, 0, {0, cell.size.y - cell.part->size.y}});
    all.add(cell.uses, {false, 0, {0, cell.uses_below}});
    return all;
  }

 private:
  struct FreshPage {
    Page page;
    plane::Box room;  ///< for templates
  };
  /// A page of so many, with its head.
  FreshPage fresh_page(std::size_t number, std::size_t of, KeyPlace key_place) const {
    FreshPage fresh{blank_page(), {}};
    PageHead head;
    head.title = {made_.job.title,
                  fresh.page.name,
                  of_pages(number, of),
                  {face_words(made_), say("face.top-away"), same_words(made_, bumper_),
                   print_words(), correction_words(paper_), say("template.figures")}};
    head.scales = true;
    const plane::Box room =
        draw_page_head(fresh.page.drawing, labels_, printable(fresh.page, paper_), head);
    fresh.room = room;
    if (key_place == KeyPlace::EveryPage) {
      const Block block = key(room.width());
      fresh.room.hi.y -= block.size.y + kGap;
      fresh.page.drawing.add(block.drawing, {false, 0, {room.lo.x, room.hi.y - block.size.y}});
    }
    return fresh;
  }

  Cells cells_on(const plane::Box& room) const {
    Cells cells;
    for (const TemplatePart& part : parts_) {
      const double narrow = std::min(kLeastWords, room.width());
      Cell cell = cell_of(part, labels_, std::clamp(part.size.x, narrow, room.width()));
      if (cell.size.y > room.height()) cell = cell_of(part, labels_, room.width());
      // Places may be left out: the measuring sheet has them, too.
      if (cell.size.y > room.height()) cell = cell_of(part, labels_, room.width(), false);
      if (cell.size.x <= room.width() && cell.size.y <= room.height())
        cells.fit.push_back(std::move(cell));
      else
        cells.too_large.push_back(&part);
    }
    return cells;
  }

  const Made& made_;
  std::size_t bumper_;
  const PaperKeys& paper_;
  const Font& labels_;
  std::vector<TemplatePart> parts_;
  std::vector<LineKind> kinds_;
};

}  // namespace

std::optional<SheetName> template_name(const Made& made, std::size_t bumper, const PaperKeys& paper,
                                       const Font& labels) {
  // Every cover has ends, so wherever tiles can be printed, there is a template to print.
  if (!holds_tiles(paper) &&
      Templates(made, bumper, paper, labels).layout(KeyPlace::AmongTemplates).cells.fit.empty())
    return {};
  return SheetName{stem_of(made, bumper, "templates"), title_of(made, bumper), SheetKind::Templates,
                   paper.sheet};
}

Sheet template_sheets(const Made& made, std::size_t bumper, const PaperKeys& paper,
                      const Font& labels, PageFill fill) {
  auto name = template_name(made, bumper, paper, labels);
  if (!name) return {};
  Sheet sheet{std::move(*name), {}};
  const Templates templates(made, bumper, paper, labels);
  const Templates::Layout layout = templates.layout();
  const auto& [key_place, room, cells] = layout;
  std::optional<Block> key;
  if (!cells.fit.empty() && key_place == KeyPlace::AmongTemplates) {
    key = templates.key_among(layout);
    if (!key) key = templates.key(room.width());
  }
  std::vector<Page> tiles;  // after the pages, which count them in their heads
  for (const TemplatePart* part : cells.too_large) {
    const Page page{part->size.x, part->size.y, templates.drawn(*part), sheet.title};
    TileWords words{sheet.stem, made.job.title, "", face_words(made), same_words(made, bumper)};
    words.below = use_lines(*part, false);  // tiles leave little room
    for (Page& tile : tile_on_paper(page, paper, labels, std::move(words), fill).pages)
      tiles.push_back(std::move(tile));
  }
  const std::vector<Shelved> places = laid(cells.fit, room, key);
  const std::size_t headed = pages_of(places), of = headed + tiles.size();
  const bool draws = fill == PageFill::Drawn;
  for (std::size_t k = 0; k < headed; ++k)
    sheet.pages.push_back(draws ? templates.headed_page(k + 1, of, key_place)
                                : templates.blank_page());
  const auto put = [&](const Drawing& drawing, const Shelved& place) {
    sheet.pages[place.page].drawing.add(drawing, {false, 0, place.at});
  };
  for (std::size_t k = 0; draws && k < cells.fit.size(); ++k)
    put(templates.drawn(cells.fit[k]), places[k]);
  if (draws && key) put(key->drawing, places.back());
  std::ranges::move(tiles, std::back_inserter(sheet.pages));
  return sheet;
}

}  // namespace swathe
