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
  Verb verb;
  FlatPoint a, b, to;  ///< a and b are the control points of a cubic
};

/// A font file opened: shaping and outlines, without hinting. Copies share the open font.
class Face {
 public:
  /// Requires: `bytes` outlive the face. Refuses: BadFont, TooLarge, UnknownName (an axis the face
  /// has not).
  static Outcome<Face> open(std::string_view bytes, const std::map<std::string, double>& axes = {});

  const std::string& name() const;  ///< family and style, from the font
  /// Lining figures; one line of UTF-8, left to right.
  std::vector<ShapedGlyph> shape(std::string_view text, ShapeOptions options = {}) const;
  bool has(char32_t character) const;
  const std::vector<Curve>& outline(unsigned glyph) const;
  /// The outline flattened within `tolerance` em and united by non-zero fill.
  Region region(unsigned glyph, double tolerance) const;
  /// Height of the capital H's outline, in em.
  double cap_height() const;
  /// Width of a line of text set so that its capitals are `cap_height_mm` high.
  double text_width_mm(std::string_view text, double cap_height_mm) const;

 private:
  struct Open;
  explicit Face(std::shared_ptr<Open> open) : open_(std::move(open)) {}
  std::shared_ptr<Open> open_;
};

}  // namespace swathe
