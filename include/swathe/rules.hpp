#pragma once

// A season's rules as values.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "swathe/base.hpp"

namespace swathe {

// The published rules of one season, as values. No judgment here: the check room has that.

namespace rules {

/// A weight, as the rules name it.
struct Mass {
  double grams = 0;
  constexpr double pounds() const { return grams / kGramsPerPound; }
  static constexpr Mass from_pounds(double lb) { return {lb * kGramsPerPound}; }
  static constexpr double kGramsPerPound = 453.59237;  // exact by definition of the pound
};

/// Heights above the floor.
struct Zone {
  Length from, to;
};

}  // namespace rules

/// From where a number must be readable.
enum class Viewpoints { Most, Every };

/// One value of a rule, where it stands, and how sure it is.
template <class T>
struct RuleValue {
  T value{};
  std::string rule;  ///< its number in the manual, "R412"
  Attested attested = Attested::Unverified;
  bool guideline = false;  ///< "about", "may", "should": a check on it warns at worst
};

/// A season says nothing about a thing: there is no check on it.
template <class T>
using Ruled = std::optional<RuleValue<T>>;

/// The rules of one season. Members are named as the keys of a rule file: `cover_gap` is `gap` in
/// the table [cover].
struct Season {
  // What the language would imply, compiled once: it is long, and many sources hold one.
  Season();
  Season(const Season&);
  Season(Season&&) noexcept;
  Season& operator=(const Season&);
  Season& operator=(Season&&) noexcept;
  ~Season();

  std::string name;     ///< "2026"
  std::string section;  ///< of the manual; may be empty

  Ruled<Length> general_grace;  ///< what inspection allows on nominal bumper dimensions

  Ruled<bool> cover_whole;          ///< the whole perimeter is covered
  Ruled<Length> cover_gap;          ///< between neighbors, less than
  Ruled<Length> cover_larger_gap;   ///< one larger gap, with this much covered beside each corner
  Ruled<Length> cover_reach;        ///< bumper each side of each outside corner, at least
  Ruled<Length> cover_from_corner;  ///< where that bumper may begin, at most
  Ruled<Length> cover_short_side;   ///< a side shorter than this is covered whole

  Ruled<Length> corner_fill;  ///< uncompressed padding out from a corner, at least
  Ruled<bool> corner_filled;  ///< corner joints are filled with padding, no measure named

  Ruled<Length> padding_depth;        ///< at least
  Ruled<Length> padding_height;       ///< at least
  Ruled<Length> padding_noodle_pair;  ///< a stacked pair of round noodles of this nominal diameter
  Ruled<Length> padding_past_board;   ///< past a board's end, at most
  Ruled<bool> padding_hollow;         ///< hollow noodles are allowed (or not)
  Ruled<bool> padding_even;           ///< no wedges: not tapered, stepped, or one half-round

  Ruled<Length> backing_height;          ///< at least
  Ruled<Length> backing_nominal_height;  ///< within `backing_height_within` of this
  Ruled<Length> backing_height_within;
  Ruled<Length> backing_nominal_thickness;

  Ruled<bool> cloth_faces;                     ///< over the outward, upward and downward faces
  Ruled<bool> cloth_over_wood;                 ///< over the boards' outside faces too
  Ruled<std::vector<std::string>> cloth_sets;  ///< colors of the sets: "red", "blue"
  Ruled<bool> cloth_one_color;                 ///< each cover is of one color throughout
  Ruled<bool> cloth_plain;                     ///< no contrasting marks but the number

  Ruled<bool> fastening_rigid;  ///< not tape, hook-and-loop or cable ties

  Ruled<Length> extension_most;  ///< from the true frame outwards

  Ruled<Length> hard_parts_past_frame;     ///< at most
  Ruled<Length> hard_parts_under_padding;  ///< padding beyond any hard part, at least

  Ruled<rules::Zone> zone_filled;  ///< padding on its backing fills these heights
  Ruled<rules::Zone> zone_inside;  ///< the bumper stays within these heights

  Ruled<rules::Mass> weight_machine;  ///< machine with bumpers, at most
  Ruled<rules::Mass> weight_set;      ///< one set of bumpers, at most

  Ruled<Length> numerals_height;         ///< at least
  Ruled<Length> numerals_stroke;         ///< at least, for the majority of the stroke
  Ruled<bool> numerals_white;            ///< white
  Ruled<Length> numerals_white_outline;  ///< a white outline of at least this will do instead
  Ruled<Angle> numerals_corner;          ///< not round a corner sharper than this, inside angle
  Ruled<int> numerals_places;            ///< at least
  Ruled<Angle> numerals_places_apart;    ///< about
  Ruled<Length> numerals_spacing;        ///< between digits of one number, ink to ink, at most
  Ruled<bool> numerals_split;            ///< over the gap between two bumpers: allowed (or not)
  Ruled<Length> numerals_read_from;      ///< distance
  Ruled<Viewpoints> numerals_viewpoints;

  Ruled<Length> support_end_backed;  ///< of each end of each board by the frame, at least
  Ruled<Length> support_end_gap;     ///< behind that stretch, at most
  Ruled<Length> support_gap_depth;   ///< elsewhere at most this deep ...
  Ruled<Length> support_gap_width;   ///< ... or at most this wide
};

/// Reads a rule file: one of ours, or a user's of the same form.
///
/// Refuses: Malformed alone where the text is not TOML; else every UnknownKey (with the nearest
/// known one), WrongType, OutOfRange and Missing, each at its place.
Outcome<Season> read_season(std::string_view text, const std::string& file);

/// The seasons built in, newest first.
std::vector<std::string> season_names();

/// The newest of them, which is a job's where it names none.
const std::string& newest_season();

/// Refuses: UnknownName, naming those that are known.
Outcome<Season> bundled_season(std::string_view name);

/// The text of a season built in, comments and all; empty where there is none of that name.
std::string_view bundled_season_text(std::string_view name);

/// One value of a season in words, for tables.
struct SeasonEntry {
  std::string key;    ///< "numerals.height"
  std::string what;   ///< "numerals: height, at least"
  std::string value;  ///< "3 3/4 in"
  std::string rule;   ///< "R412"
  Attested attested = Attested::Unverified;
  bool guideline = false;
};

/// What a season says, in the order of its rule file.
std::vector<SeasonEntry> entries(const Season& season);

}  // namespace swathe
