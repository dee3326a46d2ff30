#include <algorithm>
#include <cassert>
#include <cmath>

#include "pattern/bare_end.hpp"
#include "pattern/outline.hpp"
#include "swathe/pattern.hpp"

namespace swathe {
namespace {

constexpr double kSame = 1e-9;
constexpr double kRowsApart = 1e-6;
/// How far past a board's end, along the cloth, it lies on the padding alone.
constexpr double kPastBoard = 1e-7;

/// Heights on the girth at which rows of points lie: every bend of the section, and the rounds in
/// steps.
std::vector<double> rows_of(const Section& section, int round_steps) {
  std::vector<double> rows = {section.cloth_edge_bottom(), section.cloth_edge_top()};
  for (const bumper::Station& station : section.stations()) rows.push_back(station.u_mm);
  const auto round = [&](double from, double to) {
    for (int k = 0; k <= round_steps; ++k) rows.push_back(from + (to - from) * k / round_steps);
  };
  round(section.front_flat_top(), section.top_tangent());
  round(section.bottom_tangent(), section.front_flat_bottom());
  for (const double bend : section.bends())  // both ends of the small arcs at the board's edges
    rows.push_back(bend);
  std::ranges::sort(rows);
  rows.erase(
      std::unique(rows.begin(), rows.end(), [](double a, double b) { return b - a < kRowsApart; }),
      rows.end());
  return rows;
}

void add_row(std::vector<double>& rows, double u) {
  const auto near = [&](double row) { return std::abs(row - u) < kRowsApart; };
  if (std::ranges::none_of(rows, near)) rows.insert(std::ranges::upper_bound(rows, u), u);
}

/// Where a function that grows with u passes zero; from below or from above.
template <class Growing>
double zero_of(double below, double above, Growing growing) {
  for (int k = 0; k < 100; ++k) {
    const double middle = 0.5 * (below + above);
    (growing(middle) < 0.0 ? below : above) = middle;
  }
  return 0.5 * (below + above);
}

/// A corner of the cover in place: its pleats or seams are shut, its notches open.
struct ShutCorner {
  const RunCorner& corner;
  const Notch &top, &bottom;

  const Notch& notch(double u) const { return u > 0.0 ? top : bottom; }
  /// Cloth that is missing at height u, either side of the corner line.
  double missing(const Wrap& wrap, double u) const {
    const Notch& cut = notch(u);
    const double dart = wrap.dart(corner, u);
    if (cut.sewn) return cut.on_flap(u) ? cut.half_width : dart;
    return std::max(dart, cut.half_at(u));
  }
  /// How far beside the end of a seam, on the back edge, the flap begins.
  double step(const Wrap& wrap, double u) const {
    const Notch& cut = notch(u);
    const bool ends = cut.sewn && std::abs(u - cut.back_edge) < kRowsApart;
    return ends ? cut.half_width - wrap.dart(corner, u) : 0.0;
  }
  /// Rows where lines begin to bend in arcs, and where notches take over from pleats.
  void add_to(std::vector<double>& rows, const Wrap& wrap) const {
    for (const Notch* cut : {&top, &bottom}) {
      add_row(rows, cut->back_edge);  // at a filled corner not the section's
      if (corner.rounded())
        if (const auto u = wrap.section().u_at_depth(corner.sharp_to, cut == &top))
          add_row(rows, *u);
      if (!cut->sewn)
        add_row(rows, zero_of(cut->apex(), cut->back_edge,
                              [&](double u) { return cut->half_at(u) - wrap.dart(corner, u); }));
    }
  }
};

/// Rows of points, one after the other, and the triangles between them.
class Panel {
 public:
  Panel(Mesh& mesh, const Wrap& wrap, int number) : mesh_(mesh), wrap_(wrap), number_(number) {}

  /// The next row, with as many places as the one before; places that coincide share a point.
  /// Between the two rows there is cloth only from place `first` to place `last`.
  void row(double u, const std::vector<double>& places, std::size_t first, std::size_t last) {
    std::vector<int> points;
    for (std::size_t c = 0; c < places.size(); ++c)
      points.push_back(c > 0 && places[c] - places[c - 1] < kSame ? points.back()
                                                                  : point({places[c], u}));
    for (std::size_t c = first; c < last && !under_.empty(); ++c) {
      triangle(under_[c], under_[c + 1], points[c + 1]);
      triangle(under_[c], points[c + 1], points[c]);
    }
    under_ = std::move(points);
  }
  void row(double u, const std::vector<double>& places) { row(u, places, 0, places.size() - 1); }

 private:
  int point(ClothPoint p) {
    const std::optional<SpacePoint> at = wrap_.at(p);
    assert(at && "rows keep out of darts");
    mesh_.cloth.push_back(p);
    mesh_.points.push_back(*at);
    return static_cast<int>(mesh_.points.size()) - 1;
  }
  void triangle(int a, int b, int c) {
    if (a == b || b == c || c == a) return;
    mesh_.triangles.push_back({a, b, c});
    mesh_.panel.push_back(number_);
  }

  Mesh& mesh_;
  const Wrap& wrap_;
  int number_;
  std::vector<int> under_;  ///< the row before
};

void spread(std::vector<double>& places, double from, double to, int columns) {
  for (int c = 0; c <= columns; ++c) places.push_back(from + (to - from) * c / columns);
}

/// The cover of one side of the run, and the bend after it.
class Side {
 public:
  Side(const Wrap& wrap, const ClothKeys& cloth, const std::vector<ShutCorner>& corners,
       std::size_t leg)
      : wrap_(wrap),
        leg_(leg),
        first_flap_(flaps_begin(wrap, cloth, true)),
        last_flap_(flaps_begin(wrap, cloth, false)),
        before_(leg > 0 ? &corners[leg - 1] : nullptr),
        after_(leg < corners.size() ? &corners[leg] : nullptr) {}

  /// Between the bends, or the corners, or the ends.
  void add_straight(Mesh& mesh, std::vector<double> rows, double along_mm) const {
    add_meeting_rows(rows);
    const int columns = std::max(1, static_cast<int>(std::ceil(width(0.0) / along_mm)));
    Panel panel(mesh, wrap_, static_cast<int>(2 * leg_));
    bool was_flap = true;
    for (const double u : rows) {
      const LevelLine on = straight(u);
      if (on.to - on.from < -kSame) continue;
      // At a seam's end, and where flaps begin inside an end face, the row steps in to where the
      // flap begins; elsewhere it has the same place twice.
      const double all = on.to - on.from;
      const double in = std::min(all, before_ ? before_->step(wrap_, u) : step(u, true));
      const double out = std::min(all - in, after_ ? after_->step(wrap_, u) : step(u, false));
      std::vector<double> places = {on.from};
      spread(places, on.from + in, on.to - out, columns);
      places.push_back(on.to);
      const bool flap = is_flap(u), beside_seam = !flap && !was_flap;
      panel.row(u, places, beside_seam ? 0 : 1, places.size() - (beside_seam ? 1 : 2));
      was_flap = flap;
    }
  }

  /// Up to the dart's edges, this side's half and the next one's.
  void add_bend(Mesh& mesh, const std::vector<double>& rows, int columns) const {
    if (!after_ || !after_->corner.rounded()) return;
    const RunCorner& corner = after_->corner;
    for (const double sense : {-1.0, 1.0}) {
      Panel panel(mesh, wrap_, static_cast<int>(2 * leg_ + 1));
      for (const double u : rows) {
        const double d = wrap_.section().at(u).d;
        if (d < corner.sharp_to - kSame) continue;
        const double edge = corner.s + sense * wrap_.dart(corner, u);
        const double far = edge + sense * corner.half_arc(d);
        std::vector<double> places;
        spread(places, std::min(edge, far), std::max(edge, far), columns);
        panel.row(u, places);
      }
    }
  }

 private:
  /// Behind the back edges, or on one.
  bool is_flap(double u) const {
    const Section& section = wrap_.section();
    return u > section.back_edge_top() || u < section.back_edge_bottom();
  }
  /// From an end face in to the flap, on a back edge.
  double step(double u, bool start) const {
    const Section& section = wrap_.section();
    const double off =
        std::min(std::abs(u - section.back_edge_top()), std::abs(u - section.back_edge_bottom()));
    if (off >= kRowsApart) return 0.0;
    return (start ? first_flap_ : last_flap_) - wrap_.run().bare(start);
  }
  LevelLine straight(double u) const {
    const LevelLine on = wrap_.level(leg_, u);
    const Run& run = wrap_.run();
    LevelLine part{is_flap(u) ? first_flap_ : run.bare(true),
                   run.length - (is_flap(u) ? last_flap_ : run.bare(false))};
    if (before_) part.from = before_->corner.s + before_->missing(wrap_, u) + on.arc_before;
    if (after_) part.to = after_->corner.s - after_->missing(wrap_, u) - on.arc_after;
    return part;
  }
  double width(double u) const {
    const LevelLine on = straight(u);
    return on.to - on.from;
  }
  /// A side so short that its notches meet has no flap there: it ends where they do.
  void add_meeting_rows(std::vector<double>& rows) const {
    const std::vector<double> all = rows;
    for (std::size_t r = 0; r + 1 < all.size(); ++r) {
      const double lo = all[r], hi = all[r + 1];
      if (width(lo) < 0.0 && width(hi) > 0.0)
        add_row(rows, zero_of(lo, hi, [&](double u) { return width(u); }));
      if (width(lo) > 0.0 && width(hi) < 0.0)
        add_row(rows, zero_of(hi, lo, [&](double u) { return width(u); }));
    }
  }

  const Wrap& wrap_;
  std::size_t leg_;
  double first_flap_, last_flap_;  ///< where flaps begin, inside the run's end faces
  const ShutCorner *before_, *after_;
};

/// Rows at which the cover past a board's end is bounded, or bends.
void add_bare_rows(std::vector<double>& rows, const Section& section, const BareEnd& end,
                   int round_steps) {
  for (const double sign : {1.0, -1.0}) {
    for (const double u : {end.slit, section.bare_back_edge(), end.flap}) add_row(rows, sign * u);
    const double tangent = section.top_tangent();
    for (int k = 1; end.round && k < round_steps; ++k)
      add_row(rows, sign * (tangent + (end.fold - tangent) * k / round_steps));
  }
}

/// The cover past a board's end, and the step in front of the slits where it comes down to there.
void add_bare_end(Mesh& mesh, const Wrap& wrap, const std::vector<double>& rows, const BareEnd& end,
                  double along_mm) {
  const int number = end.start ? 0 : static_cast<int>(2 * (wrap.run().sides.size() - 1));
  const double past = end.board_end + (end.start ? -kPastBoard : kPastBoard);
  const double from = end.start ? end.from : past, to = end.start ? past : end.to;
  const int columns = std::max(1, static_cast<int>(std::ceil((to - from) / along_mm)));
  Panel alone(mesh, wrap, number), step(mesh, wrap, number);
  for (const double u : rows) {
    if (std::abs(u) > end.flap + kRowsApart) continue;
    std::vector<double> places;
    spread(places, from, to, columns);
    alone.row(u, places);
    if (std::abs(u) < end.slit + kRowsApart)
      step.row(u, {std::min(past, end.board_end), std::max(past, end.board_end)});
  }
}

}  // namespace

Mesh make_mesh(const Wrap& wrap, const ClothKeys& cloth, const MeshOptions& options) {
  Mesh mesh;
  mesh.name = wrap.run().name;
  const std::vector<Notch> top = notches(wrap, cloth, true), bottom = notches(wrap, cloth, false);
  std::vector<double> rows = rows_of(wrap.section(), options.round_steps);
  std::vector<ShutCorner> corners;
  for (std::size_t c = 0; c < wrap.run().corners.size(); ++c) {
    corners.push_back({wrap.run().corners[c], top[c], bottom[c]});
    corners.back().add_to(rows, wrap);
  }
  const std::vector<BareEnd> bare = bare_ends(wrap, cloth);
  for (const BareEnd& end : bare) add_bare_rows(rows, wrap.section(), end, options.round_steps);
  for (const BareEnd& end : bare) add_bare_end(mesh, wrap, rows, end, options.along_mm);
  for (std::size_t k = 0; k < wrap.run().sides.size(); ++k) {
    const Side side(wrap, cloth, corners, k);
    side.add_straight(mesh, rows, options.along_mm);
    side.add_bend(mesh, rows, options.round_steps);
  }
  return mesh;
}

}  // namespace swathe
