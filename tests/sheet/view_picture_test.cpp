#include "sheet/view_picture.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <numbers>
#include <string>
#include <vector>

#include "sight/camera.hpp"
#include "support/made_examples.hpp"

namespace swathe {
namespace {

/// Where eyes look down on the machine: nothing near hides what is far.
std::vector<SpacePoint> high_eyes(const Made& made) {
  const FlatPoint center = made.frame.center();
  std::vector<SpacePoint> eyes;
  for (int k = 0; k < 12; ++k) {
    const FlatPoint at = center + 6000.0 * towards(degrees(10.0 + 30.0 * k).radians());
    eyes.push_back({at.x, at.y, 6000.0});
  }
  return eyes;
}

std::vector<ViewArea> seen_from(const Made& made, const SpacePoint& eye) {
  const sight::Scene bare = make_scene(made.wraps, {}, {});
  return view_areas(made, bare, eye, 0);
}

bool covers(const ViewArea& area, FlatPoint p) {
  plane::Region region;
  for (const plane::Path& outline : area.fill.outlines) region.push_back(flatten(outline, 1e-6));
  return plane::contains(region, p);
}

/// What is seen of the machine at a place of the picture; nothing beside it.
const ViewArea* on_top(const std::vector<ViewArea>& areas, FlatPoint p) {
  const auto area = std::find_if(areas.rbegin(), areas.rend(),
                                 [&](const ViewArea& one) { return covers(one, p); });
  return area == areas.rend() ? nullptr : &*area;
}

bool is_of(const ViewArea& area, const std::string& bumper) {
  return std::ranges::count(area.fill.shows, Subject::bumper(bumper)) > 0;
}

TEST_CASE("views: from the inside boards are seen, not cloth") {
  std::size_t backs = 0;
  for (const auto& path : test::example_jobs()) {
    const Made made = test::made_example(path);
    for (const SpacePoint& eye : high_eyes(made)) {
      const std::vector<ViewArea> areas = seen_from(made, eye);
      const Camera camera(eye, view_middle(made));
      for (const Wrap& wrap : made.wraps)
        for (std::size_t leg = 0; leg < wrap.run().sides.size(); ++leg) {
          const FrameSide& side =
              wrap.frame().sides()[static_cast<std::size_t>(wrap.run().sides[leg].side)];
          // The back of its board, in the middle.
          const RunSide& on = wrap.run().sides[leg];
          const FlatPoint plan = side.from + 0.5 * (on.board_from() + on.board_to()) * side.along;
          const SpacePoint middle{plan.x, plan.y, view_middle(made).z};
          const FlatPoint to_eye{eye.x - plan.x, eye.y - plan.y};
          if (dot(to_eye, side.outward) > -500.0) continue;
          const ViewArea* const area = on_top(areas, camera.at(middle));
          REQUIRE(area);
          ++backs;
          CAPTURE(path.filename().string());
          CAPTURE(side.name);
          CHECK(area->part == ViewPart::Back);
          CHECK(is_of(*area, wrap.run().name));
        }
    }
  }
  CHECK(backs > 200);
}

TEST_CASE("views: padding that runs on past its board is round, and in cloth all round") {
  const Made made = test::made_example(test::example("kinds/one-a-side"));
  std::size_t places = 0;
  for (const SpacePoint& eye : high_eyes(made)) {
    const std::vector<ViewArea> areas = seen_from(made, eye);
    const Camera camera(eye, view_middle(made));
    for (const Wrap& wrap : made.wraps)
      for (const bool start : {true, false}) {
        const double length = wrap.run().bare(start);
        if (length <= 0) continue;
        const double s = start ? 0.5 * length : wrap.run().length - 0.5 * length;
        const std::vector<double> heights =
            made.section.bare_heights(0.5 * std::numbers::pi / ViewDetail{}.bands);
        for (std::size_t k = 0; k + 1 < heights.size(); ++k) {
          const ClothPoint on{s, 0.5 * (heights[k] + heights[k + 1])};
          const auto at = wrap.at(on), normal = wrap.normal_at(on);
          REQUIRE((at && normal));
          if (dot(*normal, unit(eye - *at)) < 0.2) continue;  // a chord lies a little further in
          const FlatPoint p = camera.at(*at);
          std::size_t of_it = 0;
          for (const ViewArea& area : areas)
            of_it +=
                area.part == ViewPart::Cloth && is_of(area, wrap.run().name) && covers(area, p);
          CAPTURE(wrap.run().name);
          CAPTURE(on.u);
          CHECK(of_it > 0);
          ++places;
        }
      }
  }
  CHECK(places > 200);
}

}  // namespace
}  // namespace swathe
