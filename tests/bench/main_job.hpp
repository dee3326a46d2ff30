#pragma once

#include <cstddef>

#include "swathe/draw.hpp"

namespace swathe::bench {

/// The sheets whose pages are SVG files too.
bool has_pictures(const Sheet& sheet);

/// The main job on the example, from the job's text to the bytes of every file that `swathe make`
/// writes, all but the writing: PDF, SVG, DXF, OBJ and the report. How many bytes.
std::size_t main_job();

}  // namespace swathe::bench
