#pragma once

#include <optional>
#include <string>
#include <vector>

#include "draw/strips.hpp"
#include "draw/text_box.hpp"
#include "swathe/draw.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// Several lines of text that stay together, the first on top, all with one anchor.
struct TextBlock {
  struct Line {
    std::string text;
    double height_mm = 3.5;
  };
  std::vector<Line> lines;
};

/// The turn for text along a direction, never upside down; upright text reads from below.
double reading_turn(FlatPoint along);

/// Puts text on a drawing where it lies over no line and no other text.
///
/// Holds (label_placer_test.cpp): (1) no two texts placed overlap; (2) no text lies over a line it
///   was told to keep off.
class LabelPlacer {
 public:
  /// How text keeps off other things.
  struct Clear {
    double around_mm = 1.0;  ///< between text and anything else
    double leader_mm = 1.0;  ///< of a leader, at its place, that may run through text
  };
  /// Requires: both outlive the placer. It keeps off the lines that the drawing already has.
  LabelPlacer(Drawing& onto, const Font& labels, const plane::Box& page);
  LabelPlacer(Drawing& onto, const Font& labels, const plane::Box& page, const Clear& clear);
  const Font& font() const { return labels_; }

  /// What it writes on.
  Drawing& drawing() { return onto_; }

  void keep_off(const plane::Path& path);
  void keep_off(const plane::Box& box) { hold(box_of(box)); }

  bool is_free(const TextBox& box) const;
  /// Whether a line from `a` to `b` would run through text, or what else text keeps off.
  bool is_crossed(FlatPoint a, FlatPoint b) const;
  /// Writes it if it is free there.
  bool try_at(const TextMark& text);
  /// Writes the first of these that is free. False where none is.
  bool first_free(const std::vector<TextMark>& candidates);

  /// Beside a line, on either side and `off_mm` clear of it, as near its end `a` as there is room.
  bool beside(FlatPoint a, FlatPoint b, const std::string& text, double height_mm,
              double from_end_mm, double off_mm = 0.3);
  /// Near a place, with a leader from it once the text stands further off than 4 mm.
  bool near(FlatPoint place, const std::string& text, double height_mm, double furthest_mm);

  /// The free place of an upright box of that size inside `within`, nearest to `aim`; it is kept
  /// free from then on.
  std::optional<plane::Box> claim(double width, double height, const plane::Box& within,
                                  FlatPoint aim, double step_mm = 5);
  /// A block in such a place, its lines in the middle.
  bool block(const TextBlock& block, const plane::Box& within, FlatPoint aim);

 private:
  void write(const TextMark& text);
  void hold(const TextBox& box);

  Drawing& onto_;
  const Font& labels_;
  plane::Box page_;
  Clear clear_;
  struct Stroke {
    FlatPoint a, b;
    plane::Box box;
  };
  struct Held {
    TextBox box;
    plane::Box around;
  };
  std::vector<Stroke> strokes_;
  std::vector<Held> held_;  ///< by texts and whatever else text keeps off
  Strips stroke_strips_, held_strips_;
};

}  // namespace swathe
