#pragma once

#include "check/findings.hpp"

// The checks. Each looks at one part of the job and adds to the findings. Where the season has no
// rule on it, it adds nothing.
namespace swathe {

using Check = void (*)(const Subject&, const Season&, Findings&);

void check_numeral_height(const Subject&, const Season&, Findings&);
void check_numeral_stroke(const Subject&, const Season&, Findings&);
void check_numeral_color(const Subject&, const Season&, Findings&);
void check_numeral_corner(const Subject&, const Season&, Findings&);
void check_numeral_places(const Subject&, const Season&, Findings&);
void check_numeral_spacing(const Subject&, const Season&, Findings&);
void check_sight(const Subject&, const Season&, Findings&);
void check_contrast(const Subject&, const Season&, Findings&);
void check_cover_gap(const Subject&, const Season&, Findings&);
void check_corner_reach(const Subject&, const Season&, Findings&);
void check_cover_cloth(const Subject&, const Season&, Findings&);
void check_cloth_color(const Subject&, const Season&, Findings&);
void check_corner_fill(const Subject&, const Season&, Findings&);
void check_padding(const Subject&, const Season&, Findings&);
void check_padding_form(const Subject&, const Season&, Findings&);
void check_backing(const Subject&, const Season&, Findings&);
void check_extension(const Subject&, const Season&, Findings&);
void check_hard_parts(const Subject&, const Season&, Findings&);
void check_zone(const Subject&, const Season&, Findings&);
void check_by_eye(const Subject&, const Season&, Findings&);  ///< fastening, markings
void check_support(const Subject&, const Season&, Findings&);
void check_weight(const Subject&, const Season&, Findings&);
void check_brackets(const Subject&, const Season&, Findings&);  ///< our own advice

}  // namespace swathe
