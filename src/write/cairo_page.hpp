#pragma once

#include <cairo.h>

#include "swathe/draw.hpp"

namespace swathe {

/// Sets the context up for a page of that height: millimeters from its lower left corner, y up.
void begin_page(cairo_t* context, double page_height_mm, double device_units_per_mm,
                draw::Stretch stretch = {});

/// The drawing's tints, then its lines kind by kind; no text.
void draw_fills_and_lines(cairo_t* context, const Drawing& drawing);

}  // namespace swathe
