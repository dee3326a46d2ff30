#include "swathe/write/svg.hpp"

#include <array>
#include <cmath>
#include <string_view>
#include <vector>

#include "swathe/base/units.hpp"
#include "write/text_outline.hpp"

namespace swathe {
namespace {

constexpr std::size_t kKinds = static_cast<std::size_t>(LineKind::Outline) + 1;
constexpr int kDecimals = 4;

std::string number(double value) { return plain_number(value, kDecimals); }

/// Characters XML 1.0 (section 2.2) has no place for are left out.
std::string escaped(std::string_view words) {
  std::string text;
  for (const char c : words) {
    switch (c) {
      case '&':
        text += "&amp;";
        break;
      case '<':
        text += "&lt;";
        break;
      case '>':
        text += "&gt;";
        break;
      case '"':
        text += "&quot;";
        break;
      default:
        if (static_cast<unsigned char>(c) >= 0x20) text += c;
    }
  }
  return text;
}

/// The data of a path element; the page's y goes up, SVG's down.
class PathData {
 public:
  explicit PathData(double page_height_mm) : height_(page_height_mm) {}

  void add(const Path& path) {
    const std::size_t count = path.vertices.size();
    if (count == 0) return;
    to('M', path.vertices[0].at);
    for (std::size_t k = 1; k < count; ++k) edge(path.vertices[k - 1], path.vertices[k].at);
    if (!path.closed) return;
    if (path.vertices.back().bulge != 0) edge(path.vertices.back(), path.vertices[0].at);
    data_ += 'Z';
  }

  void add(const std::vector<Curve>& curves) {
    for (const Curve& curve : curves) {
      switch (curve.verb) {
        case Curve::Verb::Move:
          to('M', curve.to);
          break;
        case Curve::Verb::Line:
          to('L', curve.to);
          break;
        case Curve::Verb::Cubic:
          to('C', curve.a);
          to(' ', curve.b);
          to(' ', curve.to);
          break;
        case Curve::Verb::Close:
          data_ += 'Z';
          break;
      }
    }
  }

  const std::string& text() const { return data_; }

 private:
  void to(char command, FlatPoint p) {
    data_ += command;
    data_ += number(p.x) + " " + number(height_ - p.y);
  }

  void edge(const Vertex& from, FlatPoint end) {
    if (from.bulge == 0) {
      to('L', end);
      return;
    }
    const Arc arc = arc_of(from.at, end, from.bulge);
    const char* const large = std::abs(from.bulge) > 1 ? "1" : "0";
    const char* const sweep = from.bulge > 0 ? "0" : "1";  // turned round with the y axis
    data_ += "A" + number(arc.radius) + " " + number(arc.radius) + " 0 " + large + " " + sweep;
    to(' ', end);
  }

  double height_;
  std::string data_;
};

std::string begin_layer(const std::string& name, const std::string& style) {
  return "<g id=\"" + name + "\" inkscape:groupmode=\"layer\" inkscape:label=\"" + name + "\" " +
         style + ">\n";
}

std::string stroke_of(const LineStyle& style) {
  std::string text = "fill=\"none\" stroke=\"#000000\" stroke-width=\"" + number(style.width_mm) +
                     "\" stroke-linecap=\"round\" stroke-linejoin=\"round\"";
  for (std::size_t k = 0; k < style.dashes_mm.size(); ++k)
    text += (k == 0 ? " stroke-dasharray=\"" : " ") + number(style.dashes_mm[k]);
  if (!style.dashes_mm.empty()) text += "\"";
  return text;
}

/// Elements gathered by layer.
struct Layers {
  std::array<std::string, kKinds> fills, lines;
  std::vector<std::size_t> fill_order;  ///< tints lie in the order their layers first come up
  std::string text;
};

Layers layers_of(const Page& page, const Face& labels) {
  Layers layers;
  for (const Mark& mark : page.drawing.marks()) {
    PathData data(page.height_mm);
    if (const auto* const line = std::get_if<LineMark>(&mark)) {
      data.add(line->path);
      layers.lines[static_cast<std::size_t>(line->kind)] += "<path d=\"" + data.text() + "\"/>\n";
    } else if (const auto* const fill = std::get_if<FillMark>(&mark)) {
      for (const Path& outline : fill->outlines) data.add(outline);
      const auto kind = static_cast<std::size_t>(fill->kind);
      if (layers.fills[kind].empty()) layers.fill_order.push_back(kind);
      layers.fills[kind] +=
          "<path fill=\"" + to_text(fill->colour) + "\" d=\"" + data.text() + "\"/>\n";
    } else if (const auto* const text = std::get_if<TextMark>(&mark)) {
      data.add(outline_of(*text, labels));
      layers.text +=
          "<path aria-label=\"" + escaped(text->text) + "\" d=\"" + data.text() + "\"/>\n";
    }
  }
  return layers;
}

}  // namespace

std::string to_svg(const Page& page, const std::string& title, const Face& labels) {
  const std::string width = number(page.width_mm), height = number(page.height_mm);
  std::string svg =
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<svg xmlns=\"http://www.w3.org/2000/svg\" "
      "xmlns:inkscape=\"http://www.inkscape.org/namespaces/inkscape\" version=\"1.1\" width=\"" +
      width + "mm\" height=\"" + height + "mm\" viewBox=\"0 0 " + width + " " + height + "\">\n" +
      "<title>" + escaped(title) + "</title>\n";
  const Layers layers = layers_of(page, labels);
  for (const std::size_t kind : layers.fill_order) {
    const std::string name = style_of(static_cast<LineKind>(kind)).layer;
    svg += begin_layer(name + "-TINT", "stroke=\"none\"") + layers.fills[kind] + "</g>\n";
  }
  for (std::size_t kind = 0; kind < kKinds; ++kind) {
    if (layers.lines[kind].empty()) continue;
    const LineStyle& style = style_of(static_cast<LineKind>(kind));
    svg += begin_layer(style.layer, stroke_of(style)) + layers.lines[kind] + "</g>\n";
  }
  if (!layers.text.empty())
    svg += begin_layer("TEXT", "fill=\"#000000\" stroke=\"none\"") + layers.text + "</g>\n";
  return svg + "</svg>\n";
}

}  // namespace swathe
