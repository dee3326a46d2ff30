#pragma once

#include "check/findings.hpp"

// The checks. Each looks at one part of the job and adds to the findings. Where the season has no
// rule on it, it adds nothing.
namespace swathe {

/// The key that says how deep the padding is.
inline std::string padding_depth_key(const Job& job) {
  return job.padding.form == PaddingForm::Noodles ? "padding.diameter" : "padding.depth";
}

using Check = void (*)(const CheckedSet&, const Season&, Findings&);

void check_numeral_height(const CheckedSet&, const Season&, Findings&);
void check_numeral_stroke(const CheckedSet&, const Season&, Findings&);
void check_numeral_color(const CheckedSet&, const Season&, Findings&);
void check_numeral_corner(const CheckedSet&, const Season&, Findings&);
void check_numeral_places(const CheckedSet&, const Season&, Findings&);
void check_numeral_spacing(const CheckedSet&, const Season&, Findings&);
void check_sight(const CheckedSet&, const Season&, Findings&);
void check_contrast(const CheckedSet&, const Season&, Findings&);
void check_cover_gap(const CheckedSet&, const Season&, Findings&);
void check_openings(const CheckedSet&, const Season&, Findings&);  ///< our own advice
void check_corner_reach(const CheckedSet&, const Season&, Findings&);
void check_cover_cloth(const CheckedSet&, const Season&, Findings&);
void check_cloth_color(const CheckedSet&, const Season&, Findings&);
void check_corner_fill(const CheckedSet&, const Season&, Findings&);
void check_padding(const CheckedSet&, const Season&, Findings&);
void check_padding_form(const CheckedSet&, const Season&, Findings&);
void check_backing(const CheckedSet&, const Season&, Findings&);
void check_extension(const CheckedSet&, const Season&, Findings&);
void check_hard_parts(const CheckedSet&, const Season&, Findings&);
void check_board_ends(const CheckedSet&, const Season&, Findings&);  ///< as hard parts
void check_zone(const CheckedSet&, const Season&, Findings&);
void check_by_eye(const CheckedSet&, const Season&, Findings&);  ///< fastening, markings
void check_support(const CheckedSet&, const Season&, Findings&);
void check_weight(const CheckedSet&, const Season&, Findings&);
void check_brackets(const CheckedSet&, const Season&, Findings&);  ///< our own advice

void check_play(const CheckedSet&, const Season&, Findings&);  ///< our own advice

}  // namespace swathe
