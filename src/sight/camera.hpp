#pragma once

#include "swathe/bumper.hpp"
#include "swathe/plane.hpp"

namespace swathe {

/// A pinhole that looks from one place at another, held upright.
///
/// Holds (camera_test.cpp): (1) what is looked at lies at the middle, what is above it above;
///   (2) a bar square to the line of sight, d away along it, has the size f / d of its own;
///   (3) straight stays straight.
class Camera {
 public:
  /// Requires: the two places apart, and not one straight above the other.
  Camera(const SpacePoint& eye, const SpacePoint& at, double focal_mm = 1.0);

  /// x to the right and y up from the middle. Requires: depth_of(p) > 0.
  FlatPoint at(const SpacePoint& p) const;
  /// How far before the pinhole, along the line of sight.
  double depth_of(const SpacePoint& p) const;
  const SpacePoint& eye() const { return eye_; }

 private:
  SpacePoint eye_, forward_, right_, up_;
  double focal_;
};

}  // namespace swathe
