#pragma once

// What of a job's sheets to print; sheets that are asked for one by one: proof models and fonts
// compared.

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/draw.hpp"
#include "swathe/job.hpp"
#include "swathe/make.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// A file to print.
struct PrintFile {
  std::string name;                   ///< "A-tiles.pdf"
  std::optional<std::size_t> bumper;  ///< whose cover it is of, by its number
  std::size_t pages = 0;
  std::string paper;     ///< as SheetName has it
  Length width, height;  ///< of its first page, as printed
};

/// One way to bring all covers from paper on to the cloth.
struct PrintWay {
  enum class Kind {
    Measures,   ///< a tape measure, and templates of what it draws badly
    Fold,       ///< half of a cover, in tiles, laid on a fold of the cloth
    Tiles,      ///< the whole cover on sheets to glue together
    PrintShop,  ///< the whole cover on one page of its own
  } kind = Kind::Measures;
  std::vector<PrintFile> files;  ///< in the job's order of bumpers
  /// Covers that have a print of their own, but none this way.
  std::vector<std::size_t> left_out;

  std::size_t pages() const;
};

/// A cover that is cut from the print of another.
struct SharedPrint {
  std::size_t bumper = 0, print = 0;
};

/// What a job is printed for.
struct PrintWays {
  std::vector<PrintFile> first;  ///< before all others: the test page
  std::vector<PrintWay> ways;  ///< one of them is chosen, a cover; those without files are not here
  std::vector<SharedPrint> shared;    ///< covers that no way has files of
  std::vector<PrintFile> numerals;    ///< stencils or their like, and where they go
  std::vector<PrintFile> to_look_at;  ///< views; the build book is always there
};

/// Pages are counted, and their sizes known, without drawing where that can be.
///
/// Holds (print_ways_test.cpp): (1) files, pages and sizes are those of the sheets themselves; (2)
///   each cover is in every way, left out of it, or shares another's print.
PrintWays print_ways(const Made& made, const Font& labels);

/// A way in words, in the job's units.
struct WayWords {
  std::string way;     ///< "measuring sheet and templates"
  std::string sheets;  ///< "8 sheets of letter, 4 a cover", "2 pages, the largest 83 by 18 in"
  std::string files;   ///< "A-measures.pdf, A-templates.pdf"
};
WayWords words_of(const PrintWay& way, const Made& made);
/// "8 sheets of letter", "2 pages off the roll": what some files take to print.
std::string sheets_words(const std::vector<PrintFile>& files, Units units);
/// "A-tiles.pdf, B-tiles.pdf"
std::string names_words(const std::vector<PrintFile>& files);
/// Of covers that share a print, or that a way leaves out: a sentence each; empty where there are
/// none.
std::vector<std::string> notes_of(const PrintWays& ways, const Made& made);

/// How small and how large a proof model may be, paper over cloth.
inline constexpr double kLeastModel = 1.0 / 20, kMostModel = 1.0;

/// A bumper's cover made small, on one sheet of card to cut out, fold and try: the outside up, each
/// line at `scale`, words as large as ever, no staples. On the paper asked for, else on the
/// smallest paper of its series that holds it; no pages where none does.
///
/// Requires: a bumper of the job, by its number; a scale from kLeastModel to kMostModel.
/// Holds (model_sheet_test.cpp): (1) the outline's area is the cover's times the scale's square.
Sheet model_sheet(const Made& made, std::size_t bumper, double scale, const PaperKeys& asked,
                  const Font& labels);

/// "1/4" for 0.25, else its decimals.
std::string scale_words(double scale);

/// A font with a number set in it, and what it measures, in words.
struct FontSpecimen {
  std::string name;
  std::vector<std::string> figures;  ///< a line each
  DigitLine line;
  std::vector<type::Stroke> strokes;  ///< of line.shapes, in their order
};

/// Fonts one below the other, all to one scale, their strokes shaded by width about `asked` (mm);
/// `words` stand under the title.
///
/// Requires: at least one font.
Sheet font_sheet(const std::vector<FontSpecimen>& fonts, const std::string& title,
                 const std::vector<std::string>& words, double asked, const PaperKeys& paper,
                 Units units, const Font& labels);

}  // namespace swathe
