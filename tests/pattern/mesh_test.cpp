#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>
#include <set>
#include <utility>

#include "support/drawn_jobs.hpp"
#include "support/examples.hpp"
#include "swathe/job.hpp"
#include "swathe/pattern.hpp"

// The cover in place against the pattern it is cut from: what bounds the one is drawn on the other.
namespace swathe {
namespace {

constexpr double kSame = 1e-6;  ///< mm

/// A mesh put together by its places on the cloth: panels share the points they meet at.
struct Sewn {
  std::vector<ClothPoint> cloth;
  std::vector<SpacePoint> space;
  std::vector<std::array<int, 3>> triangles;
  std::vector<std::pair<int, int>> rim;  ///< edges of one triangle alone
  int twice = 0;                         ///< edges with two triangles on the same side
};

Sewn sewn_together(const Mesh& mesh) {
  Sewn whole;
  std::map<double, std::vector<int>> rows;  // panels have their rows at the same heights
  std::vector<int> number;
  for (std::size_t k = 0; k < mesh.cloth.size(); ++k) {
    const ClothPoint p = mesh.cloth[k];
    std::vector<int>& row = rows[p.u];
    const auto here = std::ranges::find_if(row, [&](int i) {
      return std::abs(whole.cloth[static_cast<std::size_t>(i)].s - p.s) < 1e-8;
    });
    if (here != row.end()) {
      number.push_back(*here);
      continue;
    }
    number.push_back(static_cast<int>(whole.cloth.size()));
    row.push_back(number.back());
    whole.cloth.push_back(p);
    whole.space.push_back(mesh.points[k]);
  }
  std::set<std::pair<int, int>> edges;
  for (const auto& [a, b, c] : mesh.triangles) {
    const std::array<int, 3> corners = {number[static_cast<std::size_t>(a)],
                                        number[static_cast<std::size_t>(b)],
                                        number[static_cast<std::size_t>(c)]};
    whole.triangles.push_back(corners);
    for (std::size_t k = 0; k < 3; ++k) {
      whole.twice += edges.insert({corners[k], corners[(k + 1) % 3]}).second ? 0 : 1;
    }
  }
  for (const auto& [a, b] : edges)
    if (!edges.contains({b, a})) whole.rim.push_back({a, b});
  return whole;
}

/// Everything on a pattern that bounds the cover once it is on its bumper, as lines on the cloth
/// before stretch was taken out.
class Bounds {
 public:
  Bounds(const Wrap& wrap, const Pattern& pattern, const ClothKeys& cloth)
      : wrap_(wrap), map_(cloth) {
    const plane::Polygon& cut = pattern.outline;
    for (std::size_t k = 0; k < cut.size(); ++k) add(cut[k], cut[(k + 1) % cut.size()]);
    for (const plane::Path& snip : pattern.snips) add(snip);
    for (const plane::Path& leg : pattern.stitches) add(leg);
    for (const PleatLine& fold : pattern.pleats) {
      const double at = bounds(fold.path).middle().x;
      const auto corner = std::ranges::min_element(
          pattern.corners, {}, [&](const PatternCorner& c) { return std::abs(c.s - at); });
      if (!corner->filled) add(fold.path);
    }
    // Where a single noodle has no flat, legs are drawn from their first point above the front on.
    for (const PatternCorner& corner : pattern.corners)
      for (std::size_t k = 0; !corner.filled && k + 1 < corner.dart.size(); ++k) {
        const DartPoint a = corner.dart[k], b = corner.dart[k + 1];
        if (a.u != 0.0 && b.u != 0.0) continue;
        for (const double sense : {-1.0, 1.0})
          add({corner.s + sense * a.half_width, a.u}, {corner.s + sense * b.half_width, b.u});
      }
    for (const NamedLine& line : pattern.lines)
      if (line.what == NamedLine::What::EndFace) add(line.from, line.to);
  }

  double from(ClothPoint p) const {
    double nearest = 1e300;
    const FlatPoint at{p.s, p.u};
    for (const auto& [a, b] : lines_) {
      const FlatPoint along = b - a;
      const double length = dot(along, along);
      const double share = length > 0 ? std::clamp(dot(at - a, along) / length, 0.0, 1.0) : 0.0;
      nearest = std::min(nearest, apart(at, a + share * along));
    }
    // A filled corner's pattern is for a square front; in place the cover is shut along the dart of
    // the round.
    for (const RunCorner& corner : wrap_.run().corners)
      if (corner.filled)
        nearest = std::min(nearest, std::abs(std::abs(p.s - corner.s) - wrap_.dart(corner, p.u)));
    return nearest;
  }

 private:
  void add(FlatPoint a, FlatPoint b) { lines_.emplace_back(in_place(a), in_place(b)); }
  void add(const plane::Path& path) {
    const plane::Polygon points = flatten(path, 1e-3);
    for (std::size_t k = 0; k + 1 < points.size(); ++k) add(points[k], points[k + 1]);
  }

  FlatPoint in_place(FlatPoint on_pattern) const {
    const ClothPoint p = map_.to_cover(on_pattern);
    return {p.s, p.u};
  }

  const Wrap& wrap_;
  ClothMap map_;
  std::vector<std::pair<FlatPoint, FlatPoint>> lines_;
};

/// The dart as the pattern has it: its points, and chords between them.
double drawn_dart(const PatternCorner& corner, const ClothKeys& cloth, double u) {
  const ClothMap map(cloth);
  const double y = map.to_pattern({0, u}).y;
  const auto in_place = [&](double half_width) { return map.to_cover({half_width, 0}).s; };
  const auto after = std::ranges::upper_bound(corner.dart, y, {}, &DartPoint::u);
  if (after == corner.dart.begin()) return in_place(after->half_width);
  const DartPoint a = *std::prev(after), b = after == corner.dart.end() ? a : *after;
  const double share = b.u > a.u ? (y - a.u) / (b.u - a.u) : 0.0;
  return in_place(a.half_width + share * (b.half_width - a.half_width));
}

/// By how much chords are off the dart's curve at a place of an edge: the mesh's, and the
/// pattern's.
double off_curve(const Wrap& wrap, const Pattern& pattern, const ClothKeys& cloth, double from,
                 double to, double share) {
  double most = 0.0;
  for (std::size_t c = 0; c < pattern.corners.size(); ++c) {
    const RunCorner& corner = wrap.run().corners[c];
    const double u = std::lerp(from, to, share), curve = wrap.dart(corner, u);
    const double mesh = std::lerp(wrap.dart(corner, from), wrap.dart(corner, to), share);
    const double drawn = corner.filled ? curve : drawn_dart(pattern.corners[c], cloth, u);
    most = std::max(most, std::abs(mesh - curve) + std::abs(drawn - curve));
  }
  return most;
}

/// The furthest that the mesh's rim lies off the pattern's lines, beyond what chords do.
double furthest_off(const Sewn& mesh, const Wrap& wrap, const Pattern& pattern,
                    const ClothKeys& cloth) {
  const Bounds bounds(wrap, pattern, cloth);
  double furthest = 0.0;
  for (const auto& [from, to] : mesh.rim) {
    const ClothPoint a = mesh.cloth[static_cast<std::size_t>(from)];
    const ClothPoint b = mesh.cloth[static_cast<std::size_t>(to)];
    for (const double share : {0.0, 0.25, 0.5, 0.75, 1.0}) {
      const double off = bounds.from({std::lerp(a.s, b.s, share), std::lerp(a.u, b.u, share)});
      furthest = std::max(furthest, off - off_curve(wrap, pattern, cloth, a.u, b.u, share));
    }
  }
  return furthest;
}

/// Where a sewn dart's leg lies in space, by height.
std::map<double, SpacePoint> leg_of(const Sewn& mesh, const Wrap& wrap, const RunCorner& corner,
                                    double sense) {
  std::map<double, SpacePoint> leg;
  const Section& section = wrap.section();
  std::set<int> rim;
  for (const auto& [a, b] : mesh.rim) rim.insert({a, b});
  for (const int k : rim) {
    const ClothPoint p = mesh.cloth[static_cast<std::size_t>(k)];
    if (p.u > section.back_edge_top() || p.u < section.back_edge_bottom()) continue;
    const double off = sense * (p.s - corner.s);
    // The other end of the step from the seam to the flap is on the back edge too.
    if (off < -0.5 * kSame || off > wrap.dart(corner, p.u) + 0.5 * kSame) continue;
    leg[p.u] = mesh.space[static_cast<std::size_t>(k)];
  }
  return leg;
}

struct Checked {
  int meshes = 0, sewn = 0, folded = 0, bent = 0;
};

void check_mesh(const Wrap& wrap, const Pattern& pattern, const Job& job, Checked& checked) {
  const Mesh made = make_mesh(wrap, job.cloth);
  for (std::size_t k = 0; k < made.points.size(); ++k) {
    const auto at = wrap.at(made.cloth[k]);
    REQUIRE(at.has_value());
    REQUIRE(apart(*at, made.points[k]) < kSame);
  }
  const Sewn mesh = sewn_together(made);
  CHECK(mesh.twice == 0);
  CHECK(furthest_off(mesh, wrap, pattern, job.cloth) < kSame);
  double least = 1e300;
  for (const auto& [a, b, c] : mesh.triangles) {
    const ClothPoint &p = mesh.cloth[static_cast<std::size_t>(a)],
                     &q = mesh.cloth[static_cast<std::size_t>(b)],
                     &r = mesh.cloth[static_cast<std::size_t>(c)];
    least = std::min(least, (q.s - p.s) * (r.u - p.u) - (q.u - p.u) * (r.s - p.s));
  }
  CHECK(least > 0.0);  // all the same way round, and none folded on to its neighbor
  ++checked.meshes;
  for (const RunCorner& corner : wrap.run().corners) {
    checked.bent += corner.rounded() ? 1 : 0;
    if (job.cloth.relief != Relief::Sewn) {
      ++checked.folded;
      continue;
    }
    ++checked.sewn;
    const auto before = leg_of(mesh, wrap, corner, -1.0), after = leg_of(mesh, wrap, corner, 1.0);
    REQUIRE(before.size() == after.size());
    CHECK(before.begin()->first == wrap.section().back_edge_bottom());
    CHECK(before.rbegin()->first == wrap.section().back_edge_top());
    double apart_most = 0.0;
    for (const auto& [u, at] : before) {
      REQUIRE(after.contains(u));
      apart_most = std::max(apart_most, apart(at, after.at(u)));
    }
    CHECK(apart_most < kSame);
  }
}

TEST_CASE("the mesh (1) to (3): every example") {
  Checked checked;
  for (const auto& file : test::example_jobs()) {
    INFO(file.filename().string());
    const JobReading reading = read_job(test::bytes_of(file), file.string());
    REQUIRE(reading.faults.empty());
    const auto stood = test::stand(reading.job);
    REQUIRE(stood.has_value());
    for (std::size_t k = 0; k < stood->wraps.size(); ++k)
      check_mesh(stood->wraps[k], stood->patterns[k], reading.job, checked);
  }
  CHECK(checked.sewn > 0);
  CHECK(checked.folded > 0);
  CHECK(checked.bent > 0);
}

TEST_CASE("the mesh (1) to (3): drawn jobs") {
  Checked checked;
  test::for_drawn_cases("mesh", 60, [&](std::mt19937_64& rng) {
    Job job = test::drawn_job(rng);
    if (rng() % 4 == 0) job.cloth.stretch_along = test::drawn(rng, 0, 0.05);
    if (rng() % 4 == 0) job.cloth.setback = mm(test::drawn(rng, 0, 12));
    const auto stood = test::stand(job);
    if (!stood) return;
    for (std::size_t k = 0; k < stood->wraps.size(); ++k)
      check_mesh(stood->wraps[k], stood->patterns[k], job, checked);
  });
  CHECK(checked.meshes > 10);
}

TEST_CASE("the mesh (1) and (2): padding that runs on past its boards") {
  Checked checked;
  test::for_drawn_cases("mesh-bare", 40, [&](std::mt19937_64& rng) {
    const Job job = test::drawn_one_a_side(rng);
    const auto stood = test::stand(job);
    if (!stood) return;
    for (std::size_t k = 0; k < stood->wraps.size(); ++k) {
      if (stood->patterns[k].ends[0].past_board > 0)
        check_mesh(stood->wraps[k], stood->patterns[k], job, checked);
      CHECK(is_simple(stood->patterns[k].outline));
    }
  });
  CHECK(checked.meshes > 20);
}

}  // namespace
}  // namespace swathe
