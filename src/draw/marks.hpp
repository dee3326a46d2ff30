#pragma once

#include <string>
#include <vector>

#include "swathe/draw.hpp"

// The small marks of a pattern, each drawn in one place so that sheet and key cannot differ.
namespace swathe {

inline constexpr Color kBlack{0, 0, 0};
inline constexpr Color kTint{0.9, 0.9, 0.9};  ///< of a numeral's place; pale when printed in gray

/// A solid arrow, shaft and head in one.
plane::Polygon arrow(FlatPoint tail, FlatPoint tip);
/// A solid head alone, 3.5 mm long.
plane::Polygon arrow_head(FlatPoint tip, FlatPoint way);

/// An open crown across the staple line; `upright` where the line runs upwards.
void draw_staple(Drawing& onto, FlatPoint at, bool upright);
/// The hole's circle, and a cross that runs past it.
void draw_punch(Drawing& onto, FlatPoint at, double radius);
/// A solid triangle whose base lies on the cloth's edge; of half its size in a key, with 0.5.
void draw_match(Drawing& onto, FlatPoint at, bool points_down, double size = 1.0);
/// The window's outline with a small open square at each corner of its box.
void draw_window(Drawing& onto, const plane::Path& window);
/// One of these squares: it says that a line is cut last, on the bumper.
void draw_window_corner(Drawing& onto, FlatPoint at);
/// A tile's half of the black diamond over a join: the base on the join, the tip `inward` (unit).
void draw_half_diamond(Drawing& onto, FlatPoint at, FlatPoint inward, double size = 1.0);
inline constexpr double kDiamondHalf = 4.0;   ///< along the join
inline constexpr double kDiamondDepth = 5.0;  ///< into the tile
/// A scale's line between its ticks.
void draw_scale_line(Drawing& onto, FlatPoint from, FlatPoint to);
inline constexpr double kScaleTick = 5.0;  ///< across the line
/// A fold line, and near both ends an arrow that points the way its cloth is folded under.
void draw_pleat(Drawing& onto, const plane::Path& fold, FlatPoint under);
/// A digit's outline over a pale tint.
void draw_numeral(Drawing& onto, const plane::Region& outline);
/// A dimension from `a` to `b`: a line between ticks, the words in the middle beside it.
void draw_dimension(Drawing& onto, FlatPoint a, FlatPoint b, const std::string& words,
                    double height_mm);

/// The point `share` of the way along a path, and the path's direction there.
struct OnPath {
  FlatPoint at, along;
};
OnPath along_path(const plane::Path& path, double share);

}  // namespace swathe
