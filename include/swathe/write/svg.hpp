#pragma once

#include <string>

#include "swathe/draw/drawing.hpp"
#include "swathe/type/font.hpp"

namespace swathe {

/// One page as an SVG 1.1 file at full size: width and height in millimeters, one group a layer,
/// named as in style_of; what only shows a kind of line lies on one called KEY. Tints stand in
/// groups of their own at the bottom, text in one on top.
///
/// Letters are outlines, so that no other machine's fonts push words over lines; each is drawn once
/// and used wherever it stands. A text bears its words as aria-label, for searches and for readers.
///
/// Requires: text in UTF-8.
/// Holds (svg_test.cpp): (1) same page, same bytes, in any locale; (2) well-formed XML, whatever
///   the words.
std::string to_svg(const Page& page, const std::string& title, const Font& labels);

}  // namespace swathe
