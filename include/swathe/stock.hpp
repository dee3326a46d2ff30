#pragma once

// What is cut from what is bought, weights, and which covers are the same.

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "swathe/bumper.hpp"
#include "swathe/job.hpp"
#include "swathe/numeral.hpp"
#include "swathe/pattern.hpp"

namespace swathe {

/// How one pattern is another's: print once and cut more.
struct Sameness {
  enum class How {
    Same,      ///< lay it as it is
    Turned,    ///< half a turn: turn it, do not flip it
    Mirrored,  ///< flip it left for right
  };
  int other = 0;  ///< an earlier bumper of the job
  How how = How::Same;
  std::vector<std::string>
      but_for;  ///< what differs within the same outline: "windows", "numerals"
  /// Each side of the other cover, in its order, and the side of this one that lies on it.
  std::vector<std::pair<std::string, std::string>> sides;
};

/// For each pattern (and its seams; none at all where every cover is one piece) the first earlier
/// one with a congruent outline; nothing where there is none.
///
/// Of several ways that fit, one without differences is taken first, then Same, Turned, Mirrored.
/// Outlines are the same within 0.05 mm, less than a blade's width.
std::vector<std::optional<Sameness>> same_patterns(const std::vector<Pattern>& patterns,
                                                   const std::vector<std::vector<ClothJoin>>& joins,
                                                   const std::vector<PlacedNumeral>& numerals);

/// The names of each cover's match marks, in their order: its own, or those they have on the print
/// it is cut from.
///
/// The pencil marks of its boards then bear what is chalked on its cloth, whichever print that came
/// from, however it was laid.
std::vector<std::vector<std::string>> shared_mark_names(
    const std::vector<Pattern>& patterns, const std::vector<std::optional<Sameness>>& same);

// What to buy and how to cut it. Millimeters and grams.

/// One cut of a stick of stock.
struct StockCut {
  std::string label;  ///< "A front"
  double length = 0;
};

/// One piece of stock and its cuts, in order.
struct StockStick {
  double length = 0;
  std::vector<StockCut> cuts;
};

/// A piece that is longer than its stock, glued together from parts.
struct Splice {
  std::string label;
  double length = 0;
  std::vector<double> joints;  ///< mm from its start
};

struct StockPlan {
  std::vector<StockStick> sticks;
  double used_fraction = 0;        ///< of the sticks bought
  std::vector<StockCut> too_long;  ///< pieces no stick of this stock can give
  std::vector<Splice> splices;     ///< pieces that more than one stick gives, each kind once
};

/// Fewest sticks for all pieces, proved so for a job's couple of dozen; a kerf is lost between each
/// two pieces: n of them fit where their sum and n - 1 kerfs are no more than the stick.
StockPlan cut_sticks(const std::vector<StockCut>& pieces, double stick_length, double kerf);

struct ClothPlacement {
  std::string bumper;
  std::string piece;       ///< the bumper again, or "A1", "A2" where its cover is sewn from parts
  double x = 0, y = 0;     ///< lower left corner of the piece's box on the roll; x along the roll
  bool across = false;     ///< a quarter turn counter-clockwise
  bool turned = false;     ///< half a turn, on top of it
  plane::Polygon outline;  ///< the piece's own, where it lies
};

/// One color's covers on the roll.
struct ClothLay {
  std::string color;
  double roll_width = 0;
  double length = 0;         ///< of roll that the covers take
  double shop_cut = 0;       ///< bought besides: the shop's cut may be crooked
  double length_to_buy = 0;  ///< of both, rounded up to the shop's step
  double used_fraction = 0;  ///< of the cloth bought
  std::vector<ClothPlacement> placements;
  std::vector<std::string> does_not_fit;  ///< pieces larger than the cloth
};

/// Covers on the roll, each part of a joined cover by itself: along it, or across where the job
/// allows; turned half round unless the cloth is one-way; ends reaching into one another's room;
/// none across two lengths of cloth where the job says how long these are. No room is kept between
/// pieces: they are cut one after another by hand. `joins` are each pattern's, or none at all.
ClothLay lay_cloth(const std::vector<Pattern>& patterns,
                   const std::vector<std::vector<ClothJoin>>& joins, const ClothKeys& cloth,
                   const std::string& color);

struct BumperWeight {
  std::string bumper;
  double boards_g = 0, padding_g = 0, cloth_g = 0;
  double fasteners_g = 0;    ///< screws, staples or hook-and-loop, brackets whose mass is known
  int unknown_brackets = 0;  ///< whose mass the job does not say

  double together_g() const { return boards_g + padding_g + cloth_g + fasteners_g; }
};

/// A sheet of board stock and the strips ripped from it, one beside the other.
struct RippedSheet {
  double strip_length = 0;  ///< one of the sheet's sides
  int strips = 0;           ///< so many of the plan's sticks, those of earlier sheets before them
};

/// How boards come out of sheets.
struct SheetPlan {
  int strips_per_sheet = 0;  ///< that one gives along its longer side
  std::vector<RippedSheet> sheets;
  StockPlan boards;          ///< from the strips
  double used_fraction = 0;  ///< of the sheets bought
};

/// Fewest sheets for all boards, each sheet ripped into strips along one of its sides or the other,
/// the strips then cut across; a kerf is lost at every cut between two. Of plans that take as many,
/// one whose strips run along the longer side. Proved fewest for a job's couple of dozen boards.
SheetPlan rip_sheets(const std::vector<StockCut>& boards, const BoardKeys& keys);

/// Wood screws that join boards at corners, their heads sunk.
struct Screws {
  int a_joint = 0;  ///< in each corner
  int count = 0;    ///< for all padded sets
  int number = 0;   ///< their gauge, as they are sold by the inch
  Length across;    ///< the same, as they are sold by the millimeter
  Length length;    ///< as sold where the job's units are used
  Length pilot;     ///< the drill for the hole that they are driven into; as sold there, too
};
/// Sized by the boards' thickness, counted by their height. Common practice, no source.
Screws screws_for(const Job& job, int joints);
/// Of one screw, grams.
double screw_g(const Screws& screws);

struct Stock {
  int strips_per_sheet = 0;  ///< that a sheet of board stock gives along its longer side
  int sheets = 0;            ///< of board stock to buy
  std::vector<RippedSheet> ripped;
  double sheets_used = 0;  ///< fraction of the board stock bought
  StockPlan boards;        ///< of every padded set, from strips
  Screws screws;           ///< none where no bumper turns a corner
  StockPlan padding;
  std::vector<ClothLay> cloth;  ///< one a color
  std::vector<BumperWeight> weights;
  BumperWeight set;  ///< all bumpers together
};

/// Sets of boards and padding: one a color, or a single one whose covers are changed.
int padded_sets(const Job& job);

/// What no stock of the job can give: DoesNotFit, where a cover is wider than the roll (at
/// cloth.roll_width) or padding has no place for a joint (at padding.stock); with what would do.
Refusals stock_faults(const Job& job, const Stock& stock, const std::vector<bumper::Piece>& padding,
                      const std::vector<Pattern>& patterns,
                      const std::vector<std::vector<ClothJoin>>& joins);

/// Boards and padding for every padded set, cloth for every color.
Stock plan_stock(const Job& job, const std::vector<bumper::Piece>& boards,
                 const std::vector<bumper::Piece>& padding, const std::vector<Pattern>& patterns,
                 const std::vector<std::vector<ClothJoin>>& joins);

}  // namespace swathe
