#include "draw/measures.hpp"

#include "draw/furniture.hpp"
#include "draw/label_placer.hpp"
#include "draw/marks.hpp"

namespace swathe {
namespace {

constexpr double kTick = 1.5;       ///< half of one
constexpr double kHeads = 12.0;     ///< a shorter line has ticks and no arrow heads
constexpr double kFurthest = 80.0;  ///< how far words may stand from what they measure
constexpr double kPlace = 0.3;      ///< half of a note's place; less than its own words keep off
constexpr double kOff = 0.3;        ///< more than the placer's own clearance from a line

void draw_line(Drawing& onto, const Dimension& measure) {
  const Showing part(onto, measure.shows);
  const FlatPoint along = unit(measure.to - measure.from), across = left_of(along);
  onto.line(LineKind::Thin, measure.from, measure.to);
  for (const FlatPoint p : {measure.from, measure.to})
    onto.line(LineKind::Thin, p - kTick * across, p + kTick * across);
}

std::vector<plane::Path> heads_of(const Dimension& measure) {
  if (apart(measure.from, measure.to) < kHeads) return {};
  const FlatPoint along = unit(measure.to - measure.from);
  return {closed_path(arrow_head(measure.to, along)),
          closed_path(arrow_head(measure.from, -1.0 * along))};
}

void write_note(LabelPlacer& placer, const Note& note) {
  const Showing part(placer.drawing(), note.shows);
  if (!placer.near(note.at, note.words, note.height_mm, kFurthest))
    placer.near(note.at, note.words, kTableHeight, 2 * kFurthest);
}

void write_words(LabelPlacer& placer, const Font& labels, const Dimension& measure) {
  const Showing part(placer.drawing(), measure.shows);
  const double room = apart(measure.from, measure.to);
  const double width = labels.text_width_mm(measure.words, measure.height_mm);
  const double in_middle = 0.5 * (room - width);
  if (in_middle > 0) {
    if (placer.beside(measure.from, measure.to, measure.words, measure.height_mm, in_middle, kOff))
      return;
    if (placer.beside(measure.from, measure.to, measure.words, measure.height_mm, 0.5, kOff))
      return;
  }
  write_note(placer, {0.5 * (measure.from + measure.to), measure.words, measure.height_mm});
}

}  // namespace

void draw_measures(Drawing& onto, const Font& labels, const plane::Box& page,
                   const std::vector<Dimension>& measures, const std::vector<Note>& notes) {
  for (const Dimension& measure : measures) draw_line(onto, measure);
  LabelPlacer placer(onto, labels, page);
  std::vector<plane::Path> heads;
  for (const Dimension& measure : measures)
    for (plane::Path& head : heads_of(measure)) {
      placer.keep_off(head);
      heads.push_back(std::move(head));
    }
  // Words over the place of a note would lie over its leader.
  for (const Note& one : notes) placer.keep_off(plane::Box{one.at, one.at}.grown(kPlace));
  for (const Dimension& measure : measures) write_words(placer, labels, measure);
  for (const Note& one : notes) write_note(placer, one);
  if (!heads.empty()) onto.fill(LineKind::Thin, kBlack, std::move(heads));
}

}  // namespace swathe
