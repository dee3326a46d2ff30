#pragma once

#include <optional>
#include <vector>

#include "make/faults.hpp"
#include "swathe/bumper.hpp"
#include "swathe/job.hpp"

namespace swathe {

/// The bumpers as they stand round the frame, those that are sound.
struct Standing {
  std::optional<Frame> frame;
  std::optional<Section> section;
  std::vector<double> bare_gaps;  ///< from each bumper to the next
  std::vector<Wrap> wraps;
  std::vector<bumper::Piece> boards, padding;  ///< of one set
};

/// Nothing is made from a table with a fault: its other keys may be defaults.
Staged<Standing> stand_bumpers(const JobReading& reading);

}  // namespace swathe
