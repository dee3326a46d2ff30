#pragma once

#include "sight/camera.hpp"
#include "swathe/draw.hpp"
#include "swathe/make.hpp"

namespace swathe {

/// The machine's bumpers as an observer sees them: in perspective, shaded so that the rounds show,
/// each number in its place on the cloth, and what hides it. Fitted into the box and centered.
///
/// Requires: made.sight; an eye outside the bumpers.
void draw_view(Drawing& onto, const plane::Box& box, const Made& made, const SpacePoint& eye);

}  // namespace swathe
