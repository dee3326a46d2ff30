#include "swathe/pattern.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/workshop.hpp"
#include "job/key_path.hpp"
#include "job/limits.hpp"
#include "pattern/bare_end.hpp"
#include "pattern/fastening.hpp"
#include "pattern/filled_corner.hpp"
#include "pattern/outline.hpp"
#include "pattern/stretch.hpp"
#include "rules/practice.hpp"

namespace swathe {
namespace {

constexpr int kDartPoints = 48;  ///< above the front, and below

bool among(const std::vector<std::string>& names, const std::string& name) {
  return std::ranges::find(names, name) != names.end();
}

const std::string& side_name(const Wrap& wrap, int side) {
  return wrap.frame().sides()[static_cast<std::size_t>(side)].name;
}

/// u from the front flat's end to the back edge: closer together on the round, where the dart
/// curves. A filled corner has no round but that of the cloth's own bend.
std::vector<double> dart_heights(const Section& section, bool filled, bool above) {
  const double front = above ? section.front_flat_top() : section.front_flat_bottom();
  const double tangent = above ? section.top_tangent() : section.bottom_tangent();
  const double back = above ? section.back_edge_top() : section.back_edge_bottom();
  std::vector<double> heights;
  const int round = (filled ? 1 : 3) * kDartPoints / 4;
  for (int k = 0; k < round; ++k) heights.push_back(front + (tangent - front) * k / round);
  for (int k = 0; k <= kDartPoints - round; ++k)
    heights.push_back(tangent + (back - tangent) * k / (kDartPoints - round));
  // The cloth turns round the board's back edge in a quarter circle about as thick as itself.
  const double turn = 0.25 * std::numbers::pi * section.cloth_thickness_mm();
  heights.push_back(above ? back - turn : back + turn);
  for (const bumper::Station& station :
       section.stations())  // bends of the section are bends of the dart
    if ((above && station.u_mm > tangent && station.u_mm < back) ||
        (!above && station.u_mm < tangent && station.u_mm > back))
      heights.push_back(station.u_mm);
  std::ranges::sort(heights, [&](double a, double b) { return above ? a < b : a > b; });
  heights.erase(std::unique(heights.begin(), heights.end()), heights.end());
  return heights;
}

PatternCorner corner_of(const Wrap& wrap, const RunCorner& corner, const Job& job, const Notch& top,
                        const Notch& bottom) {
  PatternCorner on;
  on.side_before = side_name(wrap, corner.before);
  on.side_after = side_name(wrap, corner.after);
  on.s = corner.s;
  on.turn_deg = Angle::from_radians(corner.turn).degrees();
  on.past = corner.past;
  on.filled = corner.filled;
  std::vector<double> heights = dart_heights(section_at(wrap, corner), corner.filled, false);
  std::ranges::reverse(heights);
  for (const double u : dart_heights(section_at(wrap, corner), corner.filled, true))
    heights.push_back(u);
  for (const double u : heights) on.dart.push_back({u, dart_on_pattern(wrap, corner, u)});
  on.notch_top = top.outline();
  on.notch_bottom = bottom.outline();
  on.sewn = top.sewn && bottom.sewn;
  const bool butted = job.padding.corner == PaddingCorner::Butted;
  if (butted) on.square_end_allowance = wrap.section().square_end_allowance_mm();
  // Where nothing laps, every other side from the first takes the pleats.
  const std::vector<std::string> lapping = butted ? job.padding.lapping
                                           : job.boards.joint == Joint::Lapped
                                               ? job.boards.lapping
                                               : every_other(job.frame.sides);
  on.fold_towards_before = among(lapping, on.side_before) || !among(lapping, on.side_after);
  return on;
}

/// The dart's edges as fold lines, from the front flat to where the notch takes over.
void add_pleats(std::vector<PleatLine>& pleats, const PatternCorner& corner, const Notch& notch,
                bool above) {
  std::vector<FlatPoint> edge;
  for (const DartPoint& p : corner.dart) {
    if ((p.u > 0) != above) continue;
    edge.push_back({p.half_width, p.u});
  }
  if (!above) std::ranges::reverse(edge);
  // The notch's side and the dart's edge are both straight over the board's top: cut the pleat
  // where they meet.
  const auto cut = [&](FlatPoint p) {
    const double share = (p.y - notch.apex()) / (notch.back_edge - notch.apex());
    return share * notch.half_width - p.x;  // positive where the notch has cut the pleat away
  };
  std::vector<FlatPoint> kept;
  for (std::size_t k = 0; k < edge.size(); ++k) {
    if (k > 0 && cut(edge[k]) > 0.0) {
      const double a = cut(edge[k - 1]), b = cut(edge[k]);
      kept.push_back(edge[k - 1] + (-a / (b - a)) * (edge[k] - edge[k - 1]));
      break;
    }
    kept.push_back(edge[k]);
  }
  for (const double side : {-1.0, 1.0}) {
    std::vector<FlatPoint> points;
    for (const FlatPoint p : kept) points.push_back({corner.s + side * p.x, p.y});
    pleats.push_back({open_path(points), {corner.fold_towards_before ? -1.0 : 1.0, 0.0}});
  }
}

/// The dart's edges as stitch lines, with ticks across both that are sewn together.
void add_seam(Pattern& pattern, const PatternCorner& corner, bool above, double tangent) {
  constexpr double kTick = 6.0;
  std::vector<FlatPoint> edge;
  for (const DartPoint& p : corner.dart)
    if ((p.u > 0) == above) edge.push_back({p.half_width, p.u});
  if (!above) std::ranges::reverse(edge);
  for (const double side : {-1.0, 1.0}) {
    std::vector<FlatPoint> points;
    for (const FlatPoint p : edge) points.push_back({corner.s + side * p.x, p.y});
    pattern.stitches.push_back(open_path(points));
    for (const double at : {tangent, 0.5 * (tangent + edge.back().y)}) {
      const auto after =
          std::ranges::find_if(edge, [&](FlatPoint p) { return above ? p.y >= at : p.y <= at; });
      if (after == edge.end() || after == edge.begin()) continue;
      const FlatPoint a = *std::prev(after), b = *after;
      const FlatPoint on = a + ((at - a.y) / (b.y - a.y)) * (b - a);
      const FlatPoint across = 0.5 * kTick * left_of(unit(b - a));
      const FlatPoint from = on - across, to = on + across;
      pattern.seam_marks.push_back(
          plane::line({corner.s + side * from.x, from.y}, {corner.s + side * to.x, to.y}));
    }
  }
}

std::vector<NamedLine> named_lines(const Wrap& wrap, const ClothKeys& cloth,
                                   const std::vector<Notch>& top,
                                   const std::vector<Notch>& bottom) {
  using What = NamedLine::What;
  const Section& section = wrap.section();
  const double length = wrap.run().length;
  std::vector<NamedLine> lines;
  const auto along = [&](What what, const char* name, double u) {
    lines.push_back({what, name, {0.0, u}, {length, u}});
  };
  if (section.front_flat_top() > 0.0) {
    along(What::FrontFlat, "front flat ends", section.front_flat_top());
    along(What::FrontFlat, "front flat ends", section.front_flat_bottom());
  }
  along(What::TopTangent, "round ends", section.top_tangent());
  along(What::TopTangent, "round ends", section.bottom_tangent());
  const std::vector<double> bends = bends_of_taken(wrap, cloth);
  for (const auto* cuts : {&top, &bottom}) {
    const double out = cuts == &top ? 1.0 : -1.0;
    const double back = cuts == &top ? section.back_edge_top() : section.back_edge_bottom();
    const auto along_board = [&](What what, const char* name, const Span& span, double from_edge) {
      const auto at = [&](double s) {
        return FlatPoint{s, back + out * (from_edge + taken_at_corners(wrap, cloth, s))};
      };
      double from = span.from;
      for (const double s : bends)
        if (s > from && s < span.to) {
          lines.push_back({what, name, at(from), at(s)});
          from = s;
        }
      lines.push_back({what, name, at(from), at(span.to)});
    };
    for (const Span& span : flap_spans(wrap, cloth, *cuts)) {
      along_board(What::BackEdge, "board's edge", span, 0.0);
      if (cloth.fixing == Fixing::Staples)
        along_board(What::StapleLine, "staple line", span, cloth.staple_line.mm());
    }
  }
  for (const bool start : {true, false}) {
    const double s = start ? 0.0 : length;
    const auto bare = bare_end(wrap, cloth, start);
    lines.push_back({What::EndFace,
                     "end",
                     {s, bare ? -bare->fold : section.back_edge_bottom()},
                     {s, bare ? bare->fold : section.back_edge_top()}});
  }
  for (NamedLine& line : bare_lines(wrap, cloth)) lines.push_back(std::move(line));
  for (std::size_t c = 0; c < wrap.run().corners.size(); ++c)
    lines.push_back(
        {What::CornerLine, "corner", {top[c].s, bottom[c].apex()}, {top[c].s, top[c].apex()}});
  return lines;
}

/// Flaps give up the square-end allowance at butted corners and must still hold: staples with cloth
/// beyond them, or the whole of a strip.
Refusals allowance_faults(const Wrap& wrap, const Job& job) {
  if (job.padding.corner != PaddingCorner::Butted || wrap.run().corners.empty()) return {};
  const bool stapled = job.cloth.fixing == Fixing::Staples;
  const Length flap = stapled ? job.cloth.flap : job.cloth.hook_and_loop.flap;
  const Length needs =
      stapled ? job.cloth.staple_line + practice::kHoldBeyondStaple : job.cloth.hook_and_loop.strip;
  const Length allowance = mm(wrap.section().square_end_allowance_mm());
  if (flap - allowance >= needs) return {};
  const auto given = [&](Length length) { return quoted_text(exact(length, job.units)); };
  const char* const flap_key = stapled ? "cloth.flap" : "cloth.hook_and_loop.flap";
  const char* const held_key = stapled ? "cloth.staple_line" : "cloth.hook_and_loop.strip";
  const Length least = on_tape(needs + allowance, job.units, Rounding::Up);
  // Flaps that meet on the board's back cannot be wider: then it is what they hold that gives way.
  const Length widest = on_tape(0.5 * job.boards.height, job.units, Rounding::Down);
  const Length beyond = stapled ? practice::kHoldBeyondStaple : Length();
  const Length most = on_tape(widest - allowance - beyond, job.units, Rounding::Down);
  std::string expected = fmt::format("a flap of at least {}", exact(least, job.units));
  std::vector<KeyChange> mend = {{flap_key, given(least)}};
  if (least > widest && most > Length()) {
    expected = fmt::format("a flap of {} and {} of at most {}", exact(widest, job.units), held_key,
                           exact(most, job.units));
    mend = {{flap_key, given(widest)}, {held_key, given(most)}};
  } else if (least > widest) {
    expected = "padding.corner = \"mitred\" or \"bent\", where none is lost";
    mend.clear();
  }
  return {{Why::DoesNotFit,
           fmt::format("at corners a flap of {} loses {} to the square ends of the padding, and is "
                       "too narrow for its {}, expected {}",
                       exact(flap, job.units), dimension_with_unit(allowance, job.units),
                       stapled ? "staples" : "strip", expected),
           job.places.of(flap_key), std::move(mend)}};
}

/// A sewn dart on butted padding would be lopsided: straight on the lapping side, with all its
/// width on the butting one.
Refusals relief_faults(const Job& job) {
  if (job.cloth.relief != Relief::Sewn || job.padding.corner != PaddingCorner::Butted) return {};
  return {{Why::NotSupported,
           "corners cannot be sewn over butted padding, expected cloth.relief = \"fold\", or "
           "padding.corner = \"mitred\" or \"bent\"",
           job.places.of("cloth.relief")}};
}

/// Tongues that are held by hook-and-loop need the bare board. On a short one they would leave no
/// flap, and nothing would hold the cover.
Refusals flap_faults(const Wrap& wrap, const Job& job) {
  if (job.cloth.fixing != Fixing::HookAndLoop) return {};
  const double least = practice::kStapleCrown.mm();  // as short as a strip may be
  const auto holds = [&](bool top) {
    return std::ranges::any_of(flap_spans(wrap, job.cloth, notches(wrap, job.cloth, top)),
                               [&](const Span& span) { return span.length() >= least; });
  };
  if (holds(true) && holds(false)) return {};
  const Run& run = wrap.run();
  const double board = run.length - run.bare(true) - run.bare(false);
  const Length step = job.units == Units::Inches ? inches(1.0 / 16) : mm(1);
  const Length reach = std::floor(mm(0.5 * (board - least) - kFlapShort) / step) * step;
  const bool shorter = run.corners.empty() && reach >= kFlap.least;
  return {{Why::DoesNotFit,
           fmt::format("tongues that reach {} on to the back of bumper \"{}\" leave no flap "
                       "between them, expected {}cloth.fixing = \"staples\"",
                       exact(job.cloth.end_reach, job.units), run.name,
                       shorter ? fmt::format("at most {}, or ", exact(reach, job.units)) : ""),
           job.places.of("cloth.end_reach")}};
}

/// A tongue holds by the whole width of its strip, which lies on the board's back.
Refusals tongue_strip_faults(const Job& job) {
  const ClothKeys& cloth = job.cloth;
  const Length strip = cloth.hook_and_loop.strip;
  if (cloth.fixing != Fixing::HookAndLoop || strip <= cloth.end_reach) return {};
  const Length step = job.units == Units::Inches ? inches(1.0 / 16) : mm(1);
  const std::string least = exact(std::ceil(strip / step - 1e-9) * step, job.units);
  return {{Why::DoesNotFit,
           fmt::format("the hook-and-loop is {} wide, and the tongues that it holds reach only {} "
                       "on to the board's back, expected at most {}, or cloth.end_reach of at "
                       "least {}",
                       exact(strip, job.units), exact(cloth.end_reach, job.units),
                       exact(cloth.end_reach, job.units), least),
           job.places.of("cloth.hook_and_loop.strip"),
           {{"cloth.end_reach", "\"" + least + "\""}}}};
}

}  // namespace

Outcome<Pattern> make_pattern(const Wrap& wrap, const Job& job) {
  Refusals faults = allowance_faults(wrap, job);
  for (const Refusal& fault : relief_faults(job)) faults.push_back(fault);
  for (const Refusal& fault : bare_faults(wrap, job)) faults.push_back(fault);
  for (const Refusal& fault : flap_faults(wrap, job)) faults.push_back(fault);
  for (const Refusal& fault : tongue_strip_faults(job)) faults.push_back(fault);
  auto brackets = lay_brackets(wrap, job);
  if (!brackets) faults.insert(faults.end(), brackets.error().begin(), brackets.error().end());
  if (!faults.empty()) return tl::unexpected(std::move(faults));

  const std::vector<Notch> top = notches(wrap, job.cloth, true);
  const std::vector<Notch> bottom = notches(wrap, job.cloth, false);
  Pattern pattern;
  pattern.bumper = wrap.run().name;
  pattern.outline = cut_outline(wrap, job.cloth);
  pattern.snips = end_snips(wrap, job.cloth);
  for (std::size_t c = 0; c < wrap.run().corners.size(); ++c) {
    pattern.corners.push_back(corner_of(wrap, wrap.run().corners[c], job, top[c], bottom[c]));
    if (job.cloth.relief == Relief::Sewn) {
      add_seam(pattern, pattern.corners.back(), true, wrap.section().top_tangent());
      add_seam(pattern, pattern.corners.back(), false, wrap.section().bottom_tangent());
    } else {
      add_pleats(pattern.pleats, pattern.corners.back(), top[c], true);
      add_pleats(pattern.pleats, pattern.corners.back(), bottom[c], false);
    }
  }
  pattern.lines = named_lines(wrap, job.cloth, top, bottom);
  pattern.brackets = *brackets;
  for (const BracketOnPattern& bracket : pattern.brackets)
    for (const plane::Path& window : bracket.windows)
      pattern.holes.push_back(flatten(window, 0.01));
  pattern.hems = hem_folds(wrap, job.cloth);
  pattern.strips = lay_strips(wrap, job.cloth, pattern.brackets, job.brackets);
  pattern.staples = lay_staples(wrap, job.cloth, pattern.brackets, job.brackets);
  pattern.marks = lay_match_marks(wrap, job.cloth);
  pattern.ends = {end_of(wrap, job.cloth, true), end_of(wrap, job.cloth, false)};
  pattern.length = wrap.run().length;
  pattern.surface_area = wrap.surface_area();
  take_out_stretch(pattern, ClothMap(job.cloth));
  const plane::Box box = bounds(pattern.outline);
  pattern.cloth_length = box.width();
  pattern.cloth_width = box.height();
  pattern.cloth_area = area(pattern.outline);
  return pattern;
}

std::vector<ClearStretch> clear_stretches(const Wrap& wrap, double half_height_mm) {
  const Section& section = wrap.section();
  std::vector<ClearStretch> stretches;
  if (half_height_mm >= std::min(section.back_edge_top(), -section.back_edge_bottom()))
    return stretches;
  // Past its board's end the cloth lies as it does before it only as far as it lies on the padding.
  const Run& run = wrap.run();
  const bool on_padding =
      half_height_mm <= std::min(section.top_tangent(), -section.bottom_tangent());
  const double first = on_padding ? 0.0 : run.bare(true);
  const double last = on_padding ? run.length : run.length - run.bare(false);
  for (std::size_t k = 0; k < run.sides.size(); ++k) {
    const LevelLine over = wrap.level(k, half_height_mm), under = wrap.level(k, -half_height_mm);
    const double from = std::max({over.from, under.from, first});
    const double to = std::min({over.to, under.to, last});
    if (to > from) stretches.push_back({side_name(wrap, run.sides[k].side), from, to});
  }
  return stretches;
}

}  // namespace swathe
