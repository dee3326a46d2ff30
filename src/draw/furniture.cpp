#include "draw/furniture.hpp"

#include <algorithm>

#include "base/maths.hpp"
#include "base/print.hpp"
#include "draw/marks.hpp"
#include "draw/texts.hpp"

namespace swathe {
namespace {

using draw_texts::say;

constexpr double kPad = 2.0;           ///< between a frame and its words
constexpr double kNarrowLetter = 0.6;  ///< width of one in capitals' heights, spaces counted

double step(double height_mm) { return kLineStep * height_mm; }

/// Base line of the first line of text below a top edge: capitals touch the edge.
FlatPoint first_base(FlatPoint top_left, double height_mm) {
  return {top_left.x, top_left.y - height_mm};
}

/// Down to below the descenders of the last of so many lines.
double height_of_lines(std::size_t lines, double height_mm) {
  return lines == 0
             ? 0.0
             : height_mm + static_cast<double>(lines - 1) * step(height_mm) + 0.35 * height_mm;
}

/// Whether a text is a line as it stands: breaking it into words would leave nothing of it out.
bool is_one_line(std::string_view words) {
  return !words.empty() && words.front() != ' ' && words.back() != ' ' &&
         words.find('\n') == std::string_view::npos && words.find("  ") == std::string_view::npos;
}

}  // namespace

std::string print_words() { return say("print"); }

std::string metric_scale_words() { return say("scale.100-mm"); }

std::vector<std::string> wrap_text(const Font& labels, std::string_view words, double width_mm,
                                   double height_mm) {
  // Most texts fit on one line, and measuring that at once costs less than word by word. Those that
  // would be too wide even in narrow letters are not tried.
  const double narrow = kNarrowLetter * height_mm * static_cast<double>(words.size());
  if (is_one_line(words) && narrow <= width_mm &&
      labels.text_width_mm(words, height_mm) <= width_mm)
    return {std::string(words)};
  std::vector<std::string> lines;
  std::string line;
  double taken = 0;
  const auto next_line = [&] {
    lines.push_back(line);
    line.clear();
    taken = 0;
  };
  while (!words.empty()) {
    const std::size_t end = end_of_word(words);
    const std::string word(words.substr(0, end));
    if (!word.empty()) {
      // Each word is measured with the space before it: the whole line again and again costs its
      // length squared.
      const std::string spaced = " " + word;
      const double wider = line.empty() ? 0 : labels.text_width_mm(spaced, height_mm);
      if (!line.empty() && taken + wider > width_mm) next_line();
      taken += line.empty() ? labels.text_width_mm(word, height_mm) : wider;
      line += line.empty() ? word : spaced;
    }
    if (end < words.size() && words[end] == '\n') next_line();
    words.remove_prefix(std::min(end + 1, words.size()));
  }
  if (!line.empty()) next_line();
  return lines;
}

plane::Box draw_text_block(Drawing& onto, const Font& labels, FlatPoint top_left, double width_mm,
                           std::string_view words, double height_mm) {
  const std::vector<std::string> lines = wrap_text(labels, words, width_mm, height_mm);
  double widest = 0;
  FlatPoint base = first_base(top_left, height_mm);
  for (const std::string& line : lines) {
    onto.text(base, line, height_mm);
    widest = std::max(widest, labels.text_width_mm(line, height_mm));
    base.y -= step(height_mm);
  }
  return {{top_left.x, top_left.y - height_of_lines(lines.size(), height_mm)},
          {top_left.x + widest, top_left.y}};
}

plane::Box draw_text_blocks(Drawing& onto, const Font& labels, FlatPoint top_left, double width_mm,
                            const std::vector<std::string>& texts) {
  constexpr double kApart = 2.0;
  plane::Box all{top_left, top_left};
  double y = top_left.y;
  for (const std::string& text : texts) {
    const plane::Box box = draw_text_block(onto, labels, {top_left.x, y}, width_mm, text);
    all.cover(box);
    y = box.lo.y - kApart;
  }
  return all;
}

plane::Box draw_check_scale(Drawing& onto, const Font& labels, FlatPoint top_left, double length_mm,
                            std::string_view words, bool upright) {
  constexpr double kGap = 1.2;
  const std::string text(words);
  const double room = kTextHeight + kGap + kScaleTick;  // across the scale
  const FlatPoint along = upright ? FlatPoint{0, -1} : FlatPoint{1, 0};
  const FlatPoint down = upright ? FlatPoint{1, 0} : FlatPoint{0, -1};
  const FlatPoint from = top_left + (kTextHeight + kGap + 0.5 * kScaleTick) * down;
  const FlatPoint to = from + length_mm * along;
  draw_scale_line(onto, from, to);
  // Upright words read from below, along the scale.
  const FlatPoint base = top_left + kTextHeight * down + (upright ? length_mm : 0.0) * along +
                         (upright ? -1.0 : 1.0) * 0.5 * length_mm * along;
  onto.text(base, text, kTextHeight, draw::Anchor::Middle, upright ? maths::acos(0.0) : 0.0);

  const double half_words = 0.5 * labels.text_width_mm(text, kTextHeight);
  plane::Box box;
  box.cover(top_left);
  box.cover(top_left + room * down + length_mm * along);
  box.cover(base + half_words * along);
  box.cover(base - half_words * along);
  return box;
}

plane::Box draw_check_scales(Drawing& onto, const Font& labels, FlatPoint top_left) {
  plane::Box box = draw_check_scale(onto, labels, top_left, 100.0, metric_scale_words());
  box.cover(draw_check_scale(onto, labels, {top_left.x, box.lo.y - 1.0}, 101.6, say("scale.4-in")));
  return box;
}

plane::Box draw_title_block(Drawing& onto, const Font& labels, FlatPoint top_left, double width_mm,
                            const TitleBlock& words) {
  plane::Box box{top_left, top_left};
  const auto add = [&](const std::string& text, double height_mm) {
    if (text.empty()) return;
    const double gap = box.height() > 0 ? 0.5 * height_mm : 0.0;
    box.cover(
        draw_text_block(onto, labels, {top_left.x, box.lo.y - gap}, width_mm, text, height_mm));
  };
  add(words.subject, kTitleHeight);
  add(words.sheet, kTitleHeight);
  add(words.title, kTextHeight);
  for (const std::string& line : words.lines) add(line, kTextHeight);
  return box;
}

std::string key_words(LineKind kind) {
  switch (kind) {
    case LineKind::Cut:
      return say("line.cut");
    case LineKind::CutLast:
      return say("line.cut-last");
    case LineKind::Fold:
      return say("line.fold");
    case LineKind::Stitch:
      return say("line.stitch");
    case LineKind::Corner:
      return say("line.corner");
    case LineKind::StapleLine:
    case LineKind::Staple:
      return say("line.staple");
    case LineKind::Punch:
      return say("line.punch");
    case LineKind::Match:
      return say("line.match");
    case LineKind::Numeral:
      return say("line.numeral");
    case LineKind::Bridge:
      return say("line.bridge");
    case LineKind::Grain:
      return say("line.grain");
    case LineKind::Join:
      return say("line.join");
    case LineKind::Trim:
      return say("line.trim");
    case LineKind::Scale:
      return say("line.scale");
    case LineKind::Thin:
      return say("line.note");
    case LineKind::Outline:
      return say("line.outline");
  }
  return {};
}

namespace {

constexpr double kSample = 24.0;  ///< length of a line in the key

/// A kind as the sheet's own mark, from `from` to the right.
void draw_mark(Drawing& onto, LineKind kind, FlatPoint from) {
  constexpr double kHalfHigh = 2.0;  ///< of a digit's place
  constexpr double kHole = 1.0;      ///< radius
  constexpr double kSmaller = 0.5;   ///< scale of a mark that is too high for a row of the key
  const FlatPoint to = from + FlatPoint{kSample, 0}, middle = 0.5 * (from + to);
  const FlatPoint high{0, kHalfHigh};
  switch (kind) {
    case LineKind::CutLast:
      onto.line(kind, from, to);
      for (const FlatPoint end : {from, to}) draw_window_corner(onto, end);
      return;
    case LineKind::StapleLine:
    case LineKind::Staple:
      onto.line(LineKind::StapleLine, from, to);
      draw_staple(onto, middle, false);
      return;
    case LineKind::Punch:
      draw_punch(onto, middle, kHole);
      return;
    case LineKind::Match:
      onto.line(LineKind::Cut, from - high, to - high);
      draw_match(onto, middle - high, false, kSmaller);
      return;
    case LineKind::Numeral:
      onto.line(kind, from - high, to - high);
      draw_numeral(onto, {{middle + FlatPoint{-4, -kHalfHigh}, middle + FlatPoint{4, -kHalfHigh},
                           middle + FlatPoint{4, kHalfHigh}, middle + FlatPoint{-4, kHalfHigh}}});
      return;
    case LineKind::Grain:
      draw_long_grain(onto, from, to);
      return;
    case LineKind::Join:
      onto.line(kind, from, to);
      for (const double way : {1.0, -1.0}) draw_half_diamond(onto, middle, {0, way}, kSmaller);
      return;
    case LineKind::Scale:
      draw_scale_line(onto, from, to);
      return;
    default:
      onto.line(kind, from, to);
  }
}

/// The same, marked as a sample: nobody is to cut or draw by it.
void draw_sample(Drawing& onto, LineKind kind, FlatPoint from) {
  Drawing marks;
  draw_mark(marks, kind, from);
  for (const draw::Mark& mark : marks.marks()) {
    if (const auto* const line = std::get_if<LineMark>(&mark)) onto.sample(line->kind, line->path);
    if (const auto* const fill = std::get_if<FillMark>(&mark))
      onto.fill(fill->kind, fill->color, fill->outlines);
  }
}

}  // namespace

plane::Box draw_line_key(Drawing& onto, const Font& labels, FlatPoint top_left,
                         const std::vector<LineKind>& kinds, int columns) {
  constexpr double kRow = 6.5, kGap = 4.0, kBetween = 8.0;
  const std::size_t across = static_cast<std::size_t>(std::max(1, columns));
  const std::size_t down = (kinds.size() + across - 1) / across;
  plane::Box box{top_left, top_left};
  double left = top_left.x;
  for (std::size_t column = 0; column * down < kinds.size(); ++column) {
    double widest = 0;
    for (std::size_t row = 0; row < down && column * down + row < kinds.size(); ++row) {
      const LineKind kind = kinds[column * down + row];
      const FlatPoint from{left + 1.5, top_left.y - (static_cast<double>(row) + 0.5) * kRow};
      draw_sample(onto, kind, from);
      const std::string words = key_words(kind);
      onto.text(from + FlatPoint{kSample + kGap, -0.5 * kTextHeight}, words, kTextHeight);
      widest = std::max(widest, labels.text_width_mm(words, kTextHeight));
    }
    const double right = left + 1.5 + kSample + kGap + widest;
    box.cover(FlatPoint{right, top_left.y - static_cast<double>(down) * kRow});
    left = right + kBetween;
  }
  return box;
}

plane::Box draw_caution(Drawing& onto, const Font& labels, FlatPoint top_left, double width_mm,
                        std::string_view words) {
  constexpr double kSign = 9.0;  ///< across the triangle
  const double indent = 2 * kPad + kSign;
  const std::vector<std::string> lines =
      wrap_text(labels, words, width_mm - indent - kPad, kTextHeight);
  const double text = height_of_lines(lines.size(), kTextHeight);
  const double inside = std::max(text, 0.87 * kSign);
  const double height = inside + 2 * kPad;
  FlatPoint base{top_left.x + indent, top_left.y - kPad - 0.5 * (inside - text) - kTextHeight};
  for (const std::string& line : lines) {
    onto.text(base, line, kTextHeight);
    base.y -= step(kTextHeight);
  }
  const FlatPoint foot{top_left.x + kPad, top_left.y - 0.5 * height - 0.435 * kSign};
  onto.line(LineKind::Outline, plane::closed_path({foot, foot + FlatPoint{kSign, 0},
                                                   foot + FlatPoint{0.5 * kSign, 0.87 * kSign}}));
  onto.text(foot + FlatPoint{0.5 * kSign, 1.2}, "!", kTextHeight, draw::Anchor::Middle);
  const plane::Box box{{top_left.x, top_left.y - height}, {top_left.x + width_mm, top_left.y}};
  onto.line(LineKind::Outline, rectangle(box.lo, box.hi));
  return box;
}

void draw_long_grain(Drawing& onto, FlatPoint from, FlatPoint to) {
  const FlatPoint way = unit(to - from);
  onto.line(LineKind::Grain, from + 2.0 * way, to - 2.0 * way);
  onto.fill(LineKind::Grain, kBlack,
            {closed_path(arrow_head(to, way)), closed_path(arrow_head(from, -1.0 * way))});
}

}  // namespace swathe
