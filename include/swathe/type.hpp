#pragma once

// Fonts, the digits of a number set in them, and how these measure.

#include <cstddef>
#include <map>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/plane.hpp"

namespace swathe {

/// A short piece of a stroke's middle line: where, how long, and how wide the stroke is there; mm.
struct StrokePiece {
  FlatPoint at;
  double length = 0;
  double width = 0;
};

namespace type {

/// The strokes of one digit, measured on the medial axis of its outline.
class Stroke {
 public:
  explicit Stroke(std::vector<StrokePiece> pieces);

  double length() const { return length_; }  ///< of the pruned axis
  double median() const;                     ///< width, weighted by length
  double least() const;
  FlatPoint least_at() const;
  /// Share of the length on which the stroke is at least `width` wide, 0 to 1.
  double share_at_least(double width) const;
  const std::vector<StrokePiece>& pieces() const { return pieces_; }  ///< narrow first, to 1e-6 mm

 private:
  std::vector<StrokePiece> pieces_;
  double length_ = 0;
};

}  // namespace type

/// Which circles of the medial axis count as stroke: those that touch the outline on nearly
/// opposite sides. In a corner, at a stroke's end and where strokes join they do not. The measure
/// is the chord between the two touching places over the diameter.
inline constexpr double kStrokeOpposed = 0.95;
/// The same at a free end of the line, from which bits are taken off until one passes: what tapers
/// by more than 0.45 of its own length is a tip, not a stroke (2 sqrt(1 - 0.9743^2) = 0.45).
inline constexpr double kStrokeEndOpposed = 0.9743;
/// A line shorter than this share of the outline's greater side is no stroke: 1 mm of a 4 in digit.
/// Even the pinch between a bowl and its stem has a longer one.
inline constexpr double kStrokeLeastLine = 0.01;
/// The line is looked at in bits of at most this share of the greater side.
inline constexpr double kStrokeStep = 0.0025;

/// Measures the strokes of an outline in mm, on its medial axis less what does not count as stroke.
/// The width is the diameter of the circle about each place of the line.
///
/// Requires: outer outlines counter-clockwise, holes clockwise; overlaps are united.
/// Holds: (1) bars and rings, turned or not, have the width they were drawn with;
///        (2) the circle that fits into a join does not count;
///        (3) the answer is the same for the outline turned, mirrored and moved.
type::Stroke measure_stroke(const plane::Region& outline);

struct ShapeOptions {
  bool tabular = false;
  bool kerning = true;
};

/// How labels are set: figures all of one width, so that columns line up and a 1 stands clear.
inline constexpr ShapeOptions kLabelFigures = {.tabular = true};

/// One glyph of a shaped line; em units (1 = the em).
struct ShapedGlyph {
  unsigned glyph = 0;
  unsigned cluster = 0;  ///< byte of the text it comes from
  double advance = 0;
  FlatPoint offset;
};

namespace type {

/// Outline as the font has it: quadratic curves raised to cubic, em units, y up.
struct Curve {
  enum class Verb { Move, Line, Cubic, Close };
  Verb verb = Verb::Move;
  FlatPoint a, b, to;  ///< a and b are the control points of a cubic
};

}  // namespace type

/// An axis of a variable font.
struct FontAxis {
  std::string tag;  ///< "wght", "wdth"
  double least = 0, most = 0;
  double value = 0;  ///< as the font is set
};

/// A font file opened: shaping and outlines, without hinting. Copies share the open font and
/// what it has worked out already, so one font and its copies belong to one thread at a time.
class Font {
 public:
  /// Opens a TrueType, OpenType or WOFF2 file, variable or not.
  ///
  /// Requires: `bytes` outlive the font. Refuses: BadFont (damaged, or without outlines or
  /// characters), TooLarge (more than 16 MiB), UnknownName (an axis the font has not), OutOfRange
  /// (past the ends of an axis).
  static Outcome<Font> open(std::string_view bytes, const std::map<std::string, double>& axes = {});

  const std::string& name() const;            ///< family and style, from the font
  const std::vector<FontAxis>& axes() const;  ///< none for a font that is not variable
  /// Lining figures; one line of UTF-8, left to right.
  std::vector<ShapedGlyph> shape(std::string_view text, ShapeOptions options = {}) const;
  /// Whether the font has a shape for it. One it lacks is shaped as glyph 0.
  bool has(char32_t character) const;
  /// Worked out once a glyph; empty for a space, and for a glyph the font has not or cannot draw.
  /// As the font has it: of any size, and up to tens of thousands of curves.
  const std::vector<type::Curve>& outline(unsigned glyph) const;
  /// The outline flattened within `tolerance` em and united by non-zero fill.
  /// Refuses: TooLarge (past a limit of digits in base/limits.hpp, or 100 em from the origin); its
  /// sentence starts with a verb: "has 7000 curves, ...".
  Outcome<plane::Region> region(unsigned glyph, double tolerance) const;
  /// Height of the capital H's outline, in em; of the 1 where there is no H, 0 where there is
  /// neither, or where it has more edges than a digit may have.
  double cap_height() const;
  /// Width of a line of text set so that its capitals are `cap_height_mm` high.
  double text_width_mm(std::string_view text, double cap_height_mm) const;

 private:
  struct Open;
  explicit Font(std::shared_ptr<Open> open) : open_(std::move(open)) {}
  std::shared_ptr<Open> open_;
};

// Digits of a font at a size. Millimeters; a digit's origin is on the base line at the left of its
// advance.

/// Outlines are flattened within this of their curves, at their final size.
inline constexpr double kDigitFlatness = 0.01;

struct DigitOutline {
  char digit = '0';
  plane::Region outline;
  plane::Box ink;
  double advance = 0;

  int counters() const;  ///< islands: the holes of the outline
};

struct DigitSpacing {
  bool tabular = false;
  double extra = 0;  ///< added between neighbors
};

/// A number set in one line.
struct DigitLine {
  struct Place {
    char digit = '0';
    FlatPoint origin;
  };
  double em = 0;                     ///< its size
  std::vector<DigitOutline> shapes;  ///< each digit used, once, in order of the digits
  std::vector<Place> places;         ///< in order of the text
  plane::Box ink;                    ///< of the whole line

  const DigitOutline& shape(char digit) const;  ///< Requires: the line has it.
};

/// A number with the font's kerning, at the size at which the shortest digit it uses is `height`
/// high: round digits are mostly taller than flat ones.
///
/// Refuses: OutOfRange (anything but digits 0 to 9, or more than 64 of them; a height that is not
///   positive, or past 10 m), BadFont (a digit the font lacks, has no ink for, has drawn of no
///   usable size or more intricate than the limits of base/limits.hpp allow).
Outcome<DigitLine> set_digits(const Font& font, std::string_view digits, double height,
                              DigitSpacing spacing = {});

/// A font and the bytes it reads from, which stay where they are while anyone has this.
struct OpenedFont {
  std::shared_ptr<const std::string> bytes;
  Font font;
};

/// Fonts that were opened, to be asked again: the same bytes with the same axes are not opened a
/// second time, and what a font has worked out is not worked out again.
///
/// It has a copy of their bytes, and lets go of the font that was not asked for the longest where
/// there are more than kMost. It and its fonts belong to one thread at a time.
class OpenFonts {
 public:
  static constexpr std::size_t kMost = 32;

  /// Refuses: as Font::open; such a font is opened each time it is asked for.
  Outcome<OpenedFont> open(std::string_view bytes, const std::map<std::string, double>& axes = {});

  std::size_t size() const { return kept_.size(); }
  std::size_t opened() const { return opened_; }  ///< so often a font was opened, not found

 private:
  struct Kept {
    std::map<std::string, double> axes;
    OpenedFont font;
  };
  std::vector<Kept> kept_;  ///< the one asked for last first
  std::size_t opened_ = 0;
};

/// A font for numerals that comes with the tool.
struct BundledFont {
  std::string name;                    ///< what a job calls it
  std::string file;                    ///< its bytes are embedded(file)
  std::map<std::string, double> axes;  ///< as it is set unless a job says otherwise
  std::string note;                    ///< "stencil" where it is drawn with bridges; else empty
};

/// In the order in which they are listed: the default first.
std::vector<BundledFont> bundled_fonts();

/// One by its name, capitals or not. Refuses: UnknownName, naming the nearest.
Outcome<BundledFont> bundled_font(std::string_view name);

/// Opened as it stands in the list, with `axes` set over its own, axis by axis.
/// Refuses: as Font::open.
Outcome<Font> open_bundled(const BundledFont& font, const std::map<std::string, double>& axes = {});

/// The bytes of the font in which labels are set: Cantarell Regular.
std::string_view label_font();

// How the digits of a font measure, to choose one by. Millimeters.

/// One digit of a font.
struct DigitFigures {
  char digit = '0';
  double height = 0, width = 0;  ///< of the ink
  int counters = 0;              ///< islands
  double stroke_length = 0;
  double stroke_median = 0;
  double stroke_least = 0;
  FlatPoint stroke_least_at;
  double share_at_least = 0;  ///< of the stroke's length that is at least as wide as asked
};

/// Two digits and a figure that belongs to both.
struct DigitPair {
  char left = '0', right = '0';
  double value = 0;
};

/// A font with all ten digits, the shortest of them `height` high.
struct FontFigures {
  double height = 0;
  double stroke_asked = 0;
  std::vector<DigitFigures> digits;  ///< 0 to 9
  double five_widest = 0;            ///< ink of the widest digit five times, unkerned
  double five_average = 0;           ///< of five digits of mean width
  /// Neighbors with the least space between their ink, across, and that space.
  DigitPair closest;
  /// Pairs that are taken for each other, most alike first: laid on each other, middle on middle,
  /// the area of both in common over the area of either.
  std::vector<DigitPair> alike;

  double share_at_least() const;  ///< of the stroke's length of all ten
  DigitFigures thinnest() const;  ///< the digit with the least stroke; none: of no size
};

/// Refuses: OutOfRange (a height that is not positive), BadFont (a digit is missing).
Outcome<FontFigures> measure_font(const Font& font, double height, double stroke_asked);

/// What the strokes come to: "wide enough throughout", "wide enough for the most part; thinner in
/// places: 5, 6, 9", "too thin for the most part: 1, 4" with the digits it holds for.
std::string verdict(const FontFigures& figures);

}  // namespace swathe
