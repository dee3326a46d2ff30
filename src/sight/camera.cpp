#include "swathe/sight/camera.hpp"

#include <cmath>

namespace swathe {
namespace {

SpacePoint from_to(const SpacePoint& a, const SpacePoint& b) {
  return {b.x - a.x, b.y - a.y, b.z - a.z};
}
double dot(const SpacePoint& a, const SpacePoint& b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
SpacePoint cross(const SpacePoint& a, const SpacePoint& b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
SpacePoint unit(const SpacePoint& a) {
  const double k = 1.0 / std::sqrt(dot(a, a));
  return {k * a.x, k * a.y, k * a.z};
}

}  // namespace

Camera::Camera(SpacePoint eye, SpacePoint at, double focal_mm)
    : eye_(eye),
      forward_(unit(from_to(eye, at))),
      right_(unit(cross(forward_, {0, 0, 1}))),
      up_(cross(right_, forward_)),
      focal_(focal_mm) {}

double Camera::depth_of(SpacePoint p) const { return dot(from_to(eye_, p), forward_); }

FlatPoint Camera::at(SpacePoint p) const {
  const SpacePoint way = from_to(eye_, p);
  const double scale = focal_ / dot(way, forward_);
  return {scale * dot(way, right_), scale * dot(way, up_)};
}

}  // namespace swathe
