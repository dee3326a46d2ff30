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

/// Legs as sold, the longest first: of those that stay inside the board, the longest is bought.
inline constexpr Length kStapleLegs[] = {mm(10), mm(8), mm(6), mm(4)};
inline constexpr Length kLegStopsBefore = mm(2);  ///< a leg, before the board's other face

// Boards joined at corners: glue, and screws whose heads are sunk.
inline constexpr Length kScrewFromEdge = inches(1);  ///< of the board
inline constexpr Length kScrewSpacing = inches(3);   ///< at most
inline constexpr Length kScrewHold = inches(1.25);   ///< into the edge of the second board
/// A screw for boards of at least a thickness: its gauge, and the drill for its hole.
struct ScrewSize {
  Length least_board;
  int number;
  Length across;
  Length pilot_inch, pilot_metric;
};
inline constexpr ScrewSize kScrewSizes[] = {
    {inches(5.0 / 8), 8, mm(4), inches(1.0 / 8), mm(3)},
    {inches(3.0 / 8), 6, mm(3.5), inches(3.0 / 32), mm(2.5)},
    {mm(0), 4, mm(3), inches(5.0 / 64), mm(2)}};

// Padding that is longer than it is sold.
inline constexpr Length kJointFromCorner = inches(4);  ///< a hand's breadth; from an end as well

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
