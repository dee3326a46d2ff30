#include "support/overlaps.hpp"

#include <cstddef>
#include <utility>
#include <variant>

#include "draw/text_box.hpp"

namespace swathe::test {

std::vector<TextMark> texts_of(const Drawing& drawing) {
  std::vector<TextMark> texts;
  for (const draw::Mark& mark : drawing.marks())
    if (const auto* text = std::get_if<TextMark>(&mark)) texts.push_back(*text);
  return texts;
}

std::vector<std::string> text_faults(const Page& page, const Font& labels, double slack) {
  std::vector<std::string> faults;
  const std::vector<TextMark> texts = texts_of(page.drawing);
  const plane::Box paper{{0, 0}, {page.width_mm, page.height_mm}};
  std::vector<TextBox> boxes;
  for (const TextMark& text : texts) boxes.push_back(box_of(text, labels).grown(-slack));
  for (std::size_t a = 0; a < texts.size(); ++a) {
    if (texts[a].text.empty()) continue;
    for (const FlatPoint p : boxes[a].corners())
      if (!paper.holds(p)) {
        faults.push_back("\"" + texts[a].text + "\" runs off the page");
        break;
      }
    for (std::size_t b = a + 1; b < texts.size(); ++b)
      if (!texts[b].text.empty() && overlap(boxes[a], boxes[b]))
        faults.push_back("\"" + texts[a].text + "\" lies over \"" + texts[b].text + "\"");
  }
  return faults;
}

std::vector<std::string> lines_through_text(const Page& page, const Font& labels, double slack) {
  struct Line {
    std::vector<FlatPoint> points;
    plane::Box box;
  };
  std::vector<Line> lines;
  for (const draw::Mark& mark : page.drawing.marks()) {
    const auto* line = std::get_if<LineMark>(&mark);
    if (!line) continue;
    Line flat{flatten(line->path, 0.05), bounds(line->path)};
    if (line->path.closed && !flat.points.empty()) flat.points.push_back(flat.points.front());
    lines.push_back(std::move(flat));
  }
  std::vector<std::string> faults;
  for (const TextMark& text : texts_of(page.drawing)) {
    if (text.text.empty()) continue;
    const TextBox box = box_of(text, labels).grown(-slack);
    const plane::Box around = bounds(box);
    const auto crosses = [&](const Line& line) {
      if (!line.box.meets(around)) return false;
      for (std::size_t k = 0; k + 1 < line.points.size(); ++k)
        if (crossed_by(box, line.points[k], line.points[k + 1])) return true;
      return false;
    };
    for (const Line& line : lines)
      if (crosses(line)) faults.push_back("a line runs through \"" + text.text + "\"");
  }
  return faults;
}

bool says(const Drawing& drawing, const std::string& words) {
  for (const TextMark& text : texts_of(drawing))
    if (text.text.find(words) != std::string::npos) return true;
  return false;
}

int count_lines(const Drawing& drawing, LineKind kind) {
  int count = 0;
  for (const draw::Mark& mark : drawing.marks())
    if (const auto* line = std::get_if<LineMark>(&mark)) count += line->kind == kind ? 1 : 0;
  return count;
}

}  // namespace swathe::test
