#pragma once

// Pictures of what was made, composed for a size on a screen: the frame from above, a cover, the
// cut-through, what an observer sees, and who can read it from all round.

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/draw.hpp"
#include "swathe/make.hpp"
#include "swathe/plane.hpp"
#include "swathe/sight.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// Pixels are those of CSS, of which 96 make an inch. A size past its limits is taken to the
/// nearest one.
struct ScreenOptions {
  double width_px = 620, height_px = 360;  ///< 160 to 4096
  double text_px = 13;                     ///< size of all words, of the em: 8 to 48
  /// The part of the model to show, in the picture's own millimeters (screen::Map). Unset, or of no
  /// size: all of it, with room round it for words.
  std::optional<plane::Box> window{};
};

namespace screen {

/// Drawings of screen pictures are in CSS millimeters, y up from the lower left corner.
inline constexpr double kPxPerMm = 96 / 25.4;

/// Marks of one kind, for a style sheet to find: below those of the layers after it.
struct Layer {
  std::string what;  ///< a name of small letters: "wood", "words"
  /// How strong its areas and its lines are over the background, 0 to 1.
  double tint = 0.2, ink = 1;
  bool own_colors = false;  ///< areas in their marks' colors: cloth and digits of a view
  Drawing drawing{};
};

/// Between places of the model and pixels from the picture's upper left corner, y down.
///
/// Holds (map_test.cpp): (1) to_mm(to_px(p)) is p; (2) places of the model that are known otherwise
///   are drawn where it says.
struct Map {
  double mm_per_px = 1;
  FlatPoint origin_px;    ///< of the model's place 0, 0
  bool mirrored = false;  ///< the model's x runs to the left

  FlatPoint to_px(FlatPoint mm) const {
    return {origin_px.x + (mirrored ? -mm.x : mm.x) / mm_per_px, origin_px.y - mm.y / mm_per_px};
  }
  FlatPoint to_mm(FlatPoint px) const {
    const double x = mm_per_px * (px.x - origin_px.x);
    return {mirrored ? -x : x, mm_per_px * (origin_px.y - px.y)};
  }
};

/// Something that can be moved along a line, and what its move means for the job.
///
/// Its place is a distance along a side of the frame, as FromCorner has it: moved by so many pixels
/// in the direction of `way`, it is `mm_per_px` times as much more.
struct Handle {
  enum class Kind { Bracket, End, Gap, Opening, Numeral } kind = Kind::Bracket;
  Subjects shows;
  FlatPoint at_px;                ///< what to take hold of
  FlatPoint way;                  ///< unit, in pixels, y down: the place grows along it
  double mm_per_px = 1;           ///< along the side
  std::string side;               ///< along which it moves
  std::string corner;             ///< the neighbor at whose corner the distance begins
  double mm = 0;                  ///< the distance, on the frame itself
  double least = 0, most = 0;     ///< that it may come to, mm
  std::vector<std::string> keys;  ///< of the job that say it; of a gap those of both ends
};
/// "bracket", in small letters.
std::string to_text(Handle::Kind kind);

/// Bearings and distances on the round chart.
struct Rings {
  FlatPoint center_px;  ///< bearing 0 is up, bearings run counter-clockwise
  /// Some distances from the machine's center, in pixels and in truth; both rise. Two or more.
  std::vector<std::pair<double, Length>> radii;

  /// Straight between them; past the last, the last.
  double radius_px(Length distance) const;
};

}  // namespace screen

/// A picture for a screen. Words have one size whatever is shown, lie over no line and no other
/// words, and where there is no room for all of them, the less important ones are left out; what is
/// under half a pixel is left out, too. Each mark that shows a part of the model carries it.
///
/// Holds (pictures_test.cpp): (1) no words overlap, or run over the edge; (2) each mark carries
///   what it shows; (3) same input, same picture.
struct ScreenPicture {
  std::string kind;   ///< "plan", "cover", "cut-through", "view", "chart"
  std::string title;  ///< "From above"
  std::string words;  ///< what it shows, for those who cannot see it
  double width_px = 0, height_px = 0, text_px = 0;
  std::vector<screen::Layer> layers;
  std::optional<screen::Map> map;      ///< of the plan, the cover and the cut-through
  std::optional<screen::Rings> rings;  ///< of the round chart
  std::vector<screen::Handle> handles;
};

/// The frame from above with its bumpers on, the machine's front at the top. Its millimeters are
/// the frame's own.
ScreenPicture screen_plan(const Made& made, const Font& labels, const ScreenOptions& options = {});

enum class CoverShown {
  OutsideUp,  ///< as one looks at the bumper: digits read
  AsPrinted,  ///< as the job's sheets have it: mirrored where they show the inside
};

/// A bumper's cover laid flat. Its millimeters are the pattern's.
/// Requires: a bumper of the job, by its number.
ScreenPicture screen_cover(const Made& made, std::size_t bumper, const Font& labels,
                           const ScreenOptions& options = {},
                           CoverShown shown = CoverShown::OutsideUp);

/// A bumper sawn across: board, padding, cloth, the floor. Its millimeters are depth outward from
/// the board's back, and height above its underside.
ScreenPicture screen_cut_through(const Made& made, const Font& labels,
                                 const ScreenOptions& options = {});

/// Someone who looks at the machine's middle.
struct Observer {
  Angle bearing;      ///< 0 straight ahead of the machine, counter-clockwise: its left at 90 deg
  Length distance;    ///< from the machine's center; one that is too near is kept off it
  Length eye_height;  ///< above the floor; zero to kHighestEye, else the nearest of both
  std::size_t color = 0;  ///< of the job's cloth colors; past the last, the first
};
inline constexpr Length kHighestEye = Length::from_mm(20e3), kFarthestEye = Length::from_mm(500e3);

/// Kept off the bumpers and within the limits.
Observer kept(const Made& made, const Observer& observer);

/// At the nearest distance that the job asks of, eyes as high as it asks at most.
Observer first_observer(const Made& made, Angle bearing);

/// How large the machine is in a view of it.
enum class ViewSize {
  Largest,   ///< as large as it fits
  AllRound,  ///< of one size for all bearings: to walk round it
};

/// The machine's bumpers as an observer sees them, in perspective.
ScreenPicture screen_view(const Made& made, const Font& labels, const Observer& observer,
                          const ScreenOptions& options = {}, ViewSize size = ViewSize::Largest);

/// The machine from above, and round it a band for each distance of the job, the nearest innermost:
/// where from, at the observer's eye height, the number can be read; and the observer.
ScreenPicture screen_chart(const Made& made, const Font& labels, const Observer& observer,
                           const ScreenOptions& options = {});

/// What can be read from one place.
struct PlaceVerdict {
  Observer from;
  std::string way;  ///< "front", "left", "back", "right"; empty of any other place
  Reads reads = Reads::Nothing;
  std::string text;  ///< as read: the number, or the part of it that misleads
  /// How far out along this bearing it can be read, eyes as high; nothing where it cannot from
  /// here.
  std::optional<Length> out_to;
  std::string words;  ///< "read from here, out to 74 ft"
  Subjects shows;     ///< the number that is read
};

/// Holds (verdict_test.cpp): (1) it says what the job's circles of sight say at that bearing; (2) a
///   step nearer than `out_to` the number can still be read, a step farther it cannot.
PlaceVerdict verdict_from(const Made& made, const Observer& observer);

/// From straight ahead, from the left, from behind and from the right: first_observer().
std::vector<PlaceVerdict> side_verdicts(const Made& made);

}  // namespace swathe
