#pragma once

#include <cstddef>

#include "swathe/draw.hpp"
#include "swathe/make.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// The measuring sheet of a bumper's cover, for a team without a large printer: a small drawing
/// with every figure told from one datum, and the same figures in tables. The job's
/// face up, in the job's units.
///
/// Requires: a bumper of the job, by its number.
Sheet measuring_sheet(const Made& made, std::size_t bumper, const PaperKeys& paper,
                      const Font& labels);
SheetName measuring_name(const Made& made, std::size_t bumper, const PaperKeys& paper);

}  // namespace swathe
