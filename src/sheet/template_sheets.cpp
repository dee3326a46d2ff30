#include "sheet/template_sheets.hpp"

#include <algorithm>
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
constexpr double kTiled = 110.0;      ///< the same on a template larger than the paper
constexpr double kGrain = 40.0;       ///< length of the arrow
constexpr int kKeyColumns = 3;
constexpr double kLeastPleat = 25.0;  ///< a shorter stretch of fold has no room for its arrows

std::string title_of(const Made& made, std::size_t bumper) {
  return say("title.templates", {{"bumper", made.patterns[bumper].bumper}});
}

/// A template with its uses below it, lower left corner at the origin.
struct Cell {
  Drawing drawing;
  FlatPoint size;
};

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

Cell cell_of(const TemplatePart& part, const Made& made, std::size_t bumper, const Font& labels,
             double words_width, bool with_place = true) {
  Drawing words;
  double y = 0;
  for (const std::string& line : use_lines(part, with_place))
    y = draw_text_block(words, labels, {1.0, y}, words_width - 2.0, line).lo.y - kWordsGap;

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
  draw_own_words(lines, piece, made, bumper, part, labels);

  Cell cell;
  cell.size = {std::max(part.size.x, words_width), part.size.y - y + kWordsGap};
  cell.drawing.add(lines, {false, 0, {0, cell.size.y - part.size.y}});
  cell.drawing.add(words, {false, 0, {0, -y}});
  return cell;
}

/// The kinds of line of all templates, to be explained on each page.
std::vector<LineKind> kinds_of(const Made& made, std::size_t bumper) {
  Drawing all;
  for (const TemplatePart& part : template_parts(made, bumper))
    for (const TemplateLine& line : part.lines) all.line(line.kind, line.path);
  return kinds_to_explain(all);
}

/// The key in as many columns as the width holds: a cell like the templates.
Cell key_of(const std::vector<LineKind>& kinds, const Font& labels, double most_width) {
  Drawing key;
  plane::Box box;
  for (int columns = kKeyColumns; columns > 0; --columns) {
    key = {};
    box = draw_line_key(key, labels, {0, 0}, kinds, columns);
    if (box.width() <= most_width) break;
  }
  Cell cell{{}, {std::min(box.width(), most_width), box.height()}};
  cell.drawing.add(key, {false, 0, FlatPoint{} - box.lo});
  return cell;
}

Page blank_page(const Made& made, std::size_t bumper, const PaperKeys& paper) {
  Page page = empty_page(paper, false);
  page.name = title_of(made, bumper);
  return page;
}

/// Where the kinds of line are explained.
enum class KeyPlace {
  EveryPage,
  AmongTemplates,  ///< once, where a template would find no room under a page's own
};

/// A page of so many, with its head.
struct FreshPage {
  Page page;
  plane::Box room;  ///< for templates
};
FreshPage fresh_page(const Made& made, std::size_t bumper, const PaperKeys& paper,
                     const Font& labels, std::size_t number, std::size_t of, KeyPlace key_place) {
  FreshPage fresh{blank_page(made, bumper, paper), {}};
  PageHead head;
  head.title = {made.job.title,
                fresh.page.name,
                of_pages(number, of),
                {face_words(made), say("face.top-away"), same_words(made, bumper), print_words(),
                 correction_words(paper), say("template.figures")}};
  head.scales = true;
  const plane::Box room =
      draw_page_head(fresh.page.drawing, labels, printable(fresh.page, paper), head);
  fresh.room = room;
  if (key_place == KeyPlace::EveryPage) {
    const Cell key = key_of(kinds_of(made, bumper), labels, room.width());
    fresh.room.hi.y -= key.size.y + kGap;
    fresh.page.drawing.add(key.drawing, {false, 0, {room.lo.x, room.hi.y - key.size.y}});
  }
  return fresh;
}

/// Every template of a cover, those that its pages hold and those that go on tiles.
struct Cells {
  std::vector<Cell> fit, too_large;
};
Cells cells_on(const plane::Box& room, const Made& made, std::size_t bumper, const Font& labels) {
  Cells cells;
  for (const TemplatePart& part : template_parts(made, bumper)) {
    const double narrow = std::min(kLeastWords, room.width());
    Cell cell = cell_of(part, made, bumper, labels, std::clamp(part.size.x, narrow, room.width()));
    if (cell.size.y > room.height()) cell = cell_of(part, made, bumper, labels, room.width());
    // On tiles the words keep to the first.
    if (part.size.x > room.width())
      cell = cell_of(part, made, bumper, labels, std::min(kTiled, room.width()));
    const auto fits_room = [&] {
      return cell.size.x <= room.width() && cell.size.y <= room.height();
    };
    // Tiles leave little room for words: where it is laid stands in the measuring sheet as well.
    if (!fits_room())
      cell = cell_of(part, made, bumper, labels,
                     part.size.x > room.width() ? std::min(kTiled, room.width()) : room.width(),
                     false);
    const bool fits = fits_room();
    (fits ? cells.fit : cells.too_large).push_back(std::move(cell));
  }
  return cells;
}

/// The room on each page where there are several.
plane::Box room_on(const Made& made, std::size_t bumper, const PaperKeys& paper, const Font& labels,
                   KeyPlace key_place) {
  return fresh_page(made, bumper, paper, labels, 1, 2, key_place).room;
}

/// On every page, but where fewer templates would then find room on pages.
KeyPlace key_place_on(const Made& made, std::size_t bumper, const PaperKeys& paper,
                      const Font& labels) {
  const auto fit = [&](KeyPlace place) {
    const plane::Box room = room_on(made, bumper, paper, labels, place);
    return room.height() > 0 ? cells_on(room, made, bumper, labels).fit.size() : 0;
  };
  return fit(KeyPlace::EveryPage) < fit(KeyPlace::AmongTemplates) ? KeyPlace::AmongTemplates
                                                                  : KeyPlace::EveryPage;
}

}  // namespace

std::optional<SheetName> template_name(const Made& made, std::size_t bumper, const PaperKeys& paper,
                                       const Font& labels) {
  // Every cover has ends: where tiles go, there is a template to print.
  if (!holds_tiles(paper) &&
      cells_on(room_on(made, bumper, paper, labels, KeyPlace::AmongTemplates), made, bumper, labels)
          .fit.empty())
    return {};
  return SheetName{stem_of(made, bumper, "templates"), title_of(made, bumper), SheetKind::Templates,
                   paper.sheet};
}

Sheet template_sheets(const Made& made, std::size_t bumper, const PaperKeys& paper,
                      const Font& labels, PageFill fill) {
  auto name = template_name(made, bumper, paper, labels);
  if (!name) return {};
  Sheet sheet{std::move(*name), {}};
  const KeyPlace key_place = key_place_on(made, bumper, paper, labels);
  const plane::Box room = room_on(made, bumper, paper, labels, key_place);
  Cells all = cells_on(room, made, bumper, labels);
  std::vector<Cell>& cells = all.fit;
  if (!cells.empty() && key_place == KeyPlace::AmongTemplates)
    cells.push_back(key_of(kinds_of(made, bumper), labels, room.width()));
  std::vector<FlatPoint> sizes;
  for (const Cell& cell : cells) sizes.push_back(cell.size);
  const std::vector<Shelved> places = shelve(sizes, room, room, kGap);
  const std::size_t of = places.empty() ? 0 : places.back().page + 1;
  for (std::size_t k = 0; k < of; ++k)
    sheet.pages.push_back(fill == PageFill::Blank
                              ? blank_page(made, bumper, paper)
                              : fresh_page(made, bumper, paper, labels, k + 1, of, key_place).page);
  for (std::size_t k = 0; fill == PageFill::Drawn && k < cells.size(); ++k)
    sheet.pages[places[k].page].drawing.add(cells[k].drawing, {false, 0, places[k].at});
  for (Cell& cell : all.too_large) {
    const Page page{cell.size.x, cell.size.y, std::move(cell.drawing), sheet.title};
    Sheet tiles = tile_on_paper(page, paper, labels,
                                {sheet.stem, made.job.title, "", face_words(made), ""}, fill);
    for (Page& tile : tiles.pages) sheet.pages.push_back(std::move(tile));
  }
  return sheet;
}

}  // namespace swathe
