#pragma once

#include "swathe/base.hpp"

// Values of practice that no season's rules give, each in this one place. Where no other source is
// named: common practice, no source.
namespace swathe::practice {

// Staples and the cloth that they hold.
inline constexpr Length kStapleCrown = mm(10);  ///< across
inline constexpr Length kHoldBeyondStaple =
    inches(0.25);                                   ///< cloth past a staple, so that it holds
inline constexpr Length kStaplerReach = inches(1);  ///< its nose reaches no nearer an inside corner
inline constexpr Length kFromFreeEnd = inches(0.5);  ///< of a flap, to the nearest staple
inline constexpr Length kLeastStrip = inches(0.5);  ///< cloth between a window and the cloth's edge
inline constexpr Length kPunch = mm(6);             ///< hole for a bracket's screw, across
inline constexpr Length kClosedStrip = mm(2.5);     ///< hook-and-loop pressed together, how thick

// Numerals.
inline constexpr Length kReadsAsTwo = inches(4);  ///< between digits; season 2026 counts so too
inline constexpr Length kSpareHeight = inches(0.125);  ///< over the least: no cut is exact
inline constexpr Length kPlainHeight = inches(4);      ///< where no season asks for one
inline constexpr int kPlaces = 4;                      ///< one for each quarter
/// Between digits, of their height; closer, they run together from afar. Number plates made to be
/// read at 20 m are 79 mm high with 11 mm between their characters. Source: The Road Vehicles
/// (Display of Registration Marks) Regulations 2001, United Kingdom, as told in a letter of its
/// licensing agency.
inline constexpr double kLeastSpace = 11.0 / 79;

// Padding that runs on past its board.
inline constexpr Length kLeastBare =
    inches(0.375);  ///< less is no strip of cloth to fold: it ends with the board
inline constexpr double kMostBare = 1.25;  ///< of its own depth; longer, it hangs

// Foam is sold by nominal sizes that name no tolerance.
inline constexpr Length kNearNominal = inches(0.125), kOffNominal = inches(0.25);

}  // namespace swathe::practice
