#include <array>
#include <cmath>
#include <map>
#include <numbers>
#include <string_view>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/write.hpp"
#include "write/xml.hpp"

namespace swathe {
namespace {

constexpr std::size_t kKinds = static_cast<std::size_t>(LineKind::Outline) + 1;
constexpr int kDecimals = 4;

std::string number(double value) { return plain_number(value, kDecimals); }

/// The data of a path element; the page's y goes up, SVG's down.
class PathData {
 public:
  explicit PathData(double page_height_mm) : height_(page_height_mm) {}

  void add(const plane::Path& path) {
    const std::size_t count = path.vertices.size();
    if (count == 0) return;
    to('M', path.vertices[0].at);
    for (std::size_t k = 1; k < count; ++k) edge(path.vertices[k - 1], path.vertices[k].at);
    if (!path.closed) return;
    if (path.vertices.back().bulge != 0) edge(path.vertices.back(), path.vertices[0].at);
    data_ += 'Z';
  }

  const std::string& text() const { return data_; }

 private:
  void to(char command, FlatPoint p) {
    data_ += command;
    data_ += number(p.x);
    data_ += ' ';
    data_ += number(height_ - p.y);
  }

  void edge(const plane::Vertex& from, FlatPoint end) {
    if (from.bulge == 0) {
      to('L', end);
      return;
    }
    const plane::Arc arc = arc_of(from.at, end, from.bulge);
    const char* const large = std::abs(from.bulge) > 1 ? "1" : "0";
    const char* const sweep = from.bulge > 0 ? "0" : "1";  // turned round with the y axis
    const std::string radius = number(arc.radius);
    data_ += "A" + radius + " " + radius + " 0 " + large + " " + sweep;
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

/// The letters of a page, each drawn once and used where it stands.
class Letters {
 public:
  explicit Letters(const Font& font) : font_(font) {}

  /// A text as uses of its letters.
  std::string used(const TextMark& mark, double page_height_mm) {
    std::string uses;
    double pen = 0;  // em
    for (const ShapedGlyph& glyph : font_.shape(mark.text, kLabelFigures)) {
      if (defined(glyph.glyph)) {
        uses += "<use xlink:href=\"#" + id(glyph.glyph);
        uses += "\" x=\"" + in_em(pen + glyph.offset.x);
        if (glyph.offset.y != 0) uses += "\" y=\"" + in_em(-glyph.offset.y);
        uses += "\"/>";
      }
      pen += glyph.advance;
    }
    const double share = mark.anchor == draw::Anchor::Left     ? 0.0
                         : mark.anchor == draw::Anchor::Middle ? 0.5
                                                               : 1.0;
    const double em = font_.cap_height() > 0 ? mark.height_mm / font_.cap_height() : 0.0;
    const FlatPoint start = mark.at - share * em * pen * plane::direction(mark.turn);
    std::string place =
        "translate(" + number(start.x) + " " + number(page_height_mm - start.y) + ")";
    if (mark.turn != 0)
      place += " rotate(" + plain_number(-mark.turn * 180 / std::numbers::pi, 6) + ")";
    place += " scale(" + plain_number(em / kEm, 8) + ")";
    return "<g aria-label=\"" + xml_escaped(mark.text) + "\"" + shown_in(mark.shows) +
           " transform=\"" + place + "\">" + uses + "</g>\n";
  }

  /// The drawings of the letters that were used.
  std::string definitions() const {
    std::string text;
    for (const auto& [glyph, data] : data_)
      if (!data.empty()) text += "<path id=\"" + id(glyph) + "\" d=\"" + data + "\"/>\n";
    return text.empty() ? text : "<defs>\n" + text + "</defs>\n";
  }

 private:
  static constexpr double kEm = 1000;  ///< a letter's own units in the em

  static std::string id(unsigned glyph) { return "letter-" + std::to_string(glyph); }
  static std::string in_em(double em) { return plain_number(kEm * em, 1); }

  /// Whether there is anything to draw.
  bool defined(unsigned glyph) {
    const auto [slot, fresh] = data_.try_emplace(glyph);
    if (fresh) slot->second = drawn(glyph);
    return !slot->second.empty();
  }

  std::string drawn(unsigned glyph) const {
    std::string data;
    const auto to = [&](char command, FlatPoint p) {
      data += command;
      data += in_em(p.x);
      data += ' ';
      data += in_em(-p.y);
    };
    for (const type::Curve& curve : font_.outline(glyph)) {
      switch (curve.verb) {
        case type::Curve::Verb::Move:
          to('M', curve.to);
          break;
        case type::Curve::Verb::Line:
          to('L', curve.to);
          break;
        case type::Curve::Verb::Cubic:
          to('C', curve.a);
          to(' ', curve.b);
          to(' ', curve.to);
          break;
        case type::Curve::Verb::Close:
          data += 'Z';
          break;
      }
    }
    return data;
  }

  const Font& font_;
  std::map<unsigned, std::string> data_;
};

/// Elements gathered by layer.
struct Layers {
  std::array<std::string, kKinds> fills, lines;
  std::vector<std::size_t> fill_order;  ///< tints lie in the order their layers first come up
  std::string key;                      ///< samples of lines, each in its own style
  std::string text, letters;
};

Layers layers_of(const Page& page, const Font& labels) {
  Layers layers;
  Letters letters(labels);
  for (const draw::Mark& mark : page.drawing.marks()) {
    PathData data(page.height_mm);
    if (const auto* const line = std::get_if<LineMark>(&mark)) {
      data.add(line->path);
      if (line->sample) {
        layers.key += "<path " + stroke_of(style_of(line->kind)) + " d=\"" + data.text() + "\"/>\n";
        continue;
      }
      layers.lines[static_cast<std::size_t>(line->kind)] +=
          "<path" + shown_in(line->shows) + " d=\"" + data.text() + "\"/>\n";
    } else if (const auto* const fill = std::get_if<FillMark>(&mark)) {
      for (const plane::Path& outline : fill->outlines) data.add(outline);
      const auto kind = static_cast<std::size_t>(fill->kind);
      if (layers.fills[kind].empty()) layers.fill_order.push_back(kind);
      layers.fills[kind] += "<path" + shown_in(fill->shows) + " fill=\"" + to_text(fill->color) +
                            "\" d=\"" + data.text() + "\"/>\n";
    } else if (const auto* const text = std::get_if<TextMark>(&mark)) {
      layers.text += letters.used(*text, page.height_mm);
    }
  }
  layers.letters = letters.definitions();
  return layers;
}

}  // namespace

std::string to_svg(const Page& page, const std::string& title, const Font& labels) {
  const std::string width = number(page.width_mm), height = number(page.height_mm);
  std::string svg =
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<svg xmlns=\"http://www.w3.org/2000/svg\" "
      "xmlns:xlink=\"http://www.w3.org/1999/xlink\" "
      "xmlns:inkscape=\"http://www.inkscape.org/namespaces/inkscape\" version=\"1.1\" width=\"" +
      width + "mm\" height=\"" + height + "mm\" viewBox=\"0 0 " + width + " " + height + "\">\n" +
      "<title>" + xml_escaped(title) + "</title>\n";
  const Layers layers = layers_of(page, labels);
  svg += layers.letters;
  for (const std::size_t kind : layers.fill_order) {
    const std::string name = style_of(static_cast<LineKind>(kind)).layer;
    svg += begin_layer(name + "-TINT", "stroke=\"none\"") + layers.fills[kind] + "</g>\n";
  }
  for (std::size_t kind = 0; kind < kKinds; ++kind) {
    if (layers.lines[kind].empty()) continue;
    const LineStyle& style = style_of(static_cast<LineKind>(kind));
    svg += begin_layer(style.layer, stroke_of(style)) + layers.lines[kind] + "</g>\n";
  }
  if (!layers.key.empty()) svg += begin_layer("KEY", "") + layers.key + "</g>\n";
  if (!layers.text.empty())
    svg += begin_layer("TEXT", "fill=\"#000000\" stroke=\"none\"") + layers.text + "</g>\n";
  return svg + "</svg>\n";
}

}  // namespace swathe
