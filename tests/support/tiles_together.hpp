#pragma once

#include <map>
#include <string>
#include <vector>

#include "swathe/draw.hpp"
#include "swathe/plane.hpp"
#include "swathe/type.hpp"

// Tiles as a person puts them together on the table.
namespace swathe::test {

/// What a page brings of its own; what tiles add is drawn in other kinds.
bool is_pages_own(LineKind kind);

inline bool is_pages_own(const LineMark& line) { return is_pages_own(line.kind) && !line.sample; }

struct Diamond {
  FlatPoint base;  ///< the middle of its long side
  FlatPoint into;  ///< towards its apex
  std::string neighbor;
};

/// The half diamonds of a tile as a person reads them: a hollow triangle, and beside it "JOIN 7"
/// or where there is little room "7".
std::vector<Diamond> diamonds_of(const Page& page, const std::vector<std::string>& tiles);

/// Where each tile's page lies once the tiles are put together, diamond to diamond. The first lies
/// at the origin; how well every pair fits is checked.
std::map<std::string, FlatPoint> put_together(const Sheet& sheet);

/// Rasters of the tiles, laid where their marks say, against that of the whole page: no ink is
/// lost, none is new, and none is there twice but on the gray strips.
void check_together(const Page& page, const Sheet& sheet, const Font& font, int dpi = 100);

}  // namespace swathe::test
