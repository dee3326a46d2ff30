#pragma once

#include <string>
#include <vector>

#include "swathe/bumper/pieces.hpp"
#include "swathe/job/job.hpp"
#include "swathe/pattern/pattern.hpp"

// What to buy and how to cut it. Millimetres and grams.
namespace swathe {

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

struct StockPlan {
  std::vector<StockStick> sticks;
  double used_fraction = 0;        ///< of the sticks bought
  std::vector<StockCut> too_long;  ///< pieces no stick of this stock can give
};

/// Fewest sticks for all pieces, proved so for a job's couple of dozen; a kerf is lost between each
/// two pieces: n of them fit where their sum and n - 1 kerfs are no more than the stick.
StockPlan cut_sticks(const std::vector<StockCut>& pieces, double stick_length, double kerf);

struct ClothPlacement {
  std::string bumper;
  std::string piece;    ///< the bumper again, or "A1", "A2" where its cover is sewn from parts
  double x = 0, y = 0;  ///< lower left corner of the piece's box on the roll; x along the roll
  bool turned = false;  ///< half a turn
};

/// One colour's covers on the roll.
struct ClothLay {
  std::string colour;
  double roll_width = 0;
  double length = 0;         ///< of roll that the covers take
  double length_to_buy = 0;  ///< rounded up to the shop's step
  double used_fraction = 0;  ///< of the cloth bought
  std::vector<ClothPlacement> placements;
  std::vector<std::string> does_not_fit;  ///< pieces larger than the cloth
};

/// Covers along the roll, side by side where they fit, each part of a joined cover by itself; none
/// across two lengths of cloth where the job says how long these are. A piece takes its box, which
/// is the same turned half round: none is turned.
ClothLay lay_cloth(const std::vector<Pattern>& patterns, const ClothKeys& cloth,
                   const std::string& colour);

struct BumperWeight {
  std::string bumper;
  double boards_g = 0, padding_g = 0, cloth_g = 0;
};

struct Stock {
  int strips_per_sheet = 0;  ///< board strips ripped from one sheet of stock
  int sheets = 0;            ///< sheets of board stock to buy
  StockPlan boards;          ///< of every padded set, from strips as long as the sheet
  StockPlan padding;
  std::vector<ClothLay> cloth;  ///< one a colour
  std::vector<BumperWeight> weights;
  double set_g = 0;  ///< one set: boards, padding and cloth; fasteners are not counted
};

/// Sets of boards and padding: one a colour, or a single one whose covers are changed.
int padded_sets(const Job& job);

/// Boards and padding for every padded set, cloth for every colour.
Stock plan_stock(const Job& job, const std::vector<Piece>& boards,
                 const std::vector<Piece>& padding, const std::vector<Pattern>& patterns);

}  // namespace swathe
