#pragma once

#include <optional>
#include <string>
#include <vector>

#include "swathe/base/finding.hpp"
#include "swathe/base/notice.hpp"
#include "swathe/bumper/pieces.hpp"
#include "swathe/bumper/wrap.hpp"
#include "swathe/job/job.hpp"
#include "swathe/numeral/numerals.hpp"
#include "swathe/pattern/pattern.hpp"
#include "swathe/rules/season.hpp"
#include "swathe/sight/sweep.hpp"
#include "swathe/stock/sameness.hpp"
#include "swathe/stock/stock.hpp"

namespace swathe {

/// Everything one job comes to: what the sheets, the report and the views are made from.
/// Vectors named for bumpers run in the job's order.
struct Made {
  Job job;
  std::optional<Season> season;  ///< nothing for "none"
  Frame frame;
  Section section;
  std::vector<Wrap> wraps;
  std::vector<Pattern> patterns;
  std::vector<std::vector<ClothJoin>> joins;  ///< the seams of each pattern that is cut in pieces
  /// Of each pattern's match marks, as they are printed: on a cover that is cut from another's
  /// print, the other's.
  std::vector<std::vector<std::string>> mark_names;
  std::vector<double> bare_gaps, covered_gaps;  ///< from each bumper to the next, counter-clockwise
  std::vector<std::vector<ClearStretch>> clear;  ///< of each bumper, on the cover in place
  std::vector<Piece> boards, padding;            ///< of one set
  std::optional<Numerals> numerals;  ///< where the job has a number; placed on the covers in place
  std::optional<Sight> sight;        ///< where the job has a number
  std::vector<std::optional<Sameness>> same;  ///< the earlier bumper each one repeats, if any
  Stock stock;
  std::vector<Finding> findings;  ///< worst first
  std::vector<Notice> notices;    ///< keys that the job gives in vain, by place

  /// From the covers in place to their patterns.
  ClothMap cloth_map() const { return ClothMap(job.cloth); }
  /// The numbers as they go on the patterns; none where the job has no number.
  std::vector<PlacedNumeral> numerals_on_patterns() const;
};

}  // namespace swathe
