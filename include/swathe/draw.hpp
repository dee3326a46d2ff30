#pragma once

// Drawings as lists of marks, and sheets of them.

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/plane.hpp"

namespace swathe {

// Our own list of marks: every output format reads the same Drawing, and a mark is said once.
// Coordinates are millimeters on the sheet, x to the right and y up.

/// What a line asks the hand to do. Its width, dashes and layer follow from this and nothing else.
enum class LineKind {
  Cut,         ///< continuous, 0.7 mm
  CutLast,     ///< continuous, 0.7 mm, drawn with small open squares: cut on the bumper
  Fold,        ///< dash-dot, 0.35 mm
  Stitch,      ///< short dashes, 0.35 mm
  Corner,      ///< long dash, two dots, 0.25 mm: corner line, board edge, inside corner
  StapleLine,  ///< thin line that staples stand on
  Staple,      ///< an open crown across it
  Punch,       ///< circle of the hole with center cross
  Match,       ///< match marks (mostly filled)
  Numeral,     ///< outline of a digit, 0.25 mm
  Bridge,      ///< edge of a stencil bridge, 0.25 mm short dashes
  Grain,       ///< two-headed arrow along the cloth's length
  Join,        ///< where a tile is laid on: thin line and hollow half diamonds
  Trim,        ///< where a tile is trimmed: dots, 0.25 mm
  Scale,       ///< check scales
  Thin,        ///< leaders, tables, frames: 0.18 mm
  Outline,     ///< things that are looked at, not worked on: 0.35 mm
};

struct LineStyle {
  double width_mm = 0;
  std::vector<double> dashes_mm;  ///< on, off, on, off ...; empty for a continuous line
  const char* layer = "";         ///< name for formats that have layers: "CUT", "FOLD"
};
const LineStyle& style_of(LineKind kind);

/// Every mark carries what it shows of the model; furniture (frames, keys, notes) shows nothing.
struct LineMark {
  LineKind kind = LineKind::Outline;
  plane::Path path;
  bool sample = false;  ///< shows its kind in a key: nothing to cut or draw by
  Subjects shows{};
};

/// A filled area: outer outlines counter-clockwise, holes clockwise; where several overlap, it is
/// filled once (non-zero fill).
struct FillMark {
  LineKind kind = LineKind::Outline;  ///< whose layer it lies on
  Color color;
  std::vector<plane::Path> outlines;
  Subjects shows{};
};

namespace draw {

enum class Anchor { Left, Middle, Right };

}  // namespace draw

struct TextMark {
  FlatPoint at;            ///< on the base line
  std::string text;        ///< one line, UTF-8
  double height_mm = 3.5;  ///< of the capitals
  draw::Anchor anchor = draw::Anchor::Left;
  double turn = 0.0;  ///< radians, counter-clockwise, about `at`
  Subjects shows{};
};

namespace draw {

using Mark = std::variant<FillMark, LineMark, TextMark>;

}  // namespace draw

/// Marks in drawing order within their kind; a writer draws tints first, then lines, then text.
class Drawing {
 public:
  void line(LineKind kind, plane::Path path) {
    marks_.emplace_back(LineMark{kind, std::move(path), false, {}});
  }
  void sample(LineKind kind, plane::Path path) {
    marks_.emplace_back(LineMark{kind, std::move(path), true, {}});
  }
  void line(LineKind kind, FlatPoint a, FlatPoint b) { line(kind, plane::line(a, b)); }
  void fill(LineKind kind, Color color, std::vector<plane::Path> outlines) {
    marks_.emplace_back(FillMark{kind, color, std::move(outlines), {}});
  }
  void text(TextMark mark) { marks_.emplace_back(std::move(mark)); }
  void text(FlatPoint at, std::string words, double height_mm = 3.5,
            draw::Anchor anchor = draw::Anchor::Left, double turn = 0.0) {
    text(TextMark{at, std::move(words), height_mm, anchor, turn, {}});
  }
  /// Another drawing's marks, placed, with what they show. Text is moved and turned but never
  /// mirrored: where the placement mirrors, its anchor changes sides.
  void add(const Drawing& other, const plane::Placement& placement);

  const std::vector<draw::Mark>& marks() const { return marks_; }

 private:
  friend class Showing;
  std::vector<draw::Mark> marks_;
};

/// As long as this exists, what is drawn shows these parts of the model: its destructor gives them
/// to every mark added since that shows nothing yet. Of two nested ones the inner comes first.
///
/// Requires: the drawing outlives it and is not moved from meanwhile.
class [[nodiscard]] Showing {
 public:
  Showing(Drawing& onto, Subjects shows)
      : onto_(onto), shows_(std::move(shows)), from_(onto.marks_.size()) {}
  Showing(const Showing&) = delete;
  Showing& operator=(const Showing&) = delete;
  ~Showing();

 private:
  Drawing& onto_;
  Subjects shows_;
  std::size_t from_;
};

/// What a mark shows, whichever it is.
const Subjects& shown_by(const draw::Mark& mark);

namespace draw {

/// How a page is stretched to make up for a printer's error, so that it comes out true.
struct Stretch {
  double x = 1, y = 1;
};

}  // namespace draw

/// One page, lower left corner at (0, 0).
struct Page {
  double width_mm = 0, height_mm = 0;
  Drawing drawing;
  std::string name;  ///< "B2" for a tile, else a title
  draw::Stretch
      print{};  ///< for printing on paper; drawings for cutting machines are not stretched
};

/// What a sheet file is for: the words in the report and the file's place in the order of work.
enum class SheetKind {
  Start,
  TestPage,
  Pattern,
  Tiles,
  Fold,
  Measures,
  Templates,
  Model,
  Numerals,
  Placing,
  Book,
  Views,
  Lay
};
std::string to_text(SheetKind kind);

/// Whether what is on such a sheet is cut, laid or measured at its size on the paper.
bool is_at_full_size(SheetKind kind);

/// What a sheet is called: known before any page of it is drawn.
struct SheetName {
  std::string stem;  ///< file name less its ending: "bumper-A-pattern"
  std::string title;
  SheetKind kind = SheetKind::Pattern;
  std::string paper;  ///< "letter", "full size"
};

/// A file to be: pages of one paper.
struct Sheet : SheetName {
  std::vector<Page> pages;
};

}  // namespace swathe
