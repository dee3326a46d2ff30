#pragma once

#include <cstddef>
#include <vector>

#include "sight/camera.hpp"
#include "swathe/draw.hpp"
#include "swathe/make.hpp"

namespace swathe {

/// What an area of a view is of.
enum class ViewPart { Floor, Back, Cloth, Digit, Blind };

/// How finely cloth is shaded.
struct ViewDetail {
  int bands = 6;  ///< that a quarter of a round is drawn in, each with its tint
  /// Of a band, how many of those above it it goes on under: one is enough to leave no seam.
  std::size_t under = 1000;
};

/// An area of a view as it lies before the camera: those that come later cover it.
struct ViewArea {
  ViewPart part = ViewPart::Cloth;
  FillMark fill;
};

/// The machine's bumpers as an observer sees them: in perspective, shaded so that the rounds show,
/// each number of the scene in its place on the cloth, and what hides it; in units of the camera,
/// whose focal length is 1. `color`: of the job's cloth colors, by number.
///
/// Requires: a scene of made's wraps and numbers; an eye outside the bumpers.
std::vector<ViewArea> view_areas(const Made& made, const sight::Scene& scene, const SpacePoint& eye,
                                 std::size_t color, const ViewDetail& detail = {});

/// Where such a view looks at.
SpacePoint view_middle(const Made& made);

/// The machine's bumpers as an observer sees them: in perspective, shaded so that the rounds show,
/// each number in its place on the cloth, and what hides it. Fitted into the box and centered.
///
/// Requires: made.sight; an eye outside the bumpers.
void draw_view(Drawing& onto, const plane::Box& box, const Made& made, const SpacePoint& eye);

}  // namespace swathe
