#pragma once

#include "draw/flow.hpp"
#include "swathe/make.hpp"

namespace swathe {

/// The roll with the covers on it, as large as fits, the job's face up: the length to buy and the
/// roll's width measured. A cover and its name show its bumper, the rest shows the cloth.
///
/// Holds (cloth_lay_test.cpp): (1) no two covers drawn overlap, all lie on the roll; (2) every
///   cover's outline and name show its bumper.
Picture draw_lay(const Made& made, const ClothLay& lay, const Font& labels, double width_mm,
                 double most_height_mm);

}  // namespace swathe
