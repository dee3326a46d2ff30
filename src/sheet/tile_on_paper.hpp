#pragma once

#include <string>

#include "swathe/build/made.hpp"
#include "swathe/sheet/drawing.hpp"
#include "swathe/sheet/tiles.hpp"
#include "swathe/type/face.hpp"

namespace swathe {

/// A page too large for the job's paper, in tiles of it; no pages where the paper is too small for
/// tiles.
Sheet tile_on_paper(const Page& page, const Made& made, const Face& labels, std::string stem,
                    std::string cut_words, std::string face_words);

}  // namespace swathe
