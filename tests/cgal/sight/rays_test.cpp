// The sweep against plain rays: CGAL's AABB tree holds a fine mesh of every cover, its end faces
// and the blind boxes, and from a viewpoint a digit is in view where no ray from a close row of
// places on its box to the eye meets a triangle. Angles are worked out from the same places.
//
// Sources: CGAL, 3D Fast Intersection and Distance Computation (AABB tree); the law of equal solid
// angles, Cai and Green, LEUKOS 5 (2009).
#include <CGAL/AABB_traits.h>
#include <CGAL/AABB_tree.h>
#include <CGAL/AABB_triangle_primitive.h>
#include <CGAL/Simple_cartesian.h>
#include <doctest/doctest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <numbers>

#include "support/drawn.hpp"
#include "support/drawn_jobs.hpp"
#include "support/sight.hpp"
#include "swathe/pattern.hpp"
#include "swathe/sight.hpp"

namespace swathe {
namespace {

using Kernel = CGAL::Simple_cartesian<double>;
using Triangles = std::vector<Kernel::Triangle_3>;
using Tree = CGAL::AABB_tree<
    CGAL::AABB_traits<Kernel, CGAL::AABB_triangle_primitive<Kernel, Triangles::const_iterator>>>;

constexpr double kTurn = 2 * std::numbers::pi;
constexpr int kViewpoints = 72;
/// What rays that start a hair off the cloth, and places that stand apart, cannot tell.
constexpr double kTolerance = 0.01;  // radians either side of a breakpoint
constexpr double kHair = 1e-4;       // mm off the cloth

Kernel::Point_3 point(const SpacePoint& p) { return {p.x, p.y, p.z}; }

/// The digit's places: close along the edges of its box, wider inside. Each a hair off the cloth.
struct Places3 {
  const Wrap* wrap;
  SightDigit box;
  std::vector<SpacePoint> at;
  SpacePoint middle, normal;
  double height = 0;  ///< from its lowest place to its highest
};

constexpr int kEdge = 48, kInside = 6;  ///< places along an edge of the box, and across it

Places3 places_of(const Wrap& wrap, const SightDigit& box, int edge = kEdge) {
  Places3 places{&wrap, box, {}, {}, {}};
  const auto add = [&](double along, double up) {
    const ClothPoint p{box.from_s + along * (box.to_s - box.from_s),
                       box.from_u + up * (box.to_u - box.from_u)};
    const SpacePoint at = *wrap.at(p), n = *wrap.normal_at(p);
    places.at.push_back({at.x + kHair * n.x, at.y + kHair * n.y, at.z + kHair * n.z});
  };
  for (int k = 0; k <= edge; ++k) {
    const double share = static_cast<double>(k) / edge;
    add(share, 0);
    add(share, 1);
    add(0, share);
    add(1, share);
  }
  for (int i = 1; i < kInside; ++i)
    for (int j = 1; j < kInside; ++j)
      add(static_cast<double>(i) / kInside, static_cast<double>(j) / kInside);
  const ClothPoint middle{0.5 * (box.from_s + box.to_s), 0.5 * (box.from_u + box.to_u)};
  places.middle = *wrap.at(middle);
  places.normal = *wrap.normal_at(middle);
  double lo = 1e300, hi = -1e300;
  for (const SpacePoint& p : places.at) {
    lo = std::min(lo, p.z);
    hi = std::max(hi, p.z);
  }
  places.height = hi - lo;
  return places;
}

/// One that has an area: CGAL takes no other.
void add_triangle(Triangles& triangles, const Kernel::Triangle_3& triangle) {
  if (!triangle.is_degenerate()) triangles.push_back(triangle);
}

void add_fan(Triangles& triangles, const std::vector<Kernel::Point_3>& round) {
  for (std::size_t k = 1; k + 1 < round.size(); ++k)
    add_triangle(triangles, {round[0], round[k], round[k + 1]});
}

void add_cover(Triangles& triangles, const Wrap& wrap, const ClothKeys& cloth) {
  const Mesh mesh = make_mesh(wrap, cloth, {400, 1e6});
  const auto corner = [&](int k) { return point(mesh.points[static_cast<std::size_t>(k)]); };
  for (const auto& [a, b, c] : mesh.triangles)
    add_triangle(triangles, {corner(a), corner(b), corner(c)});
  const Section& section = wrap.section();
  for (const double s : {0.0, wrap.run().length}) {
    std::vector<Kernel::Point_3> face;
    for (int k = 0; k <= 1600; ++k)
      face.push_back(point(
          *wrap.at({s, section.cloth_edge_bottom() +
                           (section.cloth_edge_top() - section.cloth_edge_bottom()) * k / 1600})));
    add_fan(triangles, face);
  }
}

void add_box(Triangles& triangles, const BlindKeys& box) {
  const auto at = [&](int k) {
    return Kernel::Point_3(box.lo[0].mm() + ((k & 1) != 0) * (box.hi[0] - box.lo[0]).mm(),
                           box.lo[1].mm() + ((k & 2) != 0) * (box.hi[1] - box.lo[1]).mm(),
                           box.lo[2].mm() + ((k & 4) != 0) * (box.hi[2] - box.lo[2]).mm());
  };
  constexpr int kFaces[6][4] = {{0, 1, 3, 2}, {4, 5, 7, 6}, {0, 1, 5, 4},
                                {2, 3, 7, 6}, {0, 2, 6, 4}, {1, 3, 7, 5}};
  for (const auto& face : kFaces)
    add_fan(triangles, {at(face[0]), at(face[1]), at(face[2]), at(face[3])});
}

/// The second method: everything by rays and plain trigonometry.
class Caster {
 public:
  Caster(const std::vector<Wrap>& wraps, const ClothKeys& cloth,
         const std::vector<SightNumber>& numbers, const std::vector<BlindKeys>& blind) {
    for (const Wrap& wrap : wraps) add_cover(triangles_, wrap, cloth);
    for (const BlindKeys& box : blind) add_box(triangles_, box);
    tree_.insert(triangles_.begin(), triangles_.end());
    tree_.build();
    for (const SightNumber& number : numbers) {
      auto& digits = numbers_.emplace_back();
      for (const SightDigit& box : number.digits)
        digits.push_back(places_of(wraps[static_cast<std::size_t>(box.bumper)], box));
    }
  }

  bool in_view(const Places3& digit, const SpacePoint& eye) const {
    return std::ranges::none_of(digit.at, [&](const SpacePoint& p) {
      return tree_.do_intersect(Kernel::Segment_3(point(p), point(eye)));
    });
  }

  /// A corner that reaches over an edge by less than the places stand apart is not seen from them:
  /// the edges looked along a hundred times as closely.
  bool in_view_closer(const Places3& digit, const SpacePoint& eye) const {
    return in_view(places_of(*digit.wrap, digit.box, 100 * kEdge), eye);
  }

  /// From where these digits are in view, number by number.
  Reads reads(const SpacePoint& eye, const std::vector<std::vector<bool>>& in_view) const {
    Reads best = Reads::Nothing;
    for (std::size_t n = 0; n < numbers_.size(); ++n) {
      const auto& digits = numbers_[n];
      std::size_t legible = 0, seen = 0;
      for (std::size_t d = 0; d < digits.size(); ++d) {
        const Places3& digit = digits[d];
        if (!in_view[n][d]) continue;
        ++seen;
        const double distance = apart(digit.middle, eye);
        const double cosine =
            ((eye.x - digit.middle.x) * digit.normal.x + (eye.y - digit.middle.y) * digit.normal.y +
             (eye.z - digit.middle.z) * digit.normal.z) /
            distance;
        if (cosine < std::cos(65 * kTurn / 360)) continue;
        // 3437.747 arc minutes a radian; digits are small enough for the sine to be the angle.
        legible += 3437.747 * digit.height / distance * std::sqrt(cosine) >= 15;
      }
      if (legible == digits.size()) return Reads::Number;
      if (legible > 0 && seen < digits.size()) best = Reads::Another;
    }
    return best;
  }

  const auto& numbers() const { return numbers_; }

 private:
  Triangles triangles_;
  Tree tree_;
  std::vector<std::vector<Places3>> numbers_;
};

/// A machine of one kind or another with reflex corners: its sides look at each other.
Job drawn_recess(std::mt19937_64& rng) {
  Job job;
  const double w = test::drawn(rng, 800, 1000), d = test::drawn(rng, 800, 1000);
  const double a = test::drawn(rng, 250, 300), b = w - test::drawn(rng, 250, 300);
  const double in = test::drawn(rng, 300, 450);
  job.frame.corners = {{w, d}, {b, d}, {b, d - in}, {a, d - in}, {a, d}, {0, d}, {0, 0}, {w, 0}};
  job.frame.sides = {"front right", "recess right", "recess", "recess left",
                     "front left",  "left",         "back",   "right"};
  job.boards.joint = Joint::Mitred;
  job.padding.corner = rng() % 2 == 0 ? PaddingCorner::Mitred : PaddingCorner::Bent;
  job.bumpers = {{"R", {"recess", RunEnd::Share{0.25}}, {"recess", RunEnd::Share{0.75}}, mm(3)},
                 {"A", {"left", RunEnd::Share{0.05}}, {"right", RunEnd::Share{0.95}}, mm(3)}};
  return job;
}

struct DrawnSubject {
  Job job;
  std::vector<Wrap> wraps;
  std::vector<SightNumber> numbers;
  std::vector<BlindKeys> blind;
};

std::optional<DrawnSubject> drawn_subject(std::mt19937_64& rng) {
  DrawnSubject subject;
  const bool recess = rng() % 3 == 0;
  subject.job = recess ? drawn_recess(rng) : test::drawn_job(rng);
  const auto stood = test::stand(subject.job);
  if (!stood) return std::nullopt;
  subject.wraps = stood->wraps;
  const double width = test::drawn(rng, 120, 250), height = test::drawn(rng, 80, 110);
  subject.numbers = test::numbers_on(subject.wraps, subject.job.frame.sides, height, width);
  // Boxes outside the bumpers, some over their tops, as arms and wheels would be.
  for (int k = 0; k < 3; ++k) {
    const FlatPoint center = subject.wraps.front().frame().center();
    const FlatPoint at = center + test::drawn(rng, 750, 1000) * towards(test::drawn(rng, 0, kTurn));
    const double z = test::drawn(rng, 0, 250);
    subject.blind.push_back(test::blind_box(at.x, at.y, z, at.x + test::drawn(rng, 30, 200),
                                            at.y + test::drawn(rng, 30, 200),
                                            z + test::drawn(rng, 30, 300)));
  }
  if (subject.numbers.empty()) return std::nullopt;
  return subject;
}

TEST_CASE("the sweep and cast rays agree on every viewpoint but close to a breakpoint") {
  constexpr double kEyes[3] = {700, 1219, 1600};
  int subjects = 0, looked = 0, skipped = 0, hidden = 0, closer = 0, another = 0;
  double fast = 0, slow = 0;
  const auto now = [] { return std::chrono::steady_clock::now(); };
  const auto since = [&](auto begin) {
    return std::chrono::duration<double>(now() - begin).count();
  };
  // Some drawn jobs are refused: more are drawn than are asked for.
  const int asked = std::getenv("SWATHE_DRAWN") ? std::stoi(std::getenv("SWATHE_DRAWN")) : 10;
  const int viewpoints =
      std::getenv("SWATHE_VIEWPOINTS") ? std::stoi(std::getenv("SWATHE_VIEWPOINTS")) : kViewpoints;
  // A box before a digit that bends far round, once taken to hide it, comes first.
  constexpr std::uint64_t kKept = 1709173455;
  const std::uint64_t first =
      std::getenv("SWATHE_SEED") ? std::stoull(std::getenv("SWATHE_SEED")) : std::random_device{}();
  for (std::uint64_t drawn = 0; subjects < asked; ++drawn) {
    const std::uint64_t seed = asked > 1 && drawn == 0 ? kKept : first + drawn;
    INFO("replay with SWATHE_SEED=" << seed);
    std::mt19937_64 rng(seed);
    const auto subject = drawn_subject(rng);
    if (!subject) continue;
    ++subjects;
    const Caster caster(subject->wraps, subject->job.cloth, subject->numbers, subject->blind);
    const double distance = test::drawn(rng, 3000, 18000), start = test::drawn(rng, 0, 0.08);
    auto begin = now();
    const sight::Scene scene = make_scene(subject->wraps, subject->numbers, subject->blind);
    fast += since(begin);
    for (const double eye_height : kEyes) {
      begin = now();
      const Sightlines lines(scene, mm(eye_height));
      const SightRing ring = ring_at(scene, lines, mm(distance));
      std::vector<std::vector<Sightlines::Around>> around;
      for (std::size_t n = 0; n < scene.numbers.size(); ++n) {
        auto& digits = around.emplace_back();
        for (std::size_t d = 0; d < 5; ++d) digits.push_back(lines.around(n, d, mm(distance)));
      }
      fast += since(begin);
      for (int k = 0; k < viewpoints; ++k) {
        const double bearing = start + kTurn * k / viewpoints;
        const FlatPoint plan = scene.center + distance * towards(bearing);
        const SpacePoint eye{plan.x, plan.y, eye_height};
        CAPTURE(eye_height);
        CAPTURE(bearing);
        const auto near = [&](const Bearings& set) {
          return std::ranges::any_of(set.flips(), [&](double flip) {
            return std::abs(std::remainder(flip - bearing, kTurn)) < kTolerance;
          });
        };
        bool near_any = false;
        std::vector<std::vector<bool>> in_view(scene.numbers.size(), std::vector<bool>(5));
        for (std::size_t n = 0; n < scene.numbers.size(); ++n)
          for (std::size_t d = 0; d < 5; ++d) {
            near_any = near_any || near(around[n][d].in_view) || near(around[n][d].legible);
            if (near(around[n][d].in_view)) {
              ++skipped;
              continue;
            }
            ++looked;
            CAPTURE(n);
            CAPTURE(d);
            begin = now();
            const Places3& digit = caster.numbers()[n][d];
            const bool swept = around[n][d].in_view.contains(bearing);
            bool by_rays = caster.in_view(digit, eye);
            if (by_rays && !swept) {
              by_rays = caster.in_view_closer(digit, eye);
              ++closer;
            }
            slow += since(begin);
            CHECK(swept == by_rays);
            in_view[n][d] = by_rays;
            hidden += lines.digit_from(n, d, plan).hidden_by >= 0;
          }
        if (near_any) continue;
        const double degrees_on = bearing * 360 / kTurn;
        const auto arc = std::ranges::find_if(ring.arcs, [&](const SightArc& a) {
          return (degrees_on >= a.from_deg && degrees_on <= a.to_deg) ||
                 degrees_on + 360 <= a.to_deg;
        });
        REQUIRE(arc != ring.arcs.end());
        CHECK(arc->reads == caster.reads(eye, in_view));
        another += arc->reads == Reads::Another;
      }
    }
  }
  std::printf(
      "sight: %d jobs, %d digits looked at (%d hidden, %d looked at closer, %d too near a "
      "breakpoint), "
      "%d viewpoints misled; exact sweep %.3f s, rays %.2f s, ratio %.0f\n",
      subjects, looked, hidden, closer, skipped, another, fast, slow, slow / fast);
  CHECK(skipped < looked / 10);
  CHECK(hidden > 0);
}

}  // namespace
}  // namespace swathe
