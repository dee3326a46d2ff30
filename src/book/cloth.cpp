#include <algorithm>

#include "book/chapters.hpp"
#include "book/cloth_lay.hpp"
#include "book/texts.hpp"
#include "book/words.hpp"
#include "pattern/joins.hpp"
#include "sheet/cautions.hpp"
#include "sheet/cover_ordinates.hpp"
#include "sheet/pattern_drawing.hpp"
#include "sheet/same_cover_words.hpp"

namespace swathe {
namespace {

using book_texts::say;

constexpr double kMostLay = 150.0;  ///< height of a lay's picture

bool same_lay(const ClothLay& a, const ClothLay& b) {
  return a.length_to_buy == b.length_to_buy &&
         std::ranges::equal(a.placements, b.placements,
                            [](const ClothPlacement& p, const ClothPlacement& q) {
                              return p.piece == q.piece && p.x == q.x && p.y == q.y &&
                                     p.turned == q.turned && p.across == q.across;
                            });
}

void add_pieces(const Made& made, Flow& flow) {
  Table table;
  table.columns = {{say("column.cover")},
                   {say("column.length"), draw::Anchor::Right},
                   {say("column.width"), draw::Anchor::Right},
                   {say("column.one-set"), draw::Anchor::Right},
                   {say("column.all-sets"), draw::Anchor::Right}};
  bool joined = false;
  for (std::size_t b = 0; b < made.patterns.size(); ++b) {
    for (const ClothPart& part : cloth_parts(made.patterns[b], made.joins[b]))
      table.rows.push_back({part.name, dimension(mm(part.box.width()), made.job.units),
                            dimension(mm(part.box.height()), made.job.units), "1",
                            std::to_string(cover_sets(made))});
    joined = joined || !made.joins[b].empty();
  }
  flow.table(table);
  if (joined) flow.words(say("cloth.joined"));
}

std::string laid(Sameness::How how) {
  switch (how) {
    case Sameness::How::Same:
      break;
    case Sameness::How::Turned:
      return say("cloth.turned");
    case Sameness::How::Mirrored:
      return say("cloth.flipped");
  }
  return say("cloth.as-it-is");
}

/// Covers that are cut from another's print: its words name the other's sides.
void add_shared_prints(const Made& made, Flow& flow) {
  Table table;
  table.columns = {{say("column.cover")},
                   {say("cloth.column-print")},
                   {say("cloth.column-laid"), draw::Anchor::Left, 28},
                   {say("cloth.column-but-for"), draw::Anchor::Left, 34},
                   {say("cloth.column-sides"), draw::Anchor::Left, 70}};
  for (std::size_t k = 0; k < made.same.size(); ++k) {
    if (!made.same[k]) continue;
    const Sameness& same = *made.same[k];
    std::vector<std::string> sides;
    for (const auto& [there, here] : same.sides)
      sides.push_back(say("cloth.side-is", {{"print", there}, {"here", here}}));
    table.rows.push_back(
        {made.patterns[k].bumper, made.patterns[static_cast<std::size_t>(same.other)].bumper,
         laid(same.how), same.but_for.empty() ? "-" : listed(difference_words(same.but_for)),
         listed(sides)});
  }
  if (table.rows.empty()) return;
  flow.words(say("cloth.shared"));
  flow.table(table);
}

}  // namespace

void add_cloth(const Made& made, Flow& flow) {
  flow.chapter(say("chapter.cloth"));
  flow.caution(caution("blade"));
  add_pieces(made, flow);
  add_shared_prints(made, flow);
}

void add_numerals(const Made& made, Flow& flow) {
  if (!made.numerals) return;
  const Units units = made.job.units;
  const auto fig = [&](double length_mm) { return dimension(mm(length_mm), units); };
  flow.heading(say("numerals.heading", {{"number", made.job.number}}));
  Table places;
  places.columns = {{say("column.bumper")},
                    {say("column.side")},
                    {say("numerals.column-digits")},
                    {say("numerals.column-height"), draw::Anchor::Right},
                    {say("column.width"), draw::Anchor::Right}};
  for (const PlacedNumeral& placed : made.numerals->placed)
    places.rows.push_back({made.patterns[static_cast<std::size_t>(placed.bumper)].bumper,
                           placed.side, placed.text, fig(placed.height), fig(placed.width)});
  flow.table(places);
  if (!made.numerals->change.empty())
    flow.words(say("numerals.changed", {{"change", made.numerals->change}}));
  Table digits;
  digits.columns = {{say("numerals.column-digit")},
                    {say("column.height"), draw::Anchor::Right},
                    {say("column.width"), draw::Anchor::Right},
                    {say("numerals.column-count"), draw::Anchor::Right}};
  for (const Digit& digit : made.numerals->digits)
    digits.rows.push_back({std::string(1, digit.digit), fig(digit.height), fig(digit.width),
                           std::to_string(digit.count)});
  flow.table(digits);
}

void add_lay(const Made& made, Flow& flow) {
  const std::vector<ClothLay>& lays = made.stock.cloth;
  std::vector<bool> drawn(lays.size());
  for (std::size_t k = 0; k < lays.size(); ++k) {
    if (drawn[k]) continue;
    std::vector<std::string> colors;
    for (std::size_t other = k; other < lays.size(); ++other)
      if (same_lay(lays[k], lays[other])) {
        drawn[other] = true;
        colors.push_back(lays[other].color);
      }
    const ClothLay& lay = lays[k];
    flow.heading(say("lay.heading", {{"colors", listed(colors)}}));
    if (lay.placements.empty()) continue;
    const std::string alike = colors.size() > 1 ? say("lay.alike") + " " : "";
    flow.words(alike +
               say(made.job.paper.face == PaperFace::Inside ? "lay.start-right" : "lay.start-left",
                   {{"face", face_words(made)}, {"share", percent(lay.used_fraction)}}));
    flow.picture(
        draw_lay(made, lay, flow.labels(), flow.width(), std::min(kMostLay, flow.height())));
  }
}

}  // namespace swathe
