#pragma once

#include <string>
#include <vector>

#include "draw/page_fill.hpp"
#include "swathe/draw.hpp"
#include "swathe/job.hpp"
#include "swathe/type.hpp"
#include "tile/tiles.hpp"

namespace swathe {

/// What each tile of a page says of it and of its job, and its file's name.
struct TileWords {
  std::string stem, title, cut, face, note;
  std::string size{};                ///< of what is put together; may be empty
  std::vector<std::string> below{};  ///< TileOptions::below
};

/// Whether tiles have room for their own words on that paper.
bool holds_tiles(const PaperKeys& paper);

/// A page too large for the paper, in tiles of it; no pages where the paper holds none.
Sheet tile_on_paper(const Page& page, const PaperKeys& paper, const Font& labels, TileWords words,
                    PageFill fill = PageFill::Drawn);

}  // namespace swathe
