#pragma once

// The second of two ways to each function: in 256 bits, for what the first leaves open. Right for
// every argument as far as anybody knows: of those known no value lies nearer than some 2^-120 of
// itself to the middle between two doubles, where it is not the middle itself.
namespace swathe::maths::slow {

/// Of any finite angle that is not zero.
double sine(double radians);
double cosine(double radians);
double tangent(double radians);

/// Of the way from the origin to (x, y), neither zero nor 2^150 times the other; sizes from 2^-300
/// to 2^300.
double angle(double y, double x);

/// y over x, and less than that by next to nothing. Requires: both above zero.
double just_below_quotient(double y, double x);

/// Requires: below 1 in size and from 2^-100 on.
double arc_cosine(double cosine);

/// Requires: finite, not both zero.
double hypotenuse(double x, double y);

/// Requires: base finite and above zero, over from 1 to 16, under from 1 to 6.
double power(double base, int over, int under);

}  // namespace swathe::maths::slow
