#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "check/checks.hpp"
#include "swathe/pattern/cloth_map.hpp"

namespace swathe {
namespace {

/// The nearest to the front that any cut left open comes: distance out from the board's back, less
/// than zero where every such cut stays on the back. A sewn dart is shut again.
double nearest_cut(const CheckedSet& s, const Pattern& pattern) {
  const ClothMap map(s.job.cloth);
  double nearest = -1.0;
  const auto look_at = [&](FlatPoint p) {
    const double u =
        std::clamp(map.to_cover(p).u, s.section.cloth_edge_bottom(), s.section.cloth_edge_top());
    const bool on_back = u >= s.section.back_edge_top() || u <= s.section.back_edge_bottom();
    if (!on_back) nearest = std::max(nearest, s.section.at(u).d);
  };
  for (const PatternCorner& corner : pattern.corners) {
    if (corner.sewn) continue;
    for (const FlatPoint p : corner.notch_top) look_at(p);
    for (const FlatPoint p : corner.notch_bottom) look_at(p);
  }
  for (const Polygon& hole : pattern.holes) {
    for (const FlatPoint p : hole) look_at(p);
  }
  for (const BracketOnPattern& bracket : pattern.brackets) {
    for (const Path& window : bracket.windows) {
      for (const Vertex& vertex : window.vertices) look_at(vertex.at);
    }
  }
  return nearest;
}

void judge_padding_faces(const CheckedSet& s, const Season& season, double nearest, Book& book) {
  const double behind = s.section.thickness_mm() - nearest;
  Judged j{"cover-cloth",
           "padding's outward, upward and downward faces",
           "covered",
           nearest < 0
               ? "covered: every open cut is on the boards' backs"
               : fmt::format("covered: cuts stay {} behind the padding", book.about(behind)),
           Verdict::Pass,
           "",
           {{Subject::cloth(), Subject::padding()}, {"cloth.cut_clear"}}};
  if (behind < -kNoTape) {
    j.measured = fmt::format("a cut comes {} over the padding", book.about(-behind));
    j.verdict = Verdict::Fail;
    j.advice = fmt::format("raise cloth.cut_clear by {}", book.on_tape(-behind));
    j.about.mend = {{"cloth.cut_clear", book.at_least_value(s.job.cloth.cut_clear.mm() - behind)}};
  }
  book.add(*season.cloth_faces, j);
}

void judge_wood_faces(const Season& season, double nearest, Book& book) {
  const bool on_edge = nearest >= 0;
  book.add(*season.cloth_over_wood,
           {"cover-cloth",
            "boards' outside faces",
            "covered",
            on_edge ? "a relief is cut over the boards' edge at inside corners"
                    : "covered: every open cut is on the boards' backs",
            on_edge ? Verdict::Unknown : Verdict::Pass,
            "see that the folded cloth covers the wood at the inside corners",
            {{Subject::cloth(), Subject::boards()}, {"cloth.cut_clear"}}});
}

/// A tongue that is folded round an end may not come out at the board's other end.
void judge_tongues(const CheckedSet& s, Book& book) {
  const double reach = s.job.cloth.end_reach.mm();
  for (const Piece& board : s.boards) {
    const bool has_end =
        board.start.kind == EndCut::Kind::Free || board.end.kind == EndCut::Kind::Free;
    if (!has_end || reach <= board.length_mm + kNoTape) continue;
    book.advise({"cover-cloth",
                 fmt::format("bumper {}, {} board", board.bumper, board.side),
                 fmt::format("a tongue no longer than the board: {}", book.about(board.length_mm)),
                 book.about(reach),
                 Verdict::Warn,
                 fmt::format("set cloth.end_reach to less than {}", book.on_tape(board.length_mm)),
                 {{Subject::board(board.bumper, board.side), Subject::cloth()},
                  {"cloth.end_reach"},
                  {{"cloth.end_reach", book.at_most_value(board.length_mm)}}}});
  }
}

}  // namespace

void check_cover_cloth(const CheckedSet& s, const Season& season, Book& book) {
  judge_tongues(s, book);
  double nearest = -1.0;
  for (const Pattern& pattern : s.patterns) nearest = std::max(nearest, nearest_cut(s, pattern));
  if (season.cloth_faces && season.cloth_faces->value) {
    judge_padding_faces(s, season, nearest, book);
  }
  if (season.cloth_over_wood && season.cloth_over_wood->value) {
    judge_wood_faces(season, nearest, book);
  }
}

}  // namespace swathe
