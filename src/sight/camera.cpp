#include "sight/camera.hpp"

namespace swathe {
Camera::Camera(const SpacePoint& eye, const SpacePoint& at, double focal_mm)
    : eye_(eye),
      forward_(unit(at - eye)),
      right_(unit(cross(forward_, {0, 0, 1}))),
      up_(cross(right_, forward_)),
      focal_(focal_mm) {}

double Camera::depth_of(const SpacePoint& p) const { return dot(p - eye_, forward_); }

FlatPoint Camera::at(const SpacePoint& p) const {
  const SpacePoint way = p - eye_;
  const double scale = focal_ / dot(way, forward_);
  return {scale * dot(way, right_), scale * dot(way, up_)};
}

}  // namespace swathe
