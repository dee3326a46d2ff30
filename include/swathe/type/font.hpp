#pragma once

#include <map>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "swathe/base/outcome.hpp"
#include "swathe/plane/path.hpp"

namespace swathe {

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

/// Outline as the font has it: quadratic curves raised to cubic, em units, y up.
struct Curve {
  enum class Verb { Move, Line, Cubic, Close };
  Verb verb = Verb::Move;
  FlatPoint a, b, to;  ///< a and b are the control points of a cubic
};

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
  const std::vector<Curve>& outline(unsigned glyph) const;
  /// The outline flattened within `tolerance` em and united by non-zero fill.
  /// Refuses: TooLarge (past a limit of digits in base/limits.hpp, or 100 em from the origin); its
  /// sentence starts with a verb: "has 7000 curves, ...".
  Outcome<Region> region(unsigned glyph, double tolerance) const;
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

}  // namespace swathe
