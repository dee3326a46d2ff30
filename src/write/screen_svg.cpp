#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "draw/text_box.hpp"
#include "swathe/write.hpp"
#include "write/xml.hpp"

namespace swathe {
namespace {

constexpr int kPlaces = 1;              // decimals of a pixel: a tenth is not seen
constexpr double kMostBulge = 0.45;     // of an arc written as one: a quarter turn has 0.41
constexpr double kLeastWidthPx = 0.75;  // of a line
constexpr double kWidthPx = 3.0;        // that a millimeter of a printed line's width takes
constexpr double kDashPx = 2.0;         // and one of its dashes: as many fit into a small picture

std::string number(double value, int places = kPlaces) { return plain_number(value, places); }

/// A number that joins others in a path: a sign parts it from the one before, and so does a blank.
void append(std::string& data, long tenths) {
  const bool negative = tenths < 0;
  const long size = negative ? -tenths : tenths;
  if (negative)
    data += '-';
  else if (!data.empty() && (data.back() == '.' || (data.back() >= '0' && data.back() <= '9')))
    data += ' ';
  if (size >= 10 || size % 10 == 0) data += std::to_string(size / 10);
  if (size % 10 != 0) {
    data += '.';
    data += static_cast<char>('0' + size % 10);
  }
}

/// The data of a path element in pixels, each step from the place before, rounded so that no error
/// adds up.
class ScreenPath {
 public:
  explicit ScreenPath(double height_mm) : height_(height_mm) {}

  void add(const plane::Path& path) {
    const std::size_t count = path.vertices.size();
    if (count < 2) return;
    const Tenths start = at(path.vertices[0].at);
    begin(start);
    for (std::size_t k = 1; k < count; ++k) edge(path.vertices[k - 1], path.vertices[k].at);
    if (!path.closed) return;
    if (path.vertices.back().bulge != 0) edge(path.vertices.back(), path.vertices[0].at);
    data_ += 'z';
    pen_ = start;
    command_ = 'z';
  }
  const std::string& text() const { return data_; }

 private:
  struct Tenths {
    long x = 0, y = 0;
  };
  Tenths at(FlatPoint p) const {
    return {std::lround(10 * screen::kPxPerMm * p.x),
            std::lround(10 * screen::kPxPerMm * (height_ - p.y))};
  }

  void begin(Tenths to) {
    data_ += 'M';
    append(data_, to.x);
    append(data_, to.y);
    pen_ = to;
    command_ = 'M';
  }

  void edge(const plane::Vertex& from, FlatPoint end) {
    if (std::abs(from.bulge) > kMostBulge) {
      // Of an arc that is nearly half a turn its ends, rounded, would not tell the center.
      const double half = (std::sqrt(1 + from.bulge * from.bulge) - 1) / from.bulge;
      const FlatPoint chord = end - from.at;
      const FlatPoint middle = from.at + 0.5 * chord - 0.5 * from.bulge * left_of(chord);
      edge({from.at, half}, middle);
      edge({middle, half}, end);
      return;
    }
    const Tenths to = at(end);
    if (to.x == pen_.x && to.y == pen_.y) return;
    if (from.bulge == 0) {
      if (command_ != 'l') data_ += 'l';
      command_ = 'l';
    } else {
      const plane::Arc arc = arc_of(from.at, end, from.bulge);
      data_ += 'a';
      const long radius = std::max(1L, std::lround(10 * screen::kPxPerMm * arc.radius));
      append(data_, radius);
      append(data_, radius);
      data_ += " 0 0";
      data_ += from.bulge > 0 ? " 0" : " 1";  // turned round with the y axis
      command_ = 'a';
    }
    append(data_, to.x - pen_.x);
    append(data_, to.y - pen_.y);
    pen_ = to;
  }

  double height_;
  std::string data_;
  Tenths pen_;
  char command_ = 0;
};

/// A kind of line as a class: "cut-last".
std::string class_of(LineKind kind) {
  std::string name = style_of(kind).layer;
  for (char& c : name)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return name;
}

std::string stroke_of(LineKind kind) {
  const LineStyle& style = style_of(kind);
  std::string text = " class=\"" + class_of(kind) + "\" fill=\"none\" stroke-width=\"" +
                     number(std::max(kLeastWidthPx, kWidthPx * style.width_mm), 2) + "\"";
  for (std::size_t k = 0; k < style.dashes_mm.size(); ++k)
    text += (k == 0 ? " stroke-dasharray=\"" : " ") + number(kDashPx * style.dashes_mm[k]);
  return style.dashes_mm.empty() ? text : text + "\"";
}

/// One layer's elements: lines of one kind in a group, areas in another; lines that show the same
/// are one path, areas that do are together.
class LayerText {
 public:
  LayerText(const ScreenPicture& picture, const screen::Layer& layer, const Font& labels)
      : layer_(layer), labels_(labels), height_(picture.height_px / screen::kPxPerMm) {
    const std::vector<draw::Mark>& marks = layer.drawing.marks();
    for (std::size_t k = 0; k < marks.size();) k = write(marks, k);
    begin_group("");
  }

  const std::string& text() const { return text_; }

 private:
  /// As many marks as go together, from one on. Returns the first that does not.
  std::size_t write(const std::vector<draw::Mark>& marks, std::size_t k) {
    if (std::holds_alternative<LineMark>(marks[k])) return write_lines(marks, k);
    if (std::holds_alternative<FillMark>(marks[k])) return write_areas(marks, k);
    begin_group("");
    write_words(std::get<TextMark>(marks[k]));
    return k + 1;
  }

  /// Ends the group before where it is another; "" for none.
  void begin_group(const std::string& attributes) {
    if (attributes == group_) return;
    if (!group_.empty()) text_ += "</g>";
    if (!attributes.empty()) text_ += "<g" + attributes + ">";
    group_ = attributes;
  }

  std::size_t write_lines(const std::vector<draw::Mark>& marks, std::size_t k) {
    const LineMark& first = std::get<LineMark>(marks[k]);
    ScreenPath data(height_);
    for (; k < marks.size(); ++k) {
      const auto* line = std::get_if<LineMark>(&marks[k]);
      if (!line || line->kind != first.kind || !(line->shows == first.shows)) break;
      data.add(line->path);
    }
    if (data.text().empty()) return k;
    begin_group(stroke_of(first.kind));
    text_ += "<path" + shown_in(first.shows) + " d=\"" + data.text() + "\"/>";
    return k;
  }

  std::size_t write_areas(const std::vector<draw::Mark>& marks, std::size_t k) {
    const Subjects& shows = std::get<FillMark>(marks[k]).shows;
    std::vector<std::string> paths;
    for (; k < marks.size(); ++k) {
      const auto* fill = std::get_if<FillMark>(&marks[k]);
      if (!fill || !(fill->shows == shows)) break;
      ScreenPath data(height_);
      for (const plane::Path& outline : fill->outlines) data.add(outline);
      const std::string color = layer_.own_colors ? " fill=\"" + to_text(fill->color) + "\"" : "";
      if (!data.text().empty()) paths.push_back(color + " d=\"" + data.text() + "\"/>");
    }
    if (paths.empty()) return k;
    begin_group(" class=\"areas\" stroke=\"none\"");
    if (paths.size() == 1) {
      text_ += "<path" + shown_in(shows) + paths.front();
      return k;
    }
    text_ += "<g" + shown_in(shows) + ">";
    for (const std::string& path : paths) text_ += "<path" + path;
    text_ += "</g>";
    return k;
  }

  /// As wide as it was measured, whatever font it is shown in.
  void write_words(const TextMark& said) {
    if (said.text.empty()) return;
    const FlatPoint at{screen::kPxPerMm * said.at.x, screen::kPxPerMm * (height_ - said.at.y)};
    text_ += "<text" + shown_in(said.shows) + " x=\"" + number(at.x) + "\" y=\"" + number(at.y);
    if (said.anchor != draw::Anchor::Left)
      text_ += std::string("\" text-anchor=\"") +
               (said.anchor == draw::Anchor::Middle ? "middle" : "end");
    if (said.turn != 0)
      text_ += "\" transform=\"rotate(" + number(-said.turn * 180 / std::numbers::pi, 2) + " " +
               number(at.x) + " " + number(at.y) + ")";
    const double width = labels_.text_width_mm(said.text, said.height_mm);
    text_ += "\" textLength=\"" + number(screen::kPxPerMm * width) + "\">" +
             xml_escaped(said.text) + "</text>";
  }

  const screen::Layer& layer_;
  const Font& labels_;
  double height_;  ///< of the picture, CSS mm
  std::string text_;
  std::string group_;  ///< attributes of the one that is open
};

std::string group_of(const ScreenPicture& picture, const screen::Layer& layer, const Font& labels) {
  std::string group = "<g class=\"" + xml_escaped(layer.what) + "\"";
  if (layer.what == "words")
    group += " fill=\"currentColor\" stroke=\"none\" font-family=\"" + xml_escaped(kScreenFont) +
             "\" font-size=\"" + number(picture.text_px, 2) +
             "\" font-variant=\"lining-nums tabular-nums\"";
  else
    group += " fill=\"currentColor\" fill-opacity=\"" + number(layer.tint, 2) +
             "\" stroke=\"currentColor\" stroke-opacity=\"" + number(layer.ink, 2) + "\"";
  return group + ">" + LayerText(picture, layer, labels).text() + "</g>\n";
}

std::string pair_of(FlatPoint p, int places) {
  return number(p.x, places) + " " + number(p.y, places);
}

std::string handle_text(const screen::Handle& handle) {
  std::string keys;
  for (const std::string& key : handle.keys) keys += (keys.empty() ? "" : " ") + key;
  const auto attribute = [](const char* name, const std::string& value) {
    return std::string(" ") + name + "=\"" + xml_escaped(value) + "\"";
  };
  return "<circle" + attribute("class", "handle " + to_text(handle.kind)) + shown_in(handle.shows) +
         attribute("data-keys", keys) + attribute("data-side", handle.side) +
         attribute("data-corner", handle.corner) + attribute("data-mm", number(handle.mm, 4)) +
         attribute("data-least", number(handle.least, 4)) +
         attribute("data-most", number(handle.most, 4)) +
         attribute("data-way", pair_of(handle.way, 6)) +
         attribute("data-mm-per-px", number(handle.mm_per_px, 9)) +
         attribute("cx", number(handle.at_px.x)) + attribute("cy", number(handle.at_px.y)) +
         attribute("r", number(kHandlePx / 2)) + "/>";
}

}  // namespace

std::string to_svg(const ScreenPicture& picture, const Font& labels) {
  const std::string width = number(picture.width_px, 2), height = number(picture.height_px, 2);
  std::string svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"screen " +
                    xml_escaped(picture.kind) + "\" width=\"" + width + "\" height=\"" + height +
                    "\" viewBox=\"0 0 " + width + " " + height + "\" role=\"img\" aria-label=\"" +
                    xml_escaped(picture.title) + "\"";
  if (picture.map) {
    svg += " data-mm-per-px=\"" + number(picture.map->mm_per_px, 9) + "\" data-origin=\"" +
           pair_of(picture.map->origin_px, 6) + "\"";
    if (picture.map->mirrored) svg += " data-mirrored=\"1\"";
  }
  if (picture.rings) {
    svg += " data-center=\"" + pair_of(picture.rings->center_px, 3) + "\" data-radii=\"";
    std::string radii;
    for (const auto& [px, distance] : picture.rings->radii)
      radii += (radii.empty() ? "" : " ") + number(px, 3) + ":" + number(distance.mm(), 3);
    svg += radii + "\"";
  }
  svg += ">\n<title>" + xml_escaped(picture.title) + "</title>\n<desc>" +
         xml_escaped(picture.words) + "</desc>\n";
  for (const screen::Layer& layer : picture.layers) svg += group_of(picture, layer, labels);
  if (!picture.handles.empty()) {
    svg += "<g class=\"handles\" fill=\"none\" stroke=\"none\" pointer-events=\"all\">";
    for (const screen::Handle& handle : picture.handles) svg += handle_text(handle);
    svg += "</g>\n";
  }
  return svg + "</svg>\n";
}

}  // namespace swathe
