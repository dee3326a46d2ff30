#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "check/checks.hpp"
#include "swathe/pattern.hpp"

namespace swathe {
namespace {

/// The nearest to the front that any cut left open comes: distance out from the board's back, less
/// than zero where every such cut stays on the back. A sewn dart is shut again.
double nearest_cut(const CheckedSet& s, const Pattern& pattern) {
  const ClothMap map(s.job.cloth);
  double nearest = -1.0;
  const auto look_at = [&](FlatPoint p, const Section& section) {
    const double u =
        std::clamp(map.to_cover(p).u, s.section.cloth_edge_bottom(), s.section.cloth_edge_top());
    const bool on_back = u >= section.back_edge_top() || u <= section.back_edge_bottom();
    if (!on_back) nearest = std::max(nearest, section.at(u).d);
  };
  for (const PatternCorner& corner : pattern.corners) {
    if (corner.sewn) continue;
    const Section& section = corner.filled ? s.section.square_front() : s.section;
    for (const plane::Polygon* notch : {&corner.notch_top, &corner.notch_bottom})
      for (const FlatPoint p : *notch) look_at(p, section);
  }
  for (const plane::Polygon& hole : pattern.holes) {
    for (const FlatPoint p : hole) look_at(p, s.section);
  }
  for (const BracketOnPattern& bracket : pattern.brackets) {
    for (const plane::Path& window : bracket.windows) {
      for (const plane::Vertex& vertex : window.vertices) look_at(vertex.at, s.section);
    }
  }
  return nearest;
}

void judge_padding_faces(const CheckedSet& s, const Season& season, double nearest,
                         Findings& findings) {
  const double behind = s.section.thickness_mm() - nearest;
  CheckResult j{"cover-cloth",
                "front, top and bottom of the padding",
                "covered",
                nearest < 0 ? "covered: every open cut is on the boards' backs"
                            : fmt::format("covered: cuts stay {} behind the padding",
                                          findings.measured_text(behind, {0})),
                Verdict::Pass,
                "",
                {{Subject::cloth(), Subject::padding()}, {"cloth.cut_clear"}}};
  if (behind < -kRounding) {
    j.measured =
        fmt::format("a cut comes {} over the padding", findings.measured_text(-behind, {0}));
    j.verdict = Verdict::Fail;
    const double enough = s.job.cloth.cut_clear.mm() - behind;
    j.advice = fmt::format("set cloth.cut_clear to {}", findings.at_least_text(enough));
    j.about.mend = {{"cloth.cut_clear", findings.at_least_value(enough)}};
  }
  findings.add(*season.cloth_faces, j);
}

void judge_wood_faces(const Season& season, double nearest, Findings& findings) {
  const bool on_edge = nearest >= 0;
  findings.add(*season.cloth_over_wood,
               {"cover-cloth",
                "outside of the boards",
                "covered",
                on_edge ? "corner folds are cut open over the boards' edge"
                        : "covered: every open cut is on the boards' backs",
                on_edge ? Verdict::Unknown : Verdict::Pass,
                "look at the inside corners: the folded cloth has to cover the wood",
                {{Subject::cloth(), Subject::boards()}, {"cloth.cut_clear"}}});
}

/// Whether a bumper's cover ends on this board.
bool has_cover_end(const CheckedSet& s, const bumper::Piece& board) {
  const auto on_board = [&](const RunSide& leg) {
    return s.frame.sides()[static_cast<std::size_t>(leg.side)].name == board.side &&
           leg.board_from() <= board.to_x && leg.board_to() >= board.from_x;
  };
  return std::ranges::any_of(s.wraps, [&](const Wrap& wrap) {
    const std::vector<RunSide>& legs = wrap.run().sides;
    return wrap.run().name == board.bumper && (on_board(legs.front()) || on_board(legs.back()));
  });
}

/// A tongue that is folded round an end may not come out at the board's other end.
void judge_tongues(const CheckedSet& s, Findings& findings) {
  const double reach = s.job.cloth.end_reach.mm();
  for (const bumper::Piece& board : s.boards) {
    if (!has_cover_end(s, board) || reach <= board.length_mm + kRounding) continue;
    const Findings::Held held = findings.held_texts(reach, board.length_mm);
    findings.advise(
        {"cover-cloth",
         fmt::format("bumper {}, {} board", board.bumper, board.side),
         fmt::format("a tongue at most as long as the board, {}", held.limit),
         held.measured,
         Verdict::Warn,
         fmt::format("set cloth.end_reach to less than {}", findings.rounded_text(board.length_mm)),
         {{Subject::board(board.bumper, board.side), Subject::cloth()},
          {"cloth.end_reach"},
          {{"cloth.end_reach", findings.at_most_value(board.length_mm)}}}});
  }
}

}  // namespace

void check_cover_cloth(const CheckedSet& s, const Season& season, Findings& findings) {
  judge_tongues(s, findings);
  double nearest = -1.0;
  for (const Pattern& pattern : s.patterns) nearest = std::max(nearest, nearest_cut(s, pattern));
  if (season.cloth_faces && season.cloth_faces->value) {
    judge_padding_faces(s, season, nearest, findings);
  }
  if (season.cloth_over_wood && season.cloth_over_wood->value) {
    judge_wood_faces(season, nearest, findings);
  }
}

}  // namespace swathe
