#pragma once

#include <compare>
#include <numbers>

namespace swathe {

/// A distance. Kept in millimeters; numbers enter and leave only by the name of their unit.
class Length {
 public:
  constexpr Length() = default;  ///< zero
  static constexpr Length from_mm(double mm) { return Length(mm); }
  static constexpr Length from_inches(double in) { return Length(in * kMmPerInch); }
  constexpr double mm() const { return mm_; }
  constexpr double inches() const { return mm_ / kMmPerInch; }

  friend constexpr auto operator<=>(Length, Length) = default;
  friend constexpr Length operator+(Length a, Length b) { return Length(a.mm_ + b.mm_); }
  friend constexpr Length operator-(Length a, Length b) { return Length(a.mm_ - b.mm_); }
  friend constexpr Length operator-(Length a) { return Length(-a.mm_); }
  friend constexpr Length operator*(double k, Length a) { return Length(k * a.mm_); }
  friend constexpr Length operator*(Length a, double k) { return Length(k * a.mm_); }
  friend constexpr Length operator/(Length a, double k) { return Length(a.mm_ / k); }
  friend constexpr double operator/(Length a, Length b) { return a.mm_ / b.mm_; }  ///< a ratio
  constexpr Length& operator+=(Length b) { return *this = *this + b; }
  constexpr Length& operator-=(Length b) { return *this = *this - b; }

 private:
  static constexpr double kMmPerInch = 25.4;  // exact by definition of the inch
  explicit constexpr Length(double mm) : mm_(mm) {}
  double mm_ = 0.0;
};

constexpr Length mm(double value) { return Length::from_mm(value); }
constexpr Length inches(double value) { return Length::from_inches(value); }

/// An angle. Kept in radians.
class Angle {
 public:
  constexpr Angle() = default;  ///< zero
  static constexpr Angle from_radians(double rad) { return Angle(rad); }
  static constexpr Angle from_degrees(double deg) { return Angle(deg * std::numbers::pi / 180.0); }
  static constexpr Angle from_arcmin(double arcmin) { return from_degrees(arcmin / 60.0); }
  constexpr double radians() const { return radians_; }
  constexpr double degrees() const { return radians_ * 180.0 / std::numbers::pi; }
  constexpr double arcmin() const { return degrees() * 60.0; }

  friend constexpr auto operator<=>(Angle, Angle) = default;
  friend constexpr Angle operator+(Angle a, Angle b) { return Angle(a.radians_ + b.radians_); }
  friend constexpr Angle operator-(Angle a, Angle b) { return Angle(a.radians_ - b.radians_); }
  friend constexpr Angle operator-(Angle a) { return Angle(-a.radians_); }
  friend constexpr Angle operator*(double k, Angle a) { return Angle(k * a.radians_); }
  friend constexpr Angle operator/(Angle a, double k) { return Angle(a.radians_ / k); }

 private:
  explicit constexpr Angle(double radians) : radians_(radians) {}
  double radians_ = 0.0;
};

constexpr Angle degrees(double value) { return Angle::from_degrees(value); }

}  // namespace swathe
