#include "book/cloth_lay.hpp"

#include <algorithm>

#include "book/texts.hpp"
#include "draw/label_placer.hpp"
#include "draw/measures.hpp"

namespace swathe {
namespace {

using book_texts::say;

constexpr double kLeft = 14.0, kBelow = 19.0, kAbove = 0.5;  ///< room for words and dimensions
constexpr double kRow = 8.0;                                 ///< from one dimension to the next
constexpr double kFlatness = 0.1;                            ///< on the sheet
constexpr double kFurthest = 40.0;  ///< that a name may stand from a piece too small for it

/// "cover A2, across the roll, turned half round".
std::string words_of(const ClothPlacement& placement) {
  const bool across = placement.across, turned = placement.turned;
  return say(across && turned ? "lay.cover-across-turned"
             : across         ? "lay.cover-across"
             : turned         ? "lay.cover-turned"
                              : "lay.cover",
             {{"piece", placement.piece}});
}

}  // namespace

Picture draw_lay(const Made& made, const ClothLay& lay, const Font& labels, double width_mm,
                 double most_height_mm) {
  const Units units = made.job.units;
  const double length = lay.length_to_buy;
  const double scale =
      std::min((width_mm - kLeft) / length, (most_height_mm - kBelow - kAbove) / lay.roll_width);
  const bool mirrored = made.job.paper.face == PaperFace::Inside;
  const auto on = [&](FlatPoint p) {
    return FlatPoint{kLeft + scale * (mirrored ? length - p.x : p.x), kBelow + scale * p.y};
  };
  const plane::Box page{{0, 0}, {width_mm, scale * lay.roll_width + kBelow + kAbove}};
  Drawing onto;
  plane::Box roll;
  roll.cover(on({0, 0}));
  roll.cover(on({length, lay.roll_width}));
  onto.line(LineKind::Thin, rectangle(roll.lo, roll.hi));

  struct Named {
    plane::Box box;
    std::string words;
    Subjects shows;
  };
  std::vector<Named> names;
  for (const ClothPlacement& placement : lay.placements) {
    plane::Polygon outline = thinned(placement.outline, kFlatness / scale);
    for (FlatPoint& p : outline) p = on(p);
    const Subject cover = Subject::bumper(placement.bumper);
    names.push_back({bounds(outline), words_of(placement), cover});
    const Showing shown(onto, cover);
    onto.line(LineKind::Outline, closed_path(outline));
  }
  const double foot = roll.lo.y - kRow;
  const double start = mirrored ? roll.hi.x : roll.lo.x, way = mirrored ? -1.0 : 1.0;
  draw_measures(onto, labels, page,
                {{{std::min(start, start + way * scale * lay.length), foot},
                  {std::max(start, start + way * scale * lay.length), foot},
                  say("lay.taken", {{"length", dimension_with_unit(mm(lay.length), units)}})},
                 {{roll.lo.x, foot - kRow},
                  {roll.hi.x, foot - kRow},
                  say("lay.buy", {{"length", exact(mm(length), units)}})},
                 {{roll.lo.x - kRow, roll.lo.y},
                  {roll.lo.x - kRow, roll.hi.y},
                  say("lay.roll", {{"width", exact(mm(lay.roll_width), units)}})}});
  LabelPlacer placer(onto, labels, page);
  for (const Named& name : names) {
    const Showing shown(onto, name.shows);
    const FlatPoint middle = name.box.middle();
    const auto line = [&](double height) {
      return TextMark{middle - FlatPoint{0, 0.5 * height}, name.words, height,
                      draw::Anchor::Middle};
    };
    if (!placer.first_free({line(kTitleHeight), line(kTextHeight), line(kTableHeight)}))
      placer.near(middle, name.words, kTableHeight, kFurthest);
  }
  Picture picture{{}, page};
  {
    const Showing cloth(picture.drawing, Subject::cloth());
    picture.drawing.add(onto, {});
  }
  return picture;
}

}  // namespace swathe
