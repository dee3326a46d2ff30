#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "screen/canvas.hpp"
#include "screen/standing.hpp"
#include "screen/texts.hpp"
#include "sheet/view_picture.hpp"
#include "sight/camera.hpp"

namespace swathe {
namespace {

using screen_texts::say;

constexpr double kFinePx = 400;                    ///< a picture so high has finer shades
constexpr double kEdge = 2.0;                      ///< CSS mm round the machine
constexpr double kFlat = 0.25 / screen::kPxPerMm;  ///< that an outline may stray

const char* layer_of(ViewPart part) {
  switch (part) {
    case ViewPart::Floor:
      return "floor";
    case ViewPart::Back:
      return "back";
    case ViewPart::Cloth:
      return "cloth";
    case ViewPart::Digit:
      return "digit";
    case ViewPart::Blind:
      break;
  }
  return "blind";
}

/// The box, before the camera, of all that the machine covers when it is turned about its middle.
plane::Box all_round(const Made& made, const sight::Scene& scene, const SpacePoint& eye) {
  double reach = 1, high = 0;
  for (const sight::Solid& solid : scene.solids) {
    high = std::max(high, solid.top());
    for (const sight::Solid::Level& level : solid.levels)
      for (const FlatPoint p : level.plan) reach = std::max(reach, apart(p, scene.center));
  }
  const Camera camera(eye, view_middle(made));
  const FlatPoint back = unit(FlatPoint{eye.x, eye.y} - scene.center), side = left_of(back);
  plane::Box box;
  constexpr int kParts = 32;
  for (int k = 0; k < kParts; ++k) {
    const FlatPoint way = towards(degrees(360.0 * k / kParts).radians());
    const FlatPoint p = scene.center + reach * (way.x * side + way.y * back);
    for (const double z : {0.0, high}) box.cover(camera.at({p.x, p.y, z}));
  }
  return box;
}

plane::Box seen_of(const std::vector<ViewArea>& areas) {
  plane::Box box;
  for (const ViewArea& area : areas)
    for (const plane::Path& path : area.fill.outlines)
      for (const plane::Vertex& vertex : path.vertices) box.cover(vertex.at);
  return box;
}

std::string observer_words(const Made& made, const Observer& from) {
  const double turn = std::remainder(from.bearing.degrees(), 360.0);
  return say("view.words", {{"color", made.job.cloth.colors[from.color].name},
                            {"distance", walked(from.distance, made.job.units)},
                            {"height", exact(from.eye_height, made.job.units)},
                            {"turn", plain_number(turn < -0.5 ? turn + 360 : std::abs(turn), 0)}});
}

}  // namespace

ScreenPicture screen_view(const Made& made, const Font& labels, const Observer& observer,
                          const ScreenOptions& options, ViewSize size) {
  screen::Canvas canvas(labels, screen::within_limits(options));
  const Observer from = kept(made, observer);
  const SpacePoint eye = eye_of(made, from);
  const sight::Scene bare =
      made.sight ? sight::Scene{} : make_scene(made.wraps, {}, made.job.sight.blind);
  const sight::Scene& scene = made.sight ? made.sight->scene : bare;
  std::vector<ViewArea> areas =
      view_areas(made, scene, eye, from.color, {canvas.height_px() < kFinePx ? 4 : 6, 1});
  const plane::Box seen = size == ViewSize::Largest ? seen_of(areas) : all_round(made, scene, eye);
  const plane::Box box = canvas.box().grown(-kEdge);
  const double scale = std::min(box.width() / seen.width(), box.height() / seen.height());
  const FlatPoint move = box.middle() - scale * seen.middle();
  for (ViewArea& area : areas) {
    Drawing& onto = canvas.next_layer(layer_of(area.part), {1, 1, true});
    const Showing part(onto, area.fill.shows);
    std::vector<plane::Path> outlines;
    for (const plane::Path& path : area.fill.outlines) {
      plane::Polygon polygon;
      for (const plane::Vertex& vertex : path.vertices) polygon.push_back(scale * vertex.at + move);
      outlines.push_back(closed_path(thinned(polygon, kFlat)));
    }
    canvas.area_on(onto, area.fill.color, std::move(outlines));
  }
  return std::move(canvas).drawn(
      "view", say("view.title"),
      say("view.sentence",
          {{"words", observer_words(made, from)}, {"verdict", verdict_from(made, from).words}}));
}

}  // namespace swathe
