#pragma once

#include <optional>
#include <string>
#include <vector>

#include "numeral/size.hpp"
#include "sight/demand.hpp"
#include "swathe/base.hpp"
#include "swathe/bumper.hpp"
#include "swathe/job.hpp"
#include "swathe/numeral.hpp"

namespace swathe {

/// Free cloth left between a number and the end of its clear stretch. Common practice, no source.
inline constexpr Length kNumeralMargin = Length::from_inches(1.0 / 4);

/// A clear stretch on which a number might lie, and which way it looks.
struct NumeralRoom {
  int bumper = 0;  ///< number in the job
  std::string side;
  double bearing_deg = 0;  ///< 0 straight ahead of the machine, counter-clockwise
  double from_s = 0, to_s = 0;

  double length() const { return to_s - from_s; }
};

/// How cloth round a section looks square on, between two places on the girth.
struct SeenBand {
  double height = 0;    ///< from its lowest to its highest point
  double tilt_deg = 0;  ///< greatest lean from upright
};
/// Requires: from_u <= to_u, both between the cloth edges.
/// Source: cloth rises by cos(tilt) for each step along the girth, so the height between two places
///   is the difference of their z.
SeenBand seen_band(const Section& section, double from_u, double to_u);

/// Clear stretches of every bumper for a band of this half height, in order of the bumpers.
std::vector<NumeralRoom> numeral_rooms(const std::vector<Wrap>& wraps, double half_height);

/// The longest room of each side that is long enough, in order of the sides' first rooms.
std::vector<NumeralRoom> rooms_that_fit(const std::vector<NumeralRoom>& rooms, double needs);

/// What placing a number needs to know.
struct PlaceInput {
  const SetNumber& number;
  const NumeralKeys& keys;
  const std::vector<Wrap>& wraps;  ///< of every bumper, in the job's order
  /// That the season asks for. Where it asks for none the program chooses up to four that fit.
  int least_places = 0;
  /// Whether the program may split the number over the gap between two bumpers where it fits whole
  /// on too few sides, and how far apart the parts may then stand.
  bool may_split = false;
  std::optional<Length> most_space;
  const std::vector<FontCandidate>& candidates;
  /// The least height the number may be set at on request; nothing where there is none below the
  /// asked one.
  std::optional<Length> least_height;
  Length least_stroke;     ///< that advice has to keep; zero where the season asks for none
  const SightKeys& sight;  ///< who looks at the places that the program chooses,
  const Demand& demand;    ///< and what the season asks that they can read
  Units units = Units::Inches;
  const Places& places;
};

struct PlacedNumbers {
  std::vector<PlacedNumeral> placed;
  std::vector<NumeralMisfit> misfits;
};

/// Puts the number on each side asked for: whole, in the middle of the side's longest clear
/// stretch, its ink centered on the middle of the front flat; split, where it may and must be, its
/// parts at the gap. Places chosen by hand go before sides by name, those before the program's own
/// choice.
///
/// Refuses: UnknownName (a side or bumper; a bumper that does not reach the side), DoesNotFit (two
///   numbers over each other), each at its key.
/// Holds: (1) every placed number, its white outline with it, keeps kNumeralMargin from its
///   stretch's ends; (2) a misfit's advice, applied, places the number; (3) no clear stretch of a
///   misfit's side is longer than `has`; (4) the program splits no number that fits whole on enough
///   sides, none by more than `most_space`, and never a digit.
Outcome<PlacedNumbers> place_number(const PlaceInput& input);

}  // namespace swathe
