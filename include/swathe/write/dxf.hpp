#pragma once

#include <string>

#include "swathe/draw/drawing.hpp"
#include "swathe/type/font.hpp"

namespace swathe {

/// One page as a DXF file at full size for plotters and cutters, release 2000 (AC1015): a layer a
/// kind of line, named as in style_of, one for samples in keys and one for text; the header says
/// that a unit is 1 mm.
///
/// Lines are polylines, arcs in them bulges. Solid shapes (arrows, match marks) are their outlines;
/// tints are left out. A text is squeezed or stretched by its reader to the width it has in
/// `labels`, whatever font it is shown in there.
///
/// Requires: text in UTF-8.
/// Holds (dxf_test.cpp): (1) same page, same bytes; (2) ezdxf reads it and finds no fault in it,
///   whatever the words; (3) closed outlines keep their areas.
/// Source: the DXF Reference of AutoCAD 2000: group codes of each table and entity.
std::string to_dxf(const Page& page, const Font& labels);

}  // namespace swathe
