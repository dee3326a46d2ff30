#include "check/check.hpp"

#include "check/checks.hpp"

namespace swathe {
namespace {

constexpr Check kChecks[] = {
    check_numeral_height, check_numeral_stroke,  check_numeral_color, check_numeral_corner,
    check_numeral_places, check_numeral_spacing, check_sight,         check_contrast,
    check_cover_gap,      check_corner_reach,    check_cover_cloth,   check_cloth_color,
    check_corner_fill,    check_padding,         check_padding_form,  check_backing,
    check_extension,      check_hard_parts,      check_board_ends,    check_zone,
    check_by_eye,         check_support,         check_weight,        check_play,
    check_brackets,       check_openings,
};

}  // namespace

std::vector<Measurable> check_to_measure(const CheckedSet& subject) {
  const Season no_rules;
  const Season& season = subject.season ? *subject.season : no_rules;
  Findings findings(subject, season);
  for (const Check one : kChecks) one(subject, season, findings);
  return std::move(findings).worst_first();
}

std::vector<Finding> check(const CheckedSet& subject) {
  std::vector<Finding> findings;
  for (Measurable& one : check_to_measure(subject)) findings.push_back(std::move(one.finding));
  return findings;
}

}  // namespace swathe
