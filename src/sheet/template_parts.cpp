#include "sheet/template_parts.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "draw/path_clip.hpp"
#include "sheet/cover_ends.hpp"
#include "sheet/pattern_drawing.hpp"
#include "sheet/shown_subjects.hpp"
#include "sheet/texts.hpp"

namespace swathe {
namespace {

using sheet_texts::say;

constexpr double kAround = 8.0;  ///< sheet beyond the lines that matter
constexpr double kPastEdge = 12.0;
constexpr double kSame = 0.05;        ///< mm; templates that differ by less are one
constexpr double kIntoBumper = 22.0;  ///< an end's template goes on past the end face

/// Every line of the cover that a template shows, on the sheet.
std::vector<TemplateLine> lines_of(const Pattern& pattern, const plane::Placement& place,
                                   const ShownOnCover& shown) {
  std::vector<TemplateLine> lines;
  const auto add = [&](LineKind kind, const plane::Path& path, Subjects shows) {
    lines.push_back({kind, place(path), {}, std::move(shows)});
  };
  add(LineKind::Cut, closed_path(pattern.outline), shown.bumper());
  for (const plane::Path& snip : pattern.snips) add(LineKind::Cut, snip, shown.bumper());
  for (const plane::Path& stitch : pattern.stitches)
    add(LineKind::Stitch, stitch, shown.corner(bounds(stitch).middle().x));
  for (const plane::Path& tick : pattern.seam_marks)
    add(LineKind::Stitch, tick, shown.corner(bounds(tick).middle().x));
  const auto add_fold = [&](const plane::Path& path, FlatPoint under, Subjects shows) {
    lines.push_back({LineKind::Fold,
                     place(path),
                     {place.mirrored ? -under.x : under.x, under.y},
                     std::move(shows)});
  };
  for (const PleatLine& pleat : pattern.pleats)
    add_fold(pleat.path, pleat.under, shown.pleat(pleat));
  for (const HemFold& hem : pattern.hems) add_fold(hem.path(), hem.under(), shown.bumper());
  for (const NamedLine& line : pattern.lines)
    if (line.what == NamedLine::What::BackEdge || line.what == NamedLine::What::EndFace ||
        line.what == NamedLine::What::PaddingEdge || line.what == NamedLine::What::BoardEnd ||
        line.what == NamedLine::What::CornerLine)
      add(LineKind::Corner, plane::line(line.from, line.to), shown.line(line));
  for (const BracketOnPattern& bracket : pattern.brackets)
    for (const plane::Path& window : bracket.windows)
      add(LineKind::CutLast, window, shown.bracket(bracket));
  return lines;
}

TemplatePart part_of(const std::vector<TemplateLine>& lines, const plane::Box& box, std::string use,
                     std::string at) {
  TemplatePart part;
  part.size = {box.width(), box.height()};
  part.uses = {{std::move(use), std::move(at), ""}};
  const plane::Placement move{false, 0, FlatPoint{} - box.lo};
  for (const TemplateLine& line : lines) {
    const plane::Box reach = bounds(line.path);
    if (reach.hi.x < box.lo.x || reach.lo.x > box.hi.x) continue;  // most lie at other corners
    for (const plane::Path& path : clipped(line.path, box))
      part.lines.push_back({line.kind, move(path), line.under, line.shows});
  }
  return part;
}

/// A way to lay a paper template: turned over left to right, or turned half round, or both.
struct Laying {
  double x, y;        ///< signs
  const char* words;  ///< the id of their text; none for as it is printed
};
constexpr std::array kLayings = {Laying{1, 1, ""}, Laying{-1, -1, "template.turned"},
                                 Laying{-1, 1, "template.over-sideways"},
                                 Laying{1, -1, "template.over-upright"}};

bool same_line(const TemplateLine& a, const TemplateLine& b) {
  if (a.kind != b.kind || apart(a.under, b.under) > kSame) return false;
  const std::vector<FlatPoint> p = flatten(a.path, 0.05), q = flatten(b.path, 0.05);
  if (p.size() != q.size() || a.path.closed != b.path.closed) return false;
  const std::size_t n = p.size();
  // Either way round, and from any start where it is closed.
  for (const bool back : {false, true})
    for (std::size_t shift = 0; shift < (a.path.closed ? n : 1); ++shift) {
      bool same = true;
      for (std::size_t k = 0; k < n && same; ++k)
        same = apart(p[k], q[((back ? n - 1 - k : k) + shift) % n]) < kSame;
      if (same) return true;
    }
  return false;
}

/// The line of `b` that this one of `a` lies on, laid so about its middle; null where there is
/// none.
const TemplateLine* laid_on(TemplateLine line, const TemplatePart& a, const TemplatePart& b,
                            const Laying& laying) {
  const FlatPoint middle = 0.5 * a.size;
  const bool closed = line.path.closed;
  line.path = open_path(flatten(line.path, 0.05));  // a mirrored arc would bulge the other way
  line.path.closed = closed;
  for (plane::Vertex& v : line.path.vertices)
    v.at = middle + FlatPoint{laying.x * (v.at.x - middle.x), laying.y * (v.at.y - middle.y)};
  line.under = {laying.x * line.under.x, laying.y * line.under.y};
  const auto found = std::ranges::find_if(
      b.lines, [&](const TemplateLine& other) { return same_line(line, other); });
  return found == b.lines.end() ? nullptr : &*found;
}

/// Whether `a`, laid so about its middle, is `b`.
bool same_part(const TemplatePart& a, const TemplatePart& b, const Laying& laying) {
  if (apart(a.size, b.size) > kSame || a.lines.size() != b.lines.size()) return false;
  return std::ranges::all_of(
      a.lines, [&](const TemplateLine& line) { return laid_on(line, a, b, laying) != nullptr; });
}

Subjects joined(const Subjects& a, const Subjects& b) {
  std::vector<Subject> list = a.list();
  for (const Subject& one : b)
    if (std::ranges::count(list, one) == 0) list.push_back(one);
  return Subjects(std::move(list));
}

void add_or_join(std::vector<TemplatePart>& parts, TemplatePart part) {
  for (TemplatePart& there : parts)
    for (const Laying& laying : kLayings)
      if (same_part(there, part, laying)) {
        const TemplateUse& use = part.uses.front();
        there.uses.push_back({use.where, use.at, *laying.words ? say(laying.words) : ""});
        for (TemplateLine& line : there.lines)
          line.shows = joined(line.shows, laid_on(line, there, part, laying)->shows);
        return;
      }
  parts.push_back(std::move(part));
}

}  // namespace

std::vector<TemplatePart> template_parts(const Made& made, std::size_t bumper) {
  const Pattern& pattern = made.patterns[bumper];
  const plane::Placement place = pattern_placement(made, bumper, {0, 0});
  const std::vector<TemplateLine> lines = lines_of(pattern, place, ShownOnCover(made, bumper));
  const ClothMap map = made.cloth_map();
  const auto y_of = [&](double u) { return place(map.to_pattern({0, u})).y; };
  const double top = pattern.cloth_width, middle = y_of(0);
  const auto at = [&](const char* words, double x) {
    return say(words, {{"length", dimension(mm(x), made.job.units)}});
  };

  std::vector<TemplatePart> parts;
  for (const PatternCorner& corner : pattern.corners)
    for (const bool above : {true, false}) {
      plane::Box box = bounds(place(above ? corner.notch_top : corner.notch_bottom)).grown(kAround);
      const double front =
          y_of(above ? made.section.front_flat_top() : made.section.front_flat_bottom());
      if (above)
        box = {{box.lo.x, front - kAround}, {box.hi.x, top + kAround}};
      else
        box = {{box.lo.x, -kAround}, {box.hi.x, front + kAround}};
      add_or_join(parts, part_of(lines, box,
                                 say(above ? "template.corner-top" : "template.corner-bottom",
                                     {{"corner", corner_words(pattern.corners, corner.s)}}),
                                 at("template.at-corner", place({corner.s, 0}).x)));
    }
  // Flaps end in straight lines, so ends' templates stop a little past the board's edges.
  const double high = y_of(made.section.back_edge_top()) + kPastEdge;
  const double low = y_of(made.section.back_edge_bottom()) - kPastEdge;
  for (const EndOnPattern& end : pattern.ends) {
    const double face = place({end.start ? 0.0 : pattern.length, 0}).x;
    const bool left = end.start != place.mirrored;
    const double into = end.past_board + kIntoBumper;
    const plane::Box all = left ? plane::Box{{-kAround, 0}, {face + into, 0}}
                                : plane::Box{{face - into, 0}, {pattern.cloth_length + kAround, 0}};
    // Where flaps are slit and cut shorter, they go on to beyond the flaps' edges.
    const bool slit = end.past_board > 0;
    const double upper = slit ? top + kAround : high, lower = slit ? -kAround : low;
    for (const bool above : {true, false})
      add_or_join(parts, part_of(lines,
                                 above ? plane::Box{{all.lo.x, middle}, {all.hi.x, upper}}
                                       : plane::Box{{all.lo.x, lower}, {all.hi.x, middle}},
                                 say(above ? "template.end-top" : "template.end-bottom",
                                     {{"end", cover_end_words(made, bumper, end.start)}}),
                                 at("template.at-end", face)));
  }
  for (const BracketOnPattern& bracket : pattern.brackets)
    for (const plane::Path& window : bracket.windows)
      add_or_join(parts,
                  part_of(lines, bounds(place(window)).grown(2 * kAround), window_words(bracket),
                          at("template.at-middle", bounds(place(window)).middle().x)));
  return parts;
}

}  // namespace swathe
