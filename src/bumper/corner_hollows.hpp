#pragma once

#include "swathe/bumper.hpp"

namespace swathe {

/// What fills the hollows of butted noodles at one corner, whose boards are `near` thick; in no
/// bumper yet.
CornerVoid hollow_at(const Corner& corner, double near, const PaddingKeys& padding);

}  // namespace swathe
