#pragma once

#include "check/book.hpp"

// The families of checks. Each looks at one part of the job and writes into the book; where the
// season has no rule on a thing it writes nothing.
namespace swathe {

using Check = void (*)(const Subject&, const Season&, Book&);

void check_numeral_height(const Subject&, const Season&, Book&);
void check_numeral_stroke(const Subject&, const Season&, Book&);
void check_numeral_color(const Subject&, const Season&, Book&);
void check_numeral_corner(const Subject&, const Season&, Book&);
void check_numeral_places(const Subject&, const Season&, Book&);
void check_numeral_spacing(const Subject&, const Season&, Book&);
void check_sight(const Subject&, const Season&, Book&);
void check_contrast(const Subject&, const Season&, Book&);
void check_cover_gap(const Subject&, const Season&, Book&);
void check_corner_reach(const Subject&, const Season&, Book&);
void check_cover_cloth(const Subject&, const Season&, Book&);
void check_cloth_color(const Subject&, const Season&, Book&);
void check_corner_fill(const Subject&, const Season&, Book&);
void check_padding(const Subject&, const Season&, Book&);
void check_padding_form(const Subject&, const Season&, Book&);
void check_backing(const Subject&, const Season&, Book&);
void check_extension(const Subject&, const Season&, Book&);
void check_hard_parts(const Subject&, const Season&, Book&);
void check_zone(const Subject&, const Season&, Book&);
void check_by_eye(const Subject&, const Season&, Book&);  ///< fastening, markings
void check_support(const Subject&, const Season&, Book&);
void check_weight(const Subject&, const Season&, Book&);
void check_brackets(const Subject&, const Season&, Book&);  ///< our own advice

}  // namespace swathe
