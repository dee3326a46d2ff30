#pragma once

#include <cstddef>
#include <map>
#include <vector>

#include "swathe/draw.hpp"
#include "swathe/type.hpp"

// The floor of the main job: plain Cairo making as many PDF and SVG files of as many pages,
// strokes, areas and straight pieces, and texts of as many letters in a font of the same outlines,
// with nothing worked out.
namespace swathe::bench {

/// What a page has to draw: straight pieces in each stroke and each area (an arc is one), and the
/// letters of each text.
struct PageLoad {
  struct Text {
    double em_mm, turn;
    std::vector<unsigned long> glyphs;
  };
  double width_mm = 0, height_mm = 0;
  std::map<LineKind, std::vector<std::size_t>> strokes;  ///< a kind is stroked at once
  std::vector<std::vector<std::size_t>> areas;
  std::vector<Text> texts;
};

struct FileLoad {
  bool pictures = false;
  std::vector<PageLoad> pages;
};

struct CairoLoad {
  std::vector<FileLoad> files;
  std::map<unsigned long, std::vector<type::Curve>> letters;
};

CairoLoad load_of_example();

/// Makes them; how many bytes they are.
std::size_t cairo_floor(const CairoLoad& load);

}  // namespace swathe::bench
