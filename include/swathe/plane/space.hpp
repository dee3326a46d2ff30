#pragma once

#include <cmath>

namespace swathe {

/// A point, or a way from one to another, in space; x to the machine's right, y forward, z up from
/// the floor. Millimeters.
struct SpacePoint {
  double x = 0, y = 0, z = 0;

  friend constexpr SpacePoint operator+(const SpacePoint& a, const SpacePoint& b) {
    return {a.x + b.x, a.y + b.y, a.z + b.z};
  }
  friend constexpr SpacePoint operator-(const SpacePoint& a, const SpacePoint& b) {
    return {a.x - b.x, a.y - b.y, a.z - b.z};
  }
  friend constexpr SpacePoint operator*(double k, const SpacePoint& a) {
    return {k * a.x, k * a.y, k * a.z};
  }
};

constexpr double dot(const SpacePoint& a, const SpacePoint& b) {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}
constexpr SpacePoint cross(const SpacePoint& a, const SpacePoint& b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
inline double norm(const SpacePoint& a) { return std::sqrt(dot(a, a)); }
inline double apart(const SpacePoint& a, const SpacePoint& b) { return norm(b - a); }
inline SpacePoint unit(const SpacePoint& a) { return (1.0 / norm(a)) * a; }

}  // namespace swathe
