#pragma once

#include <string>

#include "swathe/build/made.hpp"
#include "swathe/sheet/drawing.hpp"
#include "swathe/sheet/tiles.hpp"
#include "swathe/type/face.hpp"

namespace swathe {

/// What each tile of a page says of it, and its file's name.
struct TileWords {
  std::string stem, cut, face, note;
};

/// A page too large for the job's paper, in tiles of it; no pages where the paper is too small for
/// tiles.
Sheet tile_on_paper(const Page& page, const Made& made, const Face& labels, TileWords words);

}  // namespace swathe
