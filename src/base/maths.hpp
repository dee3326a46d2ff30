#pragma once

/// Functions whose last digit differs between C libraries; here it is the same on every machine.
///
/// Holds (maths_test.cpp checks each against MPFR):
///   (1) the result is the double nearest to the true value, of two the one with the even last bit
///   (2) zeros keep their sign, infinities and what is no number go as in C, Annex F
///   (3) compilers and how they optimize make no difference
/// About (1): a fast way answers most arguments, 256 bits decide the others. No argument is known
/// that needs more than some 130 bits, but for no function here is that proved.
///
/// Source: our own, of IEEE operations and integers alone; each way names its own.
namespace swathe::maths {

/// Of any angle in radians, however large; no number of an infinite one.
double sin(double radians);
double cos(double radians);
double tan(double radians);

/// In radians, from 0 to pi; no number where the cosine is past 1 or -1.
double acos(double cosine);
/// In radians, from -pi/2 to pi/2.
double atan(double tangent);
/// The angle of the way from the origin to (x, y) in radians, from -pi to pi.
double atan2(double y, double x);

/// The square root of x x + y y; too large only where the result is.
double hypot(double x, double y);

/// base^(over / under), as power(c, 12, 5) for c to the 2.4.
/// Requires: base finite and not negative, over from 1 to 16, under from 1 to 6.
double power(double base, int over, int under);

}  // namespace swathe::maths
