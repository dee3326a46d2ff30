#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "swathe/draw/drawing.hpp"
#include "swathe/make/made.hpp"
#include "swathe/type/font.hpp"

namespace swathe {

/// A sheet of a job that is not drawn yet.
struct ListedSheet : SheetName {
  std::optional<std::size_t> bumper;  ///< whose cover it is of, by its number
};

/// Every sheet of a job that is cut, marked or read at the bench, in the order of work: per bumper
/// its pattern at full size, the same in tiles, its half on the fold, the tape-measure layout and
/// its templates; then the numerals, what an observer sees, then the build book. Sheets that would
/// have no page are left out, and tiles, half and templates of a cover that is cut from another's
/// print.
///
/// Nothing is drawn for it, but templates for paper too small for tiles, to see whether one fits.
/// Holds (list_sheets_test.cpp): (1) it has exactly the sheets that have pages.
std::vector<ListedSheet> list_sheets(const Made& made, const Font& labels);

/// One of them with its pages, a roll's cut to length, what is printed made up for the printer's
/// error.
///
/// Requires: `sheet` is of list_sheets(made, labels).
/// Holds (list_sheets_test.cpp): (1) it is the same whether others are drawn or not.
Sheet make_sheet(const Made& made, const ListedSheet& sheet, const Font& labels);

/// The whole list with its pages.
std::vector<Sheet> all_sheets(const Made& made, const Font& labels);

/// What is told of a sheet once its pages are put away.
struct ToldSheet : SheetName {
  std::size_t pages = 0;
  /// A page is past what a PDF's reader need take: it comes as SVG and DXF, and in tiles.
  bool too_large_for_pdf = false;
};
ToldSheet told(const Sheet& sheet);
std::vector<ToldSheet> told(const std::vector<Sheet>& sheets);

/// The whole list told. Its pages are drawn only where they could not be counted or measured
/// otherwise, and put away before the next sheet's.
///
/// Holds (list_sheets_test.cpp): (1) it says what told(all_sheets()) does.
std::vector<ToldSheet> told_sheets(const Made& made, const Font& labels);

}  // namespace swathe
