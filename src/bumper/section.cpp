#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <memory>
#include <numbers>
#include <optional>

#include "base/maths.hpp"
#include "base/workshop.hpp"
#include "rules/practice.hpp"
#include "swathe/bumper.hpp"

namespace swathe {
namespace {

constexpr double kPi = std::numbers::pi;
/// A bend smaller than this is no bend: the board's edge lies on the cloth's straight line.
constexpr double kNoBend = 1e-9;
using practice::kHoldBeyondStaple;

struct Parts {
  std::vector<plane::Disc> padding;  ///< as it is, seen from the front
  /// Where its front edges are rounded by more than half its depth: the same, seen from behind.
  std::vector<plane::Disc> behind;
  /// The same room filled to its box: a square-cut end seen from its side, or hollows filled.
  std::vector<plane::Disc> squared;
  double depth = 0, top = 0, bottom = 0;
};

Parts parts_of(const BoardKeys& boards, const PaddingKeys& padding) {
  const double t = boards.thickness.mm(), middle = 0.5 * boards.height.mm();
  Parts parts;
  double half = 0.0;
  if (padding.form == PaddingForm::Noodles) {
    const double diameter = padding.diameter.mm();
    for (int k = 0; k < padding.stack; ++k)
      parts.padding.push_back(
          {{t + 0.5 * diameter, middle + (k - 0.5 * (padding.stack - 1)) * diameter},
           0.5 * diameter});
    parts.depth = diameter;
    half = 0.5 * padding.stack * diameter;
  } else {
    const double depth = padding.depth.mm(), rho = padding.edge_radius.mm();
    half = 0.5 * padding.height.mm();
    parts.padding = {{{t, middle - half}, 0.0},
                     {{t + depth - rho, middle - half + rho}, rho},
                     {{t + depth - rho, middle + half - rho}, rho},
                     {{t, middle + half}, 0.0}};
    if (rho > 0.5 * depth)
      parts.behind = {{{t, middle - half}, 0.0},
                      {{t + depth - rho, middle - half}, 0.0},
                      {{t + depth - rho, middle + half}, 0.0},
                      {{t, middle + half}, 0.0}};
    parts.depth = depth;
  }
  parts.top = middle + half;
  parts.bottom = middle - half;
  parts.squared = {{{t, parts.bottom}, 0.0},
                   {{t + parts.depth, parts.bottom}, 0.0},
                   {{t + parts.depth, parts.top}, 0.0},
                   {{t, parts.top}, 0.0}};
  return parts;
}

std::vector<plane::HullPiece> cloth_round(double t, double height, std::vector<plane::Disc> padding,
                                          double tau) {
  for (const FlatPoint corner : {FlatPoint{0, 0}, {t, 0}, {t, height}, {0, height}})
    padding.push_back({corner, 0.0});
  for (plane::Disc& disc : padding) disc.radius += 0.5 * tau;
  return hull_of_discs(padding);
}

/// The heading at a piece's start, from -pi/2 (the turn off the back at the bottom) to 3 pi/2.
double heading_of(const plane::HullPiece& piece) {
  return piece.heading > 1.5 * kPi - kNoBend ? piece.heading - 2 * kPi : piece.heading;
}

/// The part of an arc on which the heading is between two.
std::optional<plane::HullPiece> clipped(const plane::HullPiece& arc, double heading, double from,
                                        double to) {
  const double start = std::max(heading, from), end = std::min(heading + arc.turn, to);
  if (end - start <= kNoBend) return std::nullopt;
  const auto at = [&](double way) {
    return arc.center + arc.radius * plane::direction(way - 0.5 * kPi);
  };
  return plane::HullPiece{at(start),  at(end),   start, end - start, arc.radius * (end - start),
                          arc.center, arc.radius};
}

/// The way round whose front is that of one hull, and whose back that of another: each from
/// straight back to straight forth, where the two have their tangents in common.
std::vector<plane::HullPiece> front_and_back(const std::vector<plane::HullPiece>& front,
                                             const std::vector<plane::HullPiece>& back) {
  std::vector<plane::HullPiece> hull;
  const auto add_arc = [&](const plane::HullPiece& arc, double heading, double from, double to) {
    if (const auto part = clipped(arc, heading, from, to)) hull.push_back(*part);
  };
  for (const plane::HullPiece& piece : front) {
    if (piece.turn > 0.0)
      add_arc(piece, heading_of(piece), 0.0, kPi);
    else if (piece.heading > kNoBend && piece.heading < kPi - kNoBend)
      hull.push_back(piece);
  }
  // A hull begins with the arc on which it comes to the front: what of it is behind is the last.
  for (std::size_t k = 1; k <= back.size(); ++k) {
    const plane::HullPiece& piece = back[k % back.size()];
    if (piece.turn > 0.0)
      add_arc(piece, piece.heading, kPi, 2 * kPi);
    else if (piece.heading <= kNoBend || piece.heading >= kPi - kNoBend)
      hull.push_back(piece);
  }
  return hull;
}

/// The straight piece down the back of the board.
bool is_back(const plane::HullPiece& piece) {
  return piece.turn == 0.0 && std::abs(piece.heading - 1.5 * kPi) < kNoBend;
}

/// What the flaps are cut to: a hook-and-loop cover's hem is folded under beyond them.
Length cut_flap(const ClothKeys& cloth) {
  return cloth.fixing == Fixing::Staples ? cloth.flap
                                         : cloth.hook_and_loop.flap + cloth.hook_and_loop.hem;
}

Refusals faults_of(const BoardKeys& boards, const PaddingKeys& padding, const ClothKeys& cloth,
                   const Places& places, Units units) {
  Refusals faults;
  const auto fault = [&](const char* key, std::string sentence, std::vector<KeyChange> mend = {}) {
    faults.push_back({Why::DoesNotFit, std::move(sentence), places.of(key), std::move(mend)});
  };
  const auto to = [&](const char* key, Length length, Rounding rounding = Rounding::Down) {
    return std::vector<KeyChange>{
        {key, fmt::format("\"{}\"", exact(on_tape(length, units, rounding), units))}};
  };
  const bool stapled = cloth.fixing == Fixing::Staples;
  const Length flap = stapled ? cloth.flap : cloth.hook_and_loop.flap;
  const char* flap_key = stapled ? "cloth.flap" : "cloth.hook_and_loop.flap";
  if (flap + flap > boards.height)
    fault(flap_key,
          fmt::format("flaps of {} meet on the back of a board {} high, expected at most {}",
                      exact(flap, units), exact(boards.height, units),
                      exact(boards.height / 2, units)),
          to(flap_key, boards.height / 2));
  if (cloth.cut_clear >= boards.thickness)
    fault("cloth.cut_clear",
          fmt::format("cuts that stay {} behind the padding would lie behind a board {} thick, "
                      "expected less than {}",
                      exact(cloth.cut_clear, units), exact(boards.thickness, units),
                      exact(boards.thickness, units)));
  if (!stapled && cloth.hook_and_loop.strip > flap)
    fault("cloth.hook_and_loop.strip",
          fmt::format("a strip {} wide does not fit on a flap of {}, expected at most {}",
                      exact(cloth.hook_and_loop.strip, units), exact(flap, units),
                      exact(flap, units)),
          to("cloth.hook_and_loop.strip", flap));
  if (stapled && cloth.staple_line + kHoldBeyondStaple > cloth.flap)
    fault("cloth.staple_line",
          fmt::format(
              "staples {} from the board's edge do not hold a flap of {}, expected cloth.flap "
              "of at least {}",
              exact(cloth.staple_line, units), exact(cloth.flap, units),
              exact(cloth.staple_line + kHoldBeyondStaple, units)),
          to("cloth.flap", cloth.staple_line + kHoldBeyondStaple, Rounding::Up));
  if (padding.form == PaddingForm::Block &&
      padding.edge_radius > std::min(padding.depth, padding.height / 2))
    fault("padding.edge_radius",
          fmt::format("edges rounded to {} do not fit a block {} deep and {} high, expected at "
                      "most {}",
                      exact(padding.edge_radius, units), exact(padding.depth, units),
                      exact(padding.height, units),
                      exact(std::min(padding.depth, padding.height / 2), units)),
          to("padding.edge_radius", std::min(padding.depth, padding.height / 2)));
  return faults;
}

}  // namespace

Outcome<Section> Section::make(const BoardKeys& boards, const PaddingKeys& padding,
                               const ClothKeys& cloth, const Places& places, Units units) {
  if (Refusals faults = faults_of(boards, padding, cloth, places, units); !faults.empty())
    return tl::unexpected(std::move(faults));

  Section section;
  const Parts parts = parts_of(boards, padding);
  section.thickness_ = boards.thickness.mm();
  section.height_ = boards.height.mm();
  section.padding_depth_ = parts.depth;
  section.padding_top_ = parts.top;
  section.padding_bottom_ = parts.bottom;
  section.tau_ = cloth.thickness.mm();
  section.flap_ = cut_flap(cloth).mm();
  Section square = section;
  section.follow(parts.padding, parts.behind);
  section.lay_bare(padding);
  square.follow(parts.squared);
  section.square_end_ = 0.5 * (square.closed_girth_ - section.closed_girth_);
  section.square_ = std::make_shared<const Section>(std::move(square));
  return section;
}

/// The cloth round the board and this padding; `behind`: what it is seen from behind, where that is
/// something else.
void Section::follow(const std::vector<plane::Disc>& padding,
                     const std::vector<plane::Disc>& behind) {
  hull_ = cloth_round(thickness_, height_, padding, tau_);
  if (!behind.empty())
    hull_ = front_and_back(hull_, cloth_round(thickness_, height_, behind, tau_));
  closed_girth_ = girth(hull_);
  // The chain runs from the end of the back round the bottom, up the front and over the top.
  auto back = std::ranges::find_if(hull_, is_back);
  assert(back != hull_.end());
  std::vector<plane::HullPiece> chain(back + 1, hull_.end());
  chain.insert(chain.end(), hull_.begin(), back);

  // u = 0 lies where the heading is straight up: the middle of the front flat, or the foremost
  // point.
  double walked = 0.0, front = 0.0, half_flat = 0.0;
  for (const plane::HullPiece& piece : chain) {
    const double heading = heading_of(piece);
    const bool up = std::abs(heading - 0.5 * kPi) < kNoBend;
    if (piece.turn == 0.0 && up) {
      half_flat = 0.5 * piece.length;
      front = walked + half_flat;
    } else if (piece.turn > 0.0 && half_flat == 0.0 && heading < 0.5 * kPi - kNoBend &&
               heading + piece.turn >= 0.5 * kPi) {
      front = walked + piece.radius * (0.5 * kPi - heading);
    }
    walked += piece.length;
  }
  double u = -front;
  back_bottom_ = u;
  for (const plane::HullPiece& piece : chain) {
    if (piece.length > 0.0) chain_.push_back({piece, u});
    u += piece.length;
  }
  back_top_ = u;
  front_top_ = half_flat;
  depth_ = at(0.0).d;
  name_stations(chain);
}

void Section::lay_bare(const PaddingKeys& padding) {
  const double grown = 0.5 * tau_, middle = 0.5 * height_, half = padding_top_ - middle;
  FlatPoint at{depth_, middle};
  double u = 0.0, heading = 0.5 * kPi;
  const auto flat = [&](double length) {
    const FlatPoint to = at + length * plane::direction(heading);
    if (length > 0.0) bare_.push_back({{at, to, heading, 0.0, length, {}, 0.0}, u});
    at = to;
    u += length;
  };
  const auto round = [&](double radius, double turn) {
    const FlatPoint center = at + radius * plane::direction(heading + 0.5 * kPi);
    const FlatPoint to = center + radius * plane::direction(heading + turn - 0.5 * kPi);
    const double length = radius * turn;
    if (length > 0.0) bare_.push_back({{at, to, heading, turn, length, center, radius}, u});
    at = to;
    u += length;
    heading += turn;
  };
  if (padding.form == PaddingForm::Noodles) {
    const double radius = 0.5 * padding_depth_;
    flat(half - radius);
    round(radius + grown, kPi);
  } else {
    const double rho = padding.edge_radius.mm();
    flat(half - rho);
    round(rho + grown, 0.5 * kPi);
    flat(padding_depth_ - rho);
    round(grown, 0.5 * kPi);
  }
  bare_back_edge_ = u;
  flat(at.y - middle);
  bare_half_girth_ = u;
}

void Section::name_stations(const std::vector<plane::HullPiece>& chain) {
  top_tangent_ = front_top_;
  bottom_tangent_ = -front_top_;
  const auto station = [&](const char* name, double u) {
    const SectionPoint p = at(u);
    stations_.push_back({name, u, p.d, p.z});
  };
  station("bottom cloth edge", cloth_edge_bottom());
  station("bottom back edge", back_bottom_);
  double u = back_bottom_;
  for (const plane::HullPiece& piece : chain) {
    const bool bend = piece.turn > kNoBend;
    const bool board = bend && std::abs(piece.center.x - thickness_) < kNoBend &&
                       (piece.center.y == 0.0 || piece.center.y == height_);
    const bool round =
        bend && piece.radius > 0.5 * tau_ + kNoBend;  // its center may be on the board
    const bool padding = bend && piece.center.x > thickness_ + (round ? -kNoBend : kNoBend);
    if (board)
      station(piece.center.y == 0.0 ? "bottom board front edge" : "board front edge",
              u + 0.5 * piece.length);
    if (padding && u < 0.0) {
      bottom_tangent_ = u;
      station("bottom tangent", u);
      if (front_top_ > 0.0) station("bottom front-flat end", -front_top_);
      station("front middle", 0.0);
      if (front_top_ > 0.0) station("front-flat end", front_top_);
    }
    u += piece.length;
    if (padding && u > 0.0) {
      top_tangent_ = u;
      station("top tangent", u);
    }
  }
  station("back edge", back_top_);
  station("cloth edge", cloth_edge_top());
}

SectionPoint Section::at(double u) const {
  if (u >= back_top_) return {-0.5 * tau_, height_ - (u - back_top_), kPi};
  if (u <= back_bottom_) return {-0.5 * tau_, back_bottom_ - u, -kPi};
  return on_stretch(chain_, u);
}

SectionPoint Section::bare_at(double u) const {
  SectionPoint p = on_stretch(bare_, std::abs(u));
  p.tilt = std::abs(p.tilt);  // down the back it is half a turn, either way round
  if (u < 0.0) p = {p.d, height_ - p.z, -p.tilt};
  return p;
}

SectionPoint Section::on_stretch(const std::vector<Stretch>& chain, double u) {
  const auto after = std::ranges::upper_bound(chain, u, {}, &Stretch::u_from);
  const Stretch& on = *std::prev(after);
  const double along = u - on.u_from;
  const plane::HullPiece& piece = on.piece;
  const double from = heading_of(piece);
  if (piece.turn == 0.0) {
    const FlatPoint p = piece.from + along * plane::direction(piece.heading);
    return {p.x, p.y, from - 0.5 * kPi};
  }
  const double heading = from + along / piece.radius;
  const FlatPoint p = piece.center + piece.radius * plane::direction(heading - 0.5 * kPi);
  return {p.x, p.y, heading - 0.5 * kPi};
}

std::optional<double> Section::u_at_depth(double d, bool above) const {
  constexpr double kSlack = 1e-9;
  if (d > depth_ + kSlack || d < -0.5 * tau_ - kSlack) return std::nullopt;
  // d falls all the way from the front flat to the back edge, so one halving search serves every
  // piece.
  double near = above ? front_top_ : -front_top_;
  double far = above ? back_top_ : back_bottom_;
  for (int k = 0; k < 200 && std::abs(far - near) > 1e-12 * closed_girth_; ++k) {
    const double middle = 0.5 * (near + far);
    (at(middle).d > d ? near : far) = middle;
  }
  return 0.5 * (near + far);
}

std::vector<double> Section::bends() const {
  std::vector<double> ends;
  for (const auto& [piece, u_from] : chain_)
    if (piece.turn != 0.0) ends.insert(ends.end(), {u_from, u_from + piece.length});
  return ends;
}

std::vector<double> Section::heights(double from, double to, double most_turn) const {
  std::vector<double> heights = {from};
  std::vector<double> ends = bends();
  std::ranges::sort(ends);
  ends.push_back(to);
  for (const double end : ends) {
    if (end <= heights.back() || end > to) continue;
    const double begin = heights.back();
    const double turn = std::abs(at(end).tilt - at(begin).tilt);
    const int steps = std::max(1, static_cast<int>(std::ceil(turn / most_turn - 1e-6)));
    for (int k = 1; k <= steps; ++k) heights.push_back(begin + (end - begin) * k / steps);
  }
  return heights;
}

std::vector<double> Section::bare_heights(double most_turn) const {
  std::vector<double> heights = {-bare_half_girth_};
  const auto add = [&](double u) {
    if (u > heights.back()) heights.push_back(u);
  };
  const auto steps = [&](const Stretch& stretch) {
    return std::max(1, static_cast<int>(std::ceil(stretch.piece.turn / most_turn - 1e-6)));
  };
  const auto along = [&](const Stretch& stretch, int k) {
    return stretch.u_from + stretch.piece.length * k / steps(stretch);
  };
  for (auto stretch = bare_.rbegin(); stretch != bare_.rend(); ++stretch)
    for (int k = steps(*stretch); k >= 0; --k) add(-along(*stretch, k));
  for (const Stretch& stretch : bare_)
    for (int k = 0; k <= steps(stretch); ++k) add(along(stretch, k));
  return heights;
}

double Section::short_of_depth(double d) const {
  const double top = u_at_depth(std::min(d, depth_), true).value_or(back_top_);
  const double bottom = u_at_depth(std::min(d, depth_), false).value_or(back_bottom_);
  double sum = 0.0;
  const auto add = [&](const plane::HullPiece& piece, double u_from, double from, double to) {
    from = std::clamp(from, u_from, u_from + piece.length);
    to = std::clamp(to, u_from, u_from + piece.length);
    if (to <= from) return;
    const double a = at(from).d, b = at(to).d;
    double under = 0.5 * (a + b) * (to - from);
    if (piece.turn != 0.0) {
      const double start = heading_of(piece) - 0.5 * kPi, r = piece.radius;
      under =
          piece.center.x * (to - from) +
          r * r * (maths::sin(start + (to - u_from) / r) - maths::sin(start + (from - u_from) / r));
    }
    sum += d * (to - from) - under;
  };
  for (const auto& [piece, u_from] : chain_) {
    add(piece, u_from, back_bottom_, bottom);
    add(piece, u_from, top, back_top_);
  }
  return sum;
}

/// u of the place on a stretch that is nearest to a point.
double Section::foot_on(const Stretch& stretch, FlatPoint p) {
  const plane::HullPiece& piece = stretch.piece;
  double along = 0.0;
  if (piece.turn == 0.0) {
    along = dot(p - piece.from, plane::direction(piece.heading));
  } else {
    const FlatPoint out = p - piece.center;
    double angle = maths::atan2(out.y, out.x) + 0.5 * kPi - heading_of(piece);
    angle = std::remainder(angle - 0.5 * piece.turn, 2 * kPi) + 0.5 * piece.turn;
    along = piece.radius * angle;
  }
  return stretch.u_from + std::clamp(along, 0.0, piece.length);
}

Section::Foot Section::bare_nearest(double d, double z) const {
  const double sense = z < 0.5 * height_ ? -1.0 : 1.0;
  const FlatPoint p{d, sense < 0.0 ? height_ - z : z};
  Foot best{0.0, 1e300};
  for (const Stretch& stretch : bare_) {
    const double u = foot_on(stretch, p);
    const SectionPoint q = bare_at(u);
    const double off = maths::hypot(q.d - p.x, q.z - p.y);
    if (off < best.off_mm) best = {sense * u, off};
  }
  return best;
}

Section::Foot Section::nearest(double d, double z) const {
  const FlatPoint p{d, z};
  Foot best{0.0, 1e300};
  const auto offer = [&](double u) {
    const SectionPoint q = at(u);
    const double off = maths::hypot(q.d - d, q.z - z);
    if (off < best.off_mm) best = {u, off};
  };
  for (const Stretch& stretch : chain_) offer(foot_on(stretch, p));
  offer(back_top_ + std::clamp(height_ - z, 0.0, flap_));
  offer(back_bottom_ - std::clamp(z, 0.0, flap_));
  return best;
}

}  // namespace swathe
