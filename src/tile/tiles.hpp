#pragma once

#include <string>
#include <vector>

#include "draw/page_fill.hpp"
#include "swathe/draw.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// The paper that tiles are printed on, and the words each of them bears.
struct TileOptions {
  std::string paper = "letter";  ///< its name
  double width_mm = 215.9, height_mm = 279.4;
  double margin_mm = 12.7;  ///< nothing but trim marks is printed in it
  double overlap_mm = 12.7;

  std::string stem;                ///< of the file: "A-tiles"
  std::string title;               ///< the job
  std::string subject;             ///< "bumper A, cover"
  std::string cut_words;           ///< "cut 1 red, 1 blue"
  std::string face_words;          ///< "INSIDE UP"
  std::string note;                ///< "Same as bumper A: print A once and cut 2 more"
  std::string size;                ///< of the whole page's subject, "81 in by 14 in"; may be empty
  std::string correction;          ///< that the print is corrected, and for what
  std::vector<std::string> below;  ///< what the page says of itself below what is drawn on it
  bool roll = false;               ///< the longer edge is as long as the page needs, and no longer
};

/// A page too big for the paper, cut into tiles that are put together by their marks: each is
/// trimmed at its left and top edge and laid on its neighbors' gray strip, edge on JOIN line.
///
/// The fewest tiles are sought over both ways the paper can lie and where the first one starts, on
/// a grid of 1 mm and beside the outline's corners; tiles without ink are left out. They are
/// numbered in the order in which they are glued; a page map on each, or a plan on one tile, shows
/// them all. How they are glued, how large they are together and what their lines mean stands on
/// the first that has room for it. So do the words below the page: all of them on one tile, in
/// their order, below the page where that takes no tile more, else on it where it is empty. A text
/// of the page is never cut: it is drawn on the tile that holds it whole, and moved on to one where
/// none does. Lines and fills keep their places.
///
/// There are as many blank pages: the layout is worked out all the same.
///
/// Requires: paper that leaves 110 mm by 80 mm inside its margins, and more than twice the overlap.
/// Holds (tiles_test.cpp): (1) the tiles' parts of every line are together as long as the line,
///   but for what lies in overlaps; (2) put together by their marks they match the whole page.
Sheet tile(const Page& full, const Font& labels, const TileOptions& options,
           PageFill fill = PageFill::Drawn);

}  // namespace swathe
