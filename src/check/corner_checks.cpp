#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "check/checks.hpp"
#include "check/plan.hpp"

namespace swathe {
namespace {

constexpr const char* kFillByHand =
    "tape strips of the same foam into the hollows between the round noodles and the other "
    "bumper's end, before the covers go on; or ask the inspector whether they may stay open";
constexpr const char* kMitreOrFill =
    "set padding.corner to \"mitred\", which leaves no hollows; or set padding.filled to true";

enum class CornerMade { Apart, Turned, Met };

/// What stands at the frame's corner after a side: a bumper that turns it, two that meet there, or
/// a gap.
CornerMade joint_at(const CheckedSet& s, const std::vector<CoveredSide>& sides, int before) {
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
  std::vector<KeyChange> mend{};
};

Filling filling_of(const PaddingKeys& padding, CornerMade joint) {
  const bool noodles = padding.form == PaddingForm::Noodles;
  if (joint == CornerMade::Met) {
    return noodles
               ? Filling{false, "two bumpers meet: fill the hollows by hand, or ask", kFillByHand}
               : Filling{true, "square ends of two blocks", ""};
  }
  switch (padding.corner) {
    case PaddingCorner::Mitred:
      return {true, "mitred padding", ""};
    case PaddingCorner::Bent:
      return {false, "padding bent round the corner: measure it there",
              "measure the padding in the bend: it must not be squeezed thinner; if it is, ask the "
              "inspector, or set padding.corner to \"mitred\""};
    case PaddingCorner::Butted:
      break;
  }
  if (!noodles) return {true, "blocks that stop at their neighbor", ""};
  if (padding.filled) return {true, "foam strips fill the hollows", ""};
  return {false, "hollows left open", kMitreOrFill, {{"padding.corner", "\"mitred\""}}};
}

/// Corners made alike.
struct AlikeCorners {
  std::string names;
  std::vector<Subject> subjects;

  void add(const CheckedSet& s, int before) {
    names += (names.empty() ? "" : ", ") + corner_name(s.frame, before);
    const auto name = [&](int side) {
      return s.frame.sides()[static_cast<std::size_t>(side)].name;
    };
    subjects.push_back(Subject::corner(name(before), name(s.frame.next(before))));
  }
};

void judge_corner(const CheckedSet& s, const Season& season, const AlikeCorners& corners,
                  CornerMade joint, Findings& findings) {
  const Filling filling = filling_of(s.job.padding, joint);
  CheckResult j{"corner-fill",
                corners.names,
                "filled with padding",
                filling.how,
                filling.by_padding ? Verdict::Pass : Verdict::Unknown,
                filling.look_at,
                {corners.subjects,
                 {"padding.corner", "padding.filled", "padding.form", padding_depth_key(s.job)},
                 filling.mend}};
  if (!season.corner_fill) {
    findings.add(*season.corner_filled, j);
    return;
  }
  // From the corner outwards there can be no more padding than there is on the sides.
  const double depth = s.section.padding_depth_mm();
  const Length limit = season.corner_fill->value;
  const Verdict deep = findings.verdict(limit.mm() - depth, Grace::Inspection);
  j.limit = findings.at_least_of(limit, Grace::Inspection);
  j.required = fmt::format("at least {} of uncompressed padding", findings.exact_text(limit));
  j.measured = fmt::format("{}, {} deep", filling.how, findings.measured_text(depth, {limit.mm()}));
  if (deep == Verdict::Fail || (deep == Verdict::Warn && filling.by_padding)) {
    j.verdict = deep;
    j.advice = findings.with_grace_note(
        deep, fmt::format("take padding {} deep", findings.exact_text(limit)));
    if (filling.by_padding) j.about.mend = {{padding_depth_key(s.job), findings.value(limit)}};
  }
  findings.add(*season.corner_fill, j);
}

}  // namespace

void check_corner_fill(const CheckedSet& s, const Season& season, Findings& findings) {
  const bool filled = season.corner_filled && season.corner_filled->value;
  if (!season.corner_fill && !filled) return;
  const auto sides = covered_sides(s);
  // Corners that are made alike share one finding.
  AlikeCorners turned, met;
  for (int before = 0; before < static_cast<int>(sides.size()); ++before) {
    if (s.frame.turn_after(before) <= Angle()) continue;
    const CornerMade joint = joint_at(s, sides, before);
    if (joint == CornerMade::Apart) continue;
    (joint == CornerMade::Turned ? turned : met).add(s, before);
  }
  if (!turned.names.empty()) judge_corner(s, season, turned, CornerMade::Turned, findings);
  if (!met.names.empty()) judge_corner(s, season, met, CornerMade::Met, findings);
}

}  // namespace swathe
