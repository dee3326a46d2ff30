#include <fmt/format.h>

#include <algorithm>

#include "book/chapters.hpp"
#include "book/cloth_lay.hpp"
#include "book/words.hpp"
#include "sheet/cautions.hpp"
#include "sheet/pattern_drawing.hpp"
#include "sheet/running.hpp"
#include "swathe/pattern/joins.hpp"

namespace swathe {
namespace {

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
  table.columns = {{"cover"},
                   {"length", Anchor::Right},
                   {"width", Anchor::Right},
                   {"one set", Anchor::Right},
                   {"all", Anchor::Right}};
  bool joined = false;
  for (std::size_t b = 0; b < made.patterns.size(); ++b) {
    for (const ClothPart& part : cloth_parts(made.patterns[b], made.joins[b]))
      table.rows.push_back({part.name, figure(mm(part.box.width()), made.job.units),
                            figure(mm(part.box.height()), made.job.units), "1",
                            std::to_string(cover_sets(made))});
    joined = joined || !made.joins[b].empty();
  }
  flow.table(table);
  if (joined)
    flow.words(
        "Numbered pieces are sewn into one cover; their lengths have the seam allowances in.");
}

std::string laid(Sameness::How how) {
  switch (how) {
    case Sameness::How::Same:
      break;
    case Sameness::How::Turned:
      return "turned, not flipped";
    case Sameness::How::Mirrored:
      return "flipped left for right";
  }
  return "as it is";
}

/// Covers that are cut from another's print: its words name the other's sides.
void add_shared_prints(const Made& made, Flow& flow) {
  Table table;
  table.columns = {{"cover"},
                   {"same as"},
                   {"laid", Anchor::Left, 28},
                   {"but for", Anchor::Left, 34},
                   {"what the print's sides are here", Anchor::Left, 70}};
  for (std::size_t k = 0; k < made.same.size(); ++k) {
    if (!made.same[k]) continue;
    const Sameness& same = *made.same[k];
    std::string sides;
    for (const auto& [there, here] : same.sides)
      sides += fmt::format("{}{} is {}", sides.empty() ? "" : ", ", there, here);
    table.rows.push_back(
        {made.patterns[k].bumper, made.patterns[static_cast<std::size_t>(same.other)].bumper,
         laid(same.how), same.but_for.empty() ? "-" : listed(same.but_for), sides});
  }
  if (table.rows.empty()) return;
  flow.words(
      "Covers that one print serves. Its match marks have the same names on both bumpers' boards; "
      "other words on it name the first one's sides:");
  flow.table(table);
}

}  // namespace

void add_cloth(const Made& made, Flow& flow) {
  flow.chapter("build book: cloth and numerals");
  flow.caution(caution("blade"));
  add_pieces(made, flow);
  add_shared_prints(made, flow);
}

void add_numerals(const Made& made, Flow& flow) {
  if (!made.numerals) return;
  const Units units = made.job.units;
  const auto fig = [&](double length_mm) { return figure(mm(length_mm), units); };
  flow.heading(fmt::format("Numerals {}", made.job.number));
  Table places;
  places.columns = {{"bumper"},
                    {"side"},
                    {"digits"},
                    {"height on the cloth", Anchor::Right},
                    {"width", Anchor::Right}};
  for (const PlacedNumeral& placed : made.numerals->placed)
    places.rows.push_back({made.patterns[static_cast<std::size_t>(placed.bumper)].bumper,
                           placed.side, placed.text, fig(placed.height), fig(placed.width)});
  flow.table(places);
  if (!made.numerals->change.empty())
    flow.words("Changed to keep the rules: " + made.numerals->change);
  Table digits;
  digits.columns = {{"digit"},
                    {"height", Anchor::Right},
                    {"width", Anchor::Right},
                    {"all colors, spares in", Anchor::Right}};
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
    flow.heading(fmt::format("How the covers lie on the roll: {}", listed(colors)));
    for (const std::string& piece : lay.does_not_fit)
      flow.words(fmt::format("Cover {} does not fit the roll: take wider cloth.", piece));
    if (lay.placements.empty()) continue;
    flow.words(
        fmt::format("{}Drawn {}, the long grain across the page, the roll's start {}. {} of the "
                    "cloth bought is "
                    "used. Lay every piece out, and look again, before the first cut.",
                    colors.size() > 1 ? "Each color alike. " : "", face_words(made),
                    made.job.paper.face == PaperFace::Inside ? "on the right" : "on the left",
                    share_words(lay.used_fraction)));
    flow.picture(
        draw_lay(made, lay, flow.labels(), flow.width(), std::min(kMostLay, flow.height())));
  }
}

}  // namespace swathe
