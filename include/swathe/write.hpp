#pragma once

// A job's sheets and its files, as bytes.

#include <array>
#include <cstddef>
#include <deque>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "swathe/draw.hpp"
#include "swathe/make.hpp"
#include "swathe/pattern.hpp"
#include "swathe/screen.hpp"
#include "swathe/sheet.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// A sheet of a job that is not drawn yet.
struct ListedSheet : SheetName {
  std::optional<std::size_t> bumper;  ///< whose cover it is of, by its number
};

/// Every sheet of a job that is cut, marked or read at the bench, in the order of work: where to
/// start; the test page; per bumper its pattern at full size, the same in tiles, its half on the
/// fold, its measuring sheet and its templates; then the numerals and where their digits go, what
/// an observer sees, then the build book. Sheets that would have no page are left out, and tiles,
/// half and templates of a cover that is cut from another's print.
///
/// Nothing is drawn for it, but templates for paper too small for tiles, to see whether one fits.
/// Holds (list_of_sheets_test.cpp): (1) it has exactly the sheets that have pages.
std::vector<ListedSheet> list_sheets(const Made& made, const Font& labels);

/// One of them with its pages, a roll's cut to length, what is printed made up for the printer's
/// error.
///
/// Requires: `sheet` is of list_sheets(made, labels).
/// Holds (list_of_sheets_test.cpp): (1) it is the same whether others are drawn or not.
Sheet make_sheet(const Made& made, const ListedSheet& sheet, const Font& labels);
/// The same by one who has its ways to print already: print_ways(made, labels).
Sheet make_sheet(const Made& made, const ListedSheet& sheet, const Font& labels,
                 const PrintWays& ways);

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
/// Holds (list_of_sheets_test.cpp): (1) it says what told(all_sheets()) does.
std::vector<ToldSheet> told_sheets(const Made& made, const Font& labels);

// Both throw std::runtime_error where the drawing library fails (out of memory, or more dots than
// it can hold): the machine's fault, not the user's.

struct PdfOptions {
  std::string created = "2000-01-01T00:00:00Z";  ///< creation date in the file, ISO 8601
};

/// The sheet as a PDF file at full size: 1 mm on the page is 1 mm in the drawing. Its text can be
/// searched. Where it is cut, laid or measured at that size, it asks what shows it to print it so
/// and on one side of the paper (PDF 1.7).
///
/// Requires: at least one page; no side over 5080 mm (ISO 32000-1, annex C.2: 14 400 units); text
/// in UTF-8.
/// Holds (pdf_test.cpp): (1) same sheet, same font, same options: same bytes; (2) pages have the
///   size asked for, and what is drawn on them its true size; (3) its viewer is asked not to scale
///   what is at full size, and nothing of the others.
std::string to_pdf(const Sheet& sheet, const Font& labels, const PdfOptions& options = {});

/// One page as a PNG picture.
/// Requires: at least one dot each way, and no side over 32 767 dots.
std::string to_png(const Page& page, const Font& labels, double dots_per_mm);

/// One page as an SVG 1.1 file at full size: width and height in millimeters, one group a layer,
/// named as in style_of; what only shows a kind of line lies on one called KEY. Tints stand in
/// groups of their own at the bottom, text in one on top.
///
/// Letters are outlines, so that no other machine's fonts push words over lines; each is drawn once
/// and used wherever it stands. A text bears its words as aria-label, for searches and for readers.
///
/// Requires: text in UTF-8.
/// Holds (svg_test.cpp): (1) same page, same bytes, in any locale; (2) well-formed XML, whatever
///   the words.
std::string to_svg(const Page& page, const std::string& title, const Font& labels);

/// A picture for a screen as an SVG element, to be put into a page as it is: no id, no script and
/// no style in it, so that it goes through the strictest rules of a page.
///
/// Each layer is a group with its name as a class; in it are groups of its areas (class "areas")
/// and of each kind of line (style_of's names in small letters). What shows a part of the model has
/// it as data-subject, as in files to print. All is drawn in the color of the page's text, fainter
/// or stronger, but for areas in their own colors; these are attributes, which any rule of a style
/// sheet overrules. Text is text, in the font kScreenFont: a page has the bytes of label_font() for
/// it. It is as wide as measured in any other font, too. Handles are circles that are not seen,
/// kHandlePx across.
///
/// The picture's map is on the element: data-mm-per-px, data-origin and, where it holds,
/// data-mirrored (screen::Map); of a round chart data-center, data-radii (screen::Rings: pixels and
/// millimeters); each handle's place, limits and way on itself (screen::Handle).
///
/// Requires: text in UTF-8.
/// Holds (screen_svg_test.cpp): (1) same picture, same bytes, in any locale; (2) well-formed XML,
///   whatever the words; (3) what is drawn lies where the picture has it, to 0.1 pixel.
std::string to_svg(const ScreenPicture& picture, const Font& labels);
inline constexpr std::string_view kScreenFont = "Swathe Labels";
/// Source: Web Content Accessibility Guidelines 2.2, 2.5.8, target size.
inline constexpr double kHandlePx = 24;

/// One page as a DXF file at full size for plotters and cutters, release 2000 (AC1015): a layer a
/// kind of line, named as in style_of, one for samples in keys and one for text; the header says
/// that a unit is 1 mm.
///
/// Lines are polylines, arcs in them bulges. Solid shapes (arrows, match marks) are their outlines;
/// tints are left out. A text is squeezed or stretched by its reader to the width it has in
/// `labels`, whatever font it is shown in there.
///
/// Requires: text in UTF-8.
/// Holds (dxf_test.cpp): (1) same page, same bytes; (2) ezdxf reads it and finds no fault in it,
///   whatever the words; (3) closed outlines keep their areas.
/// Source: the DXF Reference of AutoCAD 2000: group codes of each table and entity.
std::string to_dxf(const Page& page, const Font& labels);

/// The mesh as a Wavefront OBJ file: millimeters, z up, texture coordinates are cloth coordinates
/// (s and u, millimeters), one group a panel.
std::string to_obj(const Mesh& mesh);

/// The report as JSON, schema 1: lengths in mm, angles in degrees, four decimals.
/// Holds: same job, same bytes, in any locale; what is not built is absent.
std::string report_json(const Made& made, const std::vector<ToldSheet>& sheets);

/// The kinds of a job's files.
enum class FileKind {
  Start,
  TestPage,
  Pattern,
  Tiles,  ///< of halves on the fold, too
  Measures,
  Templates,
  Numerals,  ///< and where their digits go
  Views,
  Book,
  Model,  ///< of card
  Mesh,   ///< the covers in space
  Report,
};
inline constexpr int kFileKinds = static_cast<int>(FileKind::Report) + 1;
/// "test-page", in small letters.
std::string to_text(FileKind kind);
/// Whose files a sheet's are.
FileKind file_kind(SheetKind kind);

/// Which of a job's files are to be made: some kinds of them.
class Wanted {
 public:
  static const Wanted Everything, Patterns, Numerals, Views;

  constexpr Wanted() = default;  ///< none
  constexpr Wanted(std::initializer_list<FileKind> kinds) {
    for (const FileKind kind : kinds) bits_ |= 1u << static_cast<unsigned>(kind);
  }
  /// What a word asks for that kWantedWords has; nothing for another word. Sheets at full size
  /// bring the test page.
  static std::optional<Wanted> of_word(std::string_view word);

  constexpr bool has(FileKind kind) const {
    return (bits_ & 1u << static_cast<unsigned>(kind)) != 0;
  }
  friend constexpr Wanted operator|(Wanted a, Wanted b) {
    a.bits_ |= b.bits_;
    return a;
  }
  friend constexpr bool operator==(Wanted, Wanted) = default;

 private:
  unsigned bits_ = 0;
};
inline constexpr Wanted Wanted::Everything{
    FileKind::Start,    FileKind::TestPage,  FileKind::Pattern,  FileKind::Tiles,
    FileKind::Measures, FileKind::Templates, FileKind::Numerals, FileKind::Views,
    FileKind::Book,     FileKind::Model,     FileKind::Mesh,     FileKind::Report};
inline constexpr Wanted Wanted::Patterns{FileKind::TestPage, FileKind::Pattern,   FileKind::Tiles,
                                         FileKind::Measures, FileKind::Templates, FileKind::Model};
inline constexpr Wanted Wanted::Numerals{FileKind::TestPage, FileKind::Numerals};
inline constexpr Wanted Wanted::Views{FileKind::Views};

/// The words for kinds that can be asked for alone, in the order of work.
inline constexpr std::array<std::string_view, 8> kWantedWords = {
    "pattern", "tiles", "measures", "templates", "numerals", "views", "book", "model"};

/// Whether sheets of that kind are among them.
bool wants(Wanted wanted, SheetKind kind);

struct FileOptions {
  Wanted wanted = Wanted::Everything;
  std::string created = PdfOptions{}.created;  ///< the date in PDF files, ISO 8601
  std::vector<Sheet> models;                   ///< proof models, written after the job's own sheets
};

/// A file with its bytes, and the words beside its name.
struct MadeFile {
  std::string name;
  std::string bytes;
  std::size_t pages = 0;  ///< 0 where it has none: meshes, the report
  std::string paper, what;
  FileKind kind = FileKind::Report;
};

/// Files in one ZIP archive, in their order: deflated where that is shorter, each with the date
/// `created` (ISO 8601, in UTC; from 1980 to 2107, else the nearest that the form can hold).
///
/// Requires: names differ; less than 65 535 files, and less than 4 GiB of them all.
/// Throws std::runtime_error where the compression library has no memory.
/// Holds (zip_test.cpp): (1) same files, same date: same bytes.
/// Source: PKWARE, .ZIP File Format Specification 6.3.10, sections 4.3 and 4.4.
std::string to_zip(const std::vector<MadeFile>& files,
                   const std::string& created = PdfOptions{}.created);

/// A job's files, one after another in the order of work: of each sheet its PDF, and of what is cut
/// or looked at each page for drawing programs (SVG), plotters and cutters (DXF), and as dots
/// (PNG) where views alone are wanted; with everything the covers in space (OBJ) and the report.
///
/// A sheet is drawn when its first file is asked for and put away after its last, and no more than
/// one file's bytes are held.
///
/// Requires: `made` and `labels` outlive it.
/// Holds (job_files_test.cpp): (1) its sheets' files have the bytes that the writers make of
///   all_sheets(); (2) of some kinds only, they are those of everything (PNG beside them).
class JobFiles {
 public:
  JobFiles(const Made& made, const Font& labels, FileOptions options = {});

  /// Whether there is no file at all.
  bool none() const;
  /// Makes the next file; nothing after the last. Throws as the writers of PDF and PNG do.
  std::optional<MadeFile> next();
  /// The job's ways to print.
  const PrintWays& ways();
  /// Every sheet that was drawn so far.
  const std::vector<ToldSheet>& sheets() const { return told_; }

 private:
  enum class Format { Pdf, Svg, Png, Dxf };
  struct Part {
    Format format;
    std::size_t page;  ///< none of a PDF
  };

  bool draw_next();
  Sheet next_listed();
  void plan_parts();
  MadeFile made_part(Part part) const;
  std::optional<MadeFile> next_beside_sheets();

  const Made& made_;
  const Font& labels_;
  FileOptions options_;
  std::vector<ListedSheet> list_;
  std::size_t listed_ = 0, models_ = 0;  ///< drawn so far
  std::optional<PrintWays> ways_;        ///< once a sheet tells them
  Sheet sheet_;                          ///< whose files are made now
  std::deque<Part> parts_;               ///< of it, still to be made
  std::vector<ToldSheet> told_;
  std::size_t meshes_ = 0;
  bool reported_ = false;
};

}  // namespace swathe
