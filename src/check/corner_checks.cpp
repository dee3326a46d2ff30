#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "check/checks.hpp"
#include "check/plan.hpp"

namespace swathe {
namespace {

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
  const double depth = s.section.depth_mm();  // a butting end stays back by no more than this
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
    return noodles
               ? Filling{false, "two bumpers' square ends",
                         "fill the hollows between the round noodles and the square ends with foam"}
               : Filling{true, "blocks that meet square", ""};
  }
  switch (padding.corner) {
    case PaddingCorner::Mitred:
      return {true, "padding mitred", ""};
    case PaddingCorner::Bent:
      return {false, "padding bent round", "see that the bend is not squeezed thinner"};
    case PaddingCorner::Butted:
      break;
  }
  return noodles
             ? Filling{false, "noodles butted",
                       "fill the hollows between the round noodles and the square ends with foam"}
             : Filling{true, "blocks butted", ""};
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
                  CornerMade joint, Book& book) {
  const Filling filling = filling_of(s.job.padding, joint);
  Judged j{"corner-fill",
           corners.names,
           "filled with padding",
           filling.how,
           filling.by_padding ? Verdict::Pass : Verdict::Unknown,
           filling.look_at,
           {corners.subjects, {"padding.corner", "padding.form", padding_depth_key(s.job)}}};
  if (!season.corner_fill) {
    book.add(*season.corner_filled, j);
    return;
  }
  // From the corner outwards there can be no more padding than there is on the sides.
  const double depth = s.section.padding_depth_mm();
  const Length limit = season.corner_fill->value;
  const Verdict deep = book.verdict(limit.mm() - depth, Grace::Inspection);
  j.required = fmt::format("at least {} of uncompressed padding", book.exactly(limit));
  j.measured = fmt::format("{}, {} deep", filling.how, book.about(depth));
  if (deep == Verdict::Fail || (deep == Verdict::Warn && filling.by_padding)) {
    j.verdict = deep;
    j.advice = book.graced(deep, fmt::format("take padding {} deep", book.exactly(limit)));
    if (filling.by_padding) j.about.mend = {{padding_depth_key(s.job), book.value(limit)}};
  }
  book.add(*season.corner_fill, j);
}

}  // namespace

void check_corner_fill(const CheckedSet& s, const Season& season, Book& book) {
  const bool filled = season.corner_filled && season.corner_filled->value;
  if (!season.corner_fill && !filled) return;
  const auto sides = covered_sides(s);
  // Corners made alike are told of once.
  AlikeCorners turned, met;
  for (int before = 0; before < static_cast<int>(sides.size()); ++before) {
    if (s.frame.turn_after(before) <= Angle()) continue;
    const CornerMade joint = joint_at(s, sides, before);
    if (joint == CornerMade::Apart) continue;
    (joint == CornerMade::Turned ? turned : met).add(s, before);
  }
  if (!turned.names.empty()) judge_corner(s, season, turned, CornerMade::Turned, book);
  if (!met.names.empty()) judge_corner(s, season, met, CornerMade::Met, book);
}

}  // namespace swathe
