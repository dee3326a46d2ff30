#pragma once

#include <string>
#include <vector>

#include "draw/text_box.hpp"
#include "swathe/draw.hpp"

namespace swathe::test {

inline std::vector<TextMark> texts_of(const Drawing& drawing) {
  std::vector<TextMark> texts;
  for (const draw::Mark& mark : drawing.marks())
    if (const auto* text = std::get_if<TextMark>(&mark)) texts.push_back(*text);
  return texts;
}

/// Every pair of texts whose boxes overlap, and every text that runs off the page; in words.
inline std::vector<std::string> text_faults(const Page& page, const Font& labels) {
  std::vector<std::string> faults;
  const std::vector<TextMark> texts = texts_of(page.drawing);
  const plane::Box paper{{0, 0}, {page.width_mm, page.height_mm}};
  for (std::size_t a = 0; a < texts.size(); ++a) {
    const TextBox box = box_of(texts[a], labels);
    for (const FlatPoint p : box.corners())
      if (!paper.holds(p)) {
        faults.push_back("\"" + texts[a].text + "\" runs off the page");
        break;
      }
    for (std::size_t b = a + 1; b < texts.size(); ++b)
      if (overlap(box, box_of(texts[b], labels)))
        faults.push_back("\"" + texts[a].text + "\" lies over \"" + texts[b].text + "\"");
  }
  return faults;
}

/// Every text that a line runs through, in words.
inline std::vector<std::string> lines_through_text(const Page& page, const Font& labels) {
  std::vector<std::string> faults;
  for (const TextMark& text : texts_of(page.drawing)) {
    const TextBox box = box_of(text, labels);
    for (const draw::Mark& mark : page.drawing.marks()) {
      const auto* line = std::get_if<LineMark>(&mark);
      if (!line) continue;
      std::vector<FlatPoint> points = flatten(line->path, 0.05);
      if (line->path.closed && !points.empty()) points.push_back(points.front());
      for (std::size_t k = 0; k + 1 < points.size(); ++k)
        if (crossed_by(box, points[k], points[k + 1])) {
          faults.push_back("a line runs through \"" + text.text + "\"");
          break;
        }
    }
  }
  return faults;
}

inline bool says(const Drawing& drawing, const std::string& words) {
  for (const TextMark& text : texts_of(drawing))
    if (text.text.find(words) != std::string::npos) return true;
  return false;
}

inline int count_lines(const Drawing& drawing, LineKind kind) {
  int count = 0;
  for (const draw::Mark& mark : drawing.marks())
    if (const auto* line = std::get_if<LineMark>(&mark)) count += line->kind == kind ? 1 : 0;
  return count;
}

}  // namespace swathe::test
