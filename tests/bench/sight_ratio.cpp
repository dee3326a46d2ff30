// What an observer reads, on the example: 3 600 viewpoints on each circle of the job, one by one,
// and the exact sweep that says the same in arcs. Beside them the slow way: a ray from a row of
// places on each digit's box to the eye, held against every triangle of the covers. It is run on
// fewer viewpoints and reckoned up, since it takes minutes.
#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numbers>

#include "example.hpp"
#include "least_seconds.hpp"
#include "ratios.hpp"
#include "swathe/pattern.hpp"
#include "swathe/sight.hpp"

namespace swathe::bench {
namespace {

constexpr int kViewpoints = 3600;

/// Whether a number is read from there.
bool reads_number(const Sightlines& lines, FlatPoint eye) {
  return std::ranges::any_of(lines.seen_from(eye),
                             [](const NumberSeen& seen) { return seen.whole(); });
}

/// Every viewpoint of every circle.
std::size_t walk(const sight::Scene& scene, const SightKeys& keys) {
  std::size_t reads = 0;
  for (const Length eye : keys.eye_height) {
    const Sightlines lines(scene, eye, {keys.least_angle, kWidestObliquity});
    for (const Length distance : keys.distance)
      for (int k = 0; k < kViewpoints; ++k)
        reads += reads_number(lines, scene.center + distance.mm() * towards(2 * std::numbers::pi *
                                                                            k / kViewpoints))
                     ? 1
                     : 0;
  }
  return reads;
}

/// Source: Moeller and Trumbore, Fast, minimum storage ray/triangle intersection (1997).
bool meets(const SpacePoint& from, const SpacePoint& way, const SpacePoint& a, const SpacePoint& b,
           const SpacePoint& c) {
  const SpacePoint ab = b - a, ac = c - a, p = cross(way, ac);
  const double det = dot(ab, p);
  if (std::abs(det) < 1e-12) return false;
  const SpacePoint off = from - a, q = cross(off, ab);
  const double u = dot(off, p) / det, v = dot(way, q) / det, t = dot(ac, q) / det;
  return u >= 0 && v >= 0 && u + v <= 1 && t > 0 && t < 1;
}

/// Seconds for as many viewpoints, by plain rays at plain triangles.
double slow_seconds(const Made& made, int viewpoints) {
  std::vector<Mesh> meshes;
  for (const Wrap& wrap : made.wraps) meshes.push_back(make_mesh(wrap, made.job.cloth));
  const sight::Scene& scene = made.sight->scene;
  std::size_t hidden = 0;
  const double seconds = least_seconds(1, [&] {
    for (int k = 0; k < viewpoints; ++k) {
      const FlatPoint plan = scene.center + 6096.0 * towards(2 * std::numbers::pi * k / viewpoints);
      const SpacePoint eye{plan.x, plan.y, 1600};
      for (const NumberInSpace& number : scene.numbers)
        for (const DigitInSpace& digit : number.digits)
          for (const auto* edge : {&digit.left, &digit.right})
            for (SpacePoint from : *edge) {
              from = {from.x + 0.01 * digit.normal.x, from.y + 0.01 * digit.normal.y, from.z};
              const SpacePoint way = eye - from;
              for (const Mesh& mesh : meshes)
                for (const auto& [a, b, c] : mesh.triangles)
                  hidden += meets(from, way, mesh.points[static_cast<std::size_t>(a)],
                                  mesh.points[static_cast<std::size_t>(b)],
                                  mesh.points[static_cast<std::size_t>(c)])
                                ? 1
                                : 0;
            }
    }
  });
  if (hidden == 0) std::abort();
  return seconds;
}

}  // namespace

std::vector<Ratio> sight_ratios() {
  const Made made = made_example();
  const sight::Scene& scene = made.sight->scene;
  const SightKeys& keys = made.job.sight;
  std::size_t reads = 0;
  const double walked = least_seconds(5, [&] { reads += walk(scene, keys); });
  const double swept = least_seconds(5, [&] { reads += sweep(scene, keys).rings.size(); });
  if (reads == 0) std::abort();
  constexpr int kSlow = 36;
  const double circles = static_cast<double>(keys.distance.size() * keys.eye_height.size());
  const double slow = slow_seconds(made, kSlow) * kViewpoints / kSlow * circles;
  return {{"sight, 3 600 viewpoints a circle", walked, "rays at every triangle", slow},
          {"sight, the same as exact arcs", swept, "rays at every triangle", slow}};
}

}  // namespace swathe::bench
