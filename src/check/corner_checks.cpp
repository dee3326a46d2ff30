#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "check/checks.hpp"
#include "check/plan.hpp"

namespace swathe {
namespace {

constexpr const char* kFillHollows =
    "fill the hollows between round noodles and square ends with foam";

enum class CornerMade { Apart, Turned, Met };

/// What stands at the frame's corner after a side: a bumper that turns it, two that meet there, or
/// a gap.
CornerMade joint_at(const Subject& s, const std::vector<CoveredSide>& sides, int before) {
  for (const Wrap& wrap : s.wraps) {
    for (const RunCorner& corner : wrap.run().corners) {
      if (corner.before == before) return CornerMade::Turned;
    }
  }
  const CoveredSide& left = sides[static_cast<std::size_t>(before)];
  const CoveredSide& right = sides[static_cast<std::size_t>(s.frame.next(before))];
  if (left.covered.empty() || right.covered.empty()) return CornerMade::Apart;
  const double depth = s.section.depth_mm();  // a butting end stays back by at most this
  const bool meets =
      left.covered.back().to >= left.length - depth && right.covered.front().from <= depth;
  return meets ? CornerMade::Met : CornerMade::Apart;
}

struct Filling {
  bool by_padding = false;  ///< the padding's own shape fills the corner
  std::string how;
  std::string look_at;  ///< where the model cannot know
};

Filling filling_of(const PaddingKeys& padding, CornerMade joint) {
  const bool noodles = padding.form == PaddingForm::Noodles;
  if (joint == CornerMade::Met) {
    return noodles ? Filling{false, "square ends of two bumpers", kFillHollows}
                   : Filling{true, "square ends of two blocks", ""};
  }
  switch (padding.corner) {
    case PaddingCorner::Mitred:
      return {true, "mitred padding", ""};
    case PaddingCorner::Bent:
      return {false, "padding bent round the corner",
              "measure the padding in the bend: it must not be squeezed thinner"};
    case PaddingCorner::Butted:
      break;
  }
  return noodles ? Filling{false, "noodles that stop at their neighbor", kFillHollows}
                 : Filling{true, "blocks that stop at their neighbor", ""};
}

void judge_corner(const Subject& s, const Season& season, const std::string& name, CornerMade joint,
                  Findings& findings) {
  const Filling filling = filling_of(s.job.padding, joint);
  CheckResult j{"corner-fill",
                name,
                "filled with padding",
                filling.how,
                filling.by_padding ? Verdict::Pass : Verdict::Unknown,
                filling.look_at};
  if (!season.corner_fill) {
    findings.add(*season.corner_filled, j);
    return;
  }
  // From the corner outwards there can be no more padding than there is on the sides.
  const double depth = s.section.padding_depth_mm();
  const Length limit = season.corner_fill->value;
  const Verdict deep = findings.verdict(limit.mm() - depth, Grace::Inspection);
  j.required = fmt::format("at least {} of uncompressed padding", findings.exact_text(limit));
  j.measured = fmt::format("{}, {} deep", filling.how, findings.measured_text(depth));
  if (deep == Verdict::Fail || (deep == Verdict::Warn && filling.by_padding)) {
    j.verdict = deep;
    j.advice = findings.with_grace_note(
        deep, fmt::format("take padding {} deep", findings.exact_text(limit)));
  }
  findings.add(*season.corner_fill, j);
}

}  // namespace

void check_corner_fill(const Subject& s, const Season& season, Findings& findings) {
  const bool filled = season.corner_filled && season.corner_filled->value;
  if (!season.corner_fill && !filled) return;
  const auto sides = covered_sides(s);
  // Corners that are made alike share one finding.
  std::string turned, met;
  for (int before = 0; before < static_cast<int>(sides.size()); ++before) {
    if (s.frame.turn_after(before) <= Angle()) continue;
    const CornerMade joint = joint_at(s, sides, before);
    if (joint == CornerMade::Apart) continue;
    std::string& list = joint == CornerMade::Turned ? turned : met;
    list += (list.empty() ? "" : ", ") + corner_name(s.frame, before);
  }
  if (!turned.empty()) judge_corner(s, season, turned, CornerMade::Turned, findings);
  if (!met.empty()) judge_corner(s, season, met, CornerMade::Met, findings);
}

}  // namespace swathe
