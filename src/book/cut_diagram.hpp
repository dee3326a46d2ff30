#pragma once

#include <string>
#include <vector>

#include "book/piece_subjects.hpp"
#include "draw/flow.hpp"
#include "swathe/make.hpp"

namespace swathe {

/// A piece of a strip, or what is left over of it; mm along the strip.
struct CutPiece {
  std::string name;  ///< "A front"; empty for waste
  double from = 0, to = 0;
  Subjects shows{};

  bool is_waste() const { return name.empty(); }
  double length() const { return to - from; }
};

/// A strip of a sheet, or a stick; a cut follows each piece but the last.
struct CutStrip {
  std::vector<CutPiece> pieces;
  bool trimmed = false;  ///< one follows the last, too: less than a kerf is left behind it
};

/// A sheet of board stock ripped into strips along one of its sides, the first at its upper edge.
struct CutSheet {
  double length = 0, width = 0;  ///< along the strips, and across
  double strip = 0;              ///< width of each
  double kerf = 0;
  double waste = 0;  ///< width left over below the last strip; none where that is no more than dust
  bool last_rip = false;  ///< the last strip is ripped off what is left, too
  std::vector<CutStrip> strips;
  int alike = 1;

  int rips() const { return static_cast<int>(strips.size()) - (last_rip ? 0 : 1); }
  /// Where a strip's upper edge lies, down from the sheet's.
  double top_of(std::size_t number) const { return static_cast<double>(number) * (strip + kerf); }
};

/// The sheets of boards, those cut alike together.
///
/// Holds (book_cuts_test.cpp): (1) pieces, kerfs and waste of a strip are together the sheet's
///   length, strips, kerfs and waste its width; (2) every board of every set is cut once.
std::vector<CutSheet> sheets_to_cut(const Made& made);

/// A stick of padding with its cuts.
struct CutStick {
  double length = 0;
  CutStrip strip;
  int alike = 1;
};
std::vector<CutStick> sticks_to_cut(const StockPlan& plan, double kerf,
                                    const PieceSubjects& subjects = {});

/// A sheet to scale, its strips across the page: cuts numbered in their order, rips first, then
/// each strip's from the left; pieces with name and length, waste with its size; names too long for
/// their pieces stand below, by the numbers of the cuts that free them. A piece and its name show
/// that piece of the model; cuts, their numbers and waste show the boards as a whole.
///
/// Holds (cut_diagram_test.cpp): every piece cut for every set shows its own subject.
Picture draw_sheet_cuts(const CutSheet& sheet, const Font& labels, Units units, double width_mm);

/// A stick of padding, its length to scale; each piece shows its own subject, as on a sheet.
Picture draw_stick_cuts(const CutStick& stick, const Font& labels, Units units, double width_mm);

}  // namespace swathe
