#pragma once

#include <string>
#include <vector>

#include "swathe/draw.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// A dimension: its line on the sheet, and what it comes to.
struct Dimension {
  FlatPoint from, to;
  std::string words;
  double height_mm = 3.5;
  Subjects shows{};
};

/// Words at a place, with a leader where there is no room beside it.
struct Note {
  FlatPoint at;
  std::string words;
  double height_mm = 3.5;
  Subjects shows{};
};

/// Dimensions drawn between ticks, and notes, where they lie over nothing that `onto` has and stay
/// on `page`. The words of a line stand along it, in its middle where that is free.
///
/// Holds (book_sketch_test.cpp): no words are left out.
void draw_measures(Drawing& onto, const Font& labels, const plane::Box& page,
                   const std::vector<Dimension>& measures, const std::vector<Note>& notes = {});

/// An area as a tint that prints pale in gray.
inline constexpr Color kPale{0.93, 0.93, 0.93};
inline constexpr Color kWood{0.8, 0.8, 0.8};

}  // namespace swathe
