#pragma once

#include "check/book.hpp"

// The families of checks. Each looks at one part of the job and writes into the book; where the
// season has no rule on a thing it writes nothing.
namespace swathe {

/// The key that says how deep the padding is.
inline std::string padding_depth_key(const Job& job) {
  return job.padding.form == PaddingForm::Noodles ? "padding.diameter" : "padding.depth";
}

using Check = void (*)(const CheckedSet&, const Season&, Book&);

void check_numeral_height(const CheckedSet&, const Season&, Book&);
void check_numeral_stroke(const CheckedSet&, const Season&, Book&);
void check_numeral_color(const CheckedSet&, const Season&, Book&);
void check_numeral_corner(const CheckedSet&, const Season&, Book&);
void check_numeral_places(const CheckedSet&, const Season&, Book&);
void check_numeral_spacing(const CheckedSet&, const Season&, Book&);
void check_sight(const CheckedSet&, const Season&, Book&);
void check_contrast(const CheckedSet&, const Season&, Book&);
void check_cover_gap(const CheckedSet&, const Season&, Book&);
void check_corner_reach(const CheckedSet&, const Season&, Book&);
void check_cover_cloth(const CheckedSet&, const Season&, Book&);
void check_cloth_color(const CheckedSet&, const Season&, Book&);
void check_corner_fill(const CheckedSet&, const Season&, Book&);
void check_padding(const CheckedSet&, const Season&, Book&);
void check_padding_form(const CheckedSet&, const Season&, Book&);
void check_backing(const CheckedSet&, const Season&, Book&);
void check_extension(const CheckedSet&, const Season&, Book&);
void check_hard_parts(const CheckedSet&, const Season&, Book&);
void check_zone(const CheckedSet&, const Season&, Book&);
void check_by_eye(const CheckedSet&, const Season&, Book&);  ///< fastening, markings
void check_support(const CheckedSet&, const Season&, Book&);
void check_weight(const CheckedSet&, const Season&, Book&);
void check_brackets(const CheckedSet&, const Season&, Book&);  ///< our own advice

}  // namespace swathe
