#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "base/print.hpp"
#include "rules/practice.hpp"
#include "swathe/bumper.hpp"
#include "swathe/plane.hpp"

namespace swathe {
namespace {

constexpr double kTouch = 1e-6;     ///< lengths closer than this are the same place
constexpr double kStraight = 1e-6;  ///< radians: a corner that turns by less is none

const FrameSide& side_at(const Frame& frame, int side) {
  return frame.sides()[static_cast<std::size_t>(side)];
}

bool laps(const PaddingKeys& padding, const std::string& side) {
  return std::ranges::find(padding.lapping, side) != padding.lapping.end();
}

std::vector<std::string> names_of_sides(const Frame& frame) {
  std::vector<std::string> names;
  for (const FrameSide& side : frame.sides()) names.push_back(side.name);
  return names;
}

/// `["front", "27 in", "left"]`
std::string end_text(const Frame& frame, int side, Length distance, const std::string& neighbor,
                     Units units) {
  return fmt::format("[\"{}\", \"{}\", \"{}\"]", side_at(frame, side).name, exact(distance, units),
                     neighbor);
}

/// Why a bumper has too little of a side, and what to give. `needs` is its own depth beside a
/// corner that it turns, zero where it turns none.
std::string too_short_words(const Frame& frame, const RunSide& leg, const BumperKeys& keys,
                            double needs, Units units, double cloth,
                            const std::vector<OpeningKeys>& openings) {
  const auto words = [&](double value_mm) { return exact(mm(value_mm), units); };
  if (needs == 0.0)
    return fmt::format(
        "bumper \"{}\" has no length left between its ends, expected more than {} "
        "from its \"from\" to its \"to\"",
        keys.name, exact(keys.end_clearance + keys.end_clearance, units));
  const FrameSide& side = side_at(frame, leg.side);
  const double step = units == Units::Inches ? inches(1.0 / 16).mm() : 1.0;
  const double has = std::max(0.0, leg.board_to() - leg.board_from());
  std::string text = fmt::format(
      "bumper \"{}\" has only {} of side \"{}\", expected at least {}, its own depth, beside a "
      "corner",
      keys.name, words(std::floor(has / step) * step), side.name,
      words(std::ceil(needs / step - 1e-9) * step));
  const double clearance = keys.end_clearance.mm();
  // At its start it is bound by the side's far end, at the other end by its near one.
  const bool start = leg.ends_at_corner;
  const double furthest = start ? side.length_mm - needs - clearance : needs + clearance;
  const RunEnd& end = start ? keys.from : keys.to;
  const auto opening = std::ranges::find(openings, side.name, &OpeningKeys::side);
  if (std::holds_alternative<RunEnd::Opening>(end.at) && opening != openings.end()) {
    const double center = frame.along(leg.side, opening->center);
    const double beside = (start ? side.length_mm - center : center) - needs - cloth;
    const double most = std::floor(2 * beside / step + 1e-9) * step;
    return text + (most > 0
                       ? fmt::format(": the side {} is {} long, give its opening a width of at "
                                     "most {}",
                                     side.name, words(side.own_length), words(most))
                       : std::string(": give its opening a center nearer to the middle"));
  }
  const auto* from = std::get_if<FromCorner>(&end.at);
  const int other = start ? frame.next(leg.side) : frame.previous(leg.side);
  const std::string& neighbor = from ? from->neighbor : side_at(frame, other).name;
  // Away from the corner that it turns it has more.
  const bool least = frame.begins_at(leg.side, neighbor) != start;
  const double told = frame.from_corner(leg.side, furthest, neighbor).mm();
  const double value =
      (least ? std::ceil(told / step - 1e-9) : std::floor(told / step + 1e-9)) * step;
  if (value >= 0.0 && value <= side.own_length)
    text += fmt::format(": the side {} is {} long, give at {} {}", side.name,
                        words(side.own_length), least ? "least" : "most",
                        end_text(frame, leg.side, mm(value), neighbor, units));
  return text;
}

/// Where a bumper would end along its side, before end_clearance is taken off.
struct EndPlace {
  double padding = 0;
  double bare = 0;  ///< how far before that its board ends
};

/// The place of a bumper's end that its side's opening gives: so that the cover ends at the
/// opening's edge once end_clearance is taken off and cloth is on the end.
Outcome<EndPlace> place_at_opening(const Frame& frame, const Section& section, int side,
                                   const BumperKeys& keys, bool start, const std::string& key,
                                   const Places& places, const std::vector<OpeningKeys>& openings) {
  const std::string& name = side_at(frame, side).name;
  const auto opening = std::ranges::find(openings, name, &OpeningKeys::side);
  if (opening == openings.end())
    return refuse(Why::Missing,
                  fmt::format("side \"{0}\" has no opening, expected [[opening]] with side = "
                              "\"{0}\" and its width",
                              name),
                  places.of(key));
  const AlongSide gap = stretch_of(frame, side, *opening);
  const double cloth = kEndLayers * section.cloth_thickness_mm();
  const double back = cloth - keys.end_clearance.mm();
  return EndPlace{start ? gap.to + back : gap.from - back};
}

/// Refuses an end at a place of its own that looks on to the opening of its side, which says
/// already where it is.
Refusals beside_opening(const Frame& frame, int side, double x, bool start, const std::string& key,
                        const Places& places, const std::vector<OpeningKeys>& openings) {
  const std::string& name = side_at(frame, side).name;
  const auto opening = std::ranges::find(openings, name, &OpeningKeys::side);
  if (opening == openings.end()) return {};
  const double center = frame.along(side, opening->center);
  if (start ? x < center : x > center) return {};
  return {{Why::OutOfRange,
           fmt::format("the [[opening]] of side \"{0}\" says where this end is, and so does this "
                       "place: give [\"{0}\", \"opening\"], or take the [[opening]] out",
                       name),
           places.of(key)}};
}

Outcome<EndPlace> place_of_end(const Frame& frame, const Section& section,
                               const PaddingKeys& padding, const BumperKeys& keys, bool start,
                               const std::string& key, const Places& places, Units units,
                               const std::vector<OpeningKeys>& openings) {
  const RunEnd& end = start ? keys.from : keys.to;
  const std::optional<int> number = frame.side(end.side);
  if (!number)
    return refuse(Why::UnknownName,
                  fmt::format("no side is named \"{}\", expected {}", end.side,
                              quoted_choice(names_of_sides(frame))),
                  places.of(key));
  if (std::holds_alternative<RunEnd::Opening>(end.at))
    return place_at_opening(frame, section, *number, keys, start, key, places, openings);
  if (const auto place = place_on_side(end)) {
    const auto* from = std::get_if<FromCorner>(&*place);
    const Length own = mm(side_at(frame, *number).own_length);
    if (from && from->distance > own)
      return refuse(Why::OutOfRange,
                    fmt::format("{} is not on side \"{}\": the side is {} long, give at most {}",
                                exact(from->distance, units), end.side, exact(own, units),
                                end_text(frame, *number, own, from->neighbor, units)),
                    places.of(key));
    const double x = frame.along(*number, *place);
    if (Refusals twice = beside_opening(frame, *number, x, start, key, places, openings);
        !twice.empty())
      return tl::unexpected(std::move(twice));
    return EndPlace{x};
  }
  const Corner corner = frame.corner_after(start ? frame.previous(*number) : *number);
  if (std::abs(corner.turn) < kStraight)
    return refuse(
        Why::DoesNotFit,
        fmt::format(
            "side \"{}\" has no corner at this end, expected a share like \"50%\", or a distance "
            "and a neighboring side, instead of \"corner\"",
            end.side),
        places.of(key));
  if (corner.turn <= 0.0)
    return refuse(Why::ReflexCorner,
                  fmt::format("the corner at this end of side \"{}\" turns inwards, expected a "
                              "share like \"50%\", or a "
                              "distance and a neighboring side, instead of \"corner\"",
                              end.side),
                  places.of(key));
  const double thick = section.thickness_mm(), foam = section.padding_depth_mm();
  Corner::SquareEnd beyond = corner.square_end(thick, thick + foam, laps(padding, end.side));
  if (beyond.padding - beyond.board > practice::kMostBare * foam + kTouch)
    return refuse(
        Why::DoesNotFit,
        fmt::format("the padding would run {} past its board where this corner turns {} deg, and "
                    "hang, expected at most {}: give \"{}\" instead of \"corner\"",
                    measured(mm(beyond.padding - beyond.board), units),
                    plain_number(Angle::from_radians(corner.turn).degrees(), 1),
                    measured(mm(practice::kMostBare * foam), units), start ? "0%" : "100%"),
        places.of(key));
  if (beyond.padding - beyond.board < practice::kLeastBare.mm()) beyond.padding = beyond.board;
  return EndPlace{start ? -beyond.padding : side_at(frame, *number).length_mm + beyond.padding,
                  beyond.padding - beyond.board};
}

/// What a bumper takes of the plan on one of its sides, between its ends or mitre planes: where it
/// has a board from the frame outward, past the board where its padding lies alone.
std::vector<plane::Polygon> plans_of(const Frame& frame, const Section& section,
                                     const RunSide& leg) {
  const FrameSide& side = side_at(frame, leg.side);
  const double depth = section.depth_mm(), thick = section.thickness_mm();
  const double into =
      leg.starts_at_corner ? frame.corner_after(frame.previous(leg.side)).straight(depth) : 0.0;
  const double out = leg.ends_at_corner ? frame.corner_after(leg.side).straight(depth) : 0.0;
  const double from = leg.board_from(), to = leg.board_to();
  std::vector<plane::Polygon> plans = {
      {side.at(from, 0), side.at(from - into, depth), side.at(to + out, depth), side.at(to, 0)}};
  const auto bare = [&](double a, double b) {
    if (b - a > kTouch)
      plans.push_back({side.at(a, thick), side.at(a, depth), side.at(b, depth), side.at(b, thick)});
  };
  bare(leg.from_x, from);
  bare(to, leg.to_x);
  return plans;
}

double apart_along(FlatPoint p, FlatPoint a, FlatPoint b) {
  const double share = std::clamp(dot(p - a, b - a) / dot(b - a, b - a), 0.0, 1.0);
  return apart(p, a + share * (b - a));
}

/// Distance between convex outlines; negative (minus the depth) where they overlap.
double apart(const plane::Polygon& a, const plane::Polygon& b) {
  double widest_gap = -1e300, nearest = 1e300;
  for (const auto* pair : {&a, &b}) {
    const plane::Polygon& one = *pair;
    const plane::Polygon& other = pair == &a ? b : a;
    // Clockwise or counter-clockwise, a convex outline lies on one side of each of its edges.
    const double sense = area(one) < 0 ? -1.0 : 1.0;
    for (std::size_t i = 0; i < one.size(); ++i) {
      const FlatPoint from = one[i], to = one[(i + 1) % one.size()];
      const FlatPoint out = -sense * left_of(unit(to - from));
      double gap = 1e300;
      for (const FlatPoint p : other) {
        gap = std::min(gap, dot(p - from, out));
        nearest = std::min(nearest, apart_along(p, from, to));
      }
      widest_gap = std::max(widest_gap, gap);
    }
  }
  return widest_gap > kTouch ? nearest : widest_gap;
}

/// The least distance between two bumpers on one side each; negative where they overlap.
double apart(const std::vector<plane::Polygon>& one, const std::vector<plane::Polygon>& other) {
  double least = 1e300;
  for (const plane::Polygon& a : one)
    for (const plane::Polygon& b : other) least = std::min(least, apart(a, b));
  return least;
}

/// Two bumpers where they overlap most.
struct Overlap {
  double deepest = 0;  ///< negative: so deep, mm
  const RunSide *one = nullptr, *other = nullptr;
};

Overlap overlap_of(const Frame& frame, const Section& section, const Run& a, const Run& b) {
  Overlap overlap;
  for (const RunSide& one : a.sides)
    for (const RunSide& other : b.sides) {
      const double gap = apart(plans_of(frame, section, one), plans_of(frame, section, other));
      if (gap >= overlap.deepest) continue;
      overlap = {gap, &one, &other};
    }
  return overlap;
}

constexpr std::string_view kWhichWay =
    " (a bumper goes counter-clockwise seen from above, from its \"from\" to its \"to\")";

/// By how much two bumpers overlap and where, and which end to move to what place: the later one's,
/// up to where the other ends.
Refusal overlap_words(const Frame& frame, const Run& a, const Run& b, const Overlap& overlap,
                      const Places& places, Units units) {
  const std::string table = fmt::format("bumper.{}", b.keys);
  const auto words = [&](double value_mm) { return exact(mm(value_mm), units); };
  const int side = overlap.one->side;
  if (side != overlap.other->side)
    return {Why::DoesNotFit,
            fmt::format("bumper \"{}\" overlaps bumper \"{}\" by {} at the corner of \"{}\" and "
                        "\"{}\", expected a gap{}",
                        b.name, a.name, words(-overlap.deepest), side_at(frame, side).name,
                        side_at(frame, overlap.other->side).name, kWhichWay),
            places.of(table)};
  const std::string& neighbor = side_at(frame, frame.previous(side)).name;
  const double from = std::max(overlap.one->from_x, overlap.other->from_x);
  const double to = std::min(overlap.one->to_x, overlap.other->to_x);
  const auto told = [&](double x) { return frame.from_corner(side, x, neighbor); };
  std::string sentence = fmt::format(
      "bumper \"{}\" overlaps bumper \"{}\" by {} along the side {}, from {} to {} from the corner "
      "with \"{}\", expected a gap",
      b.name, a.name, words(to - from), side_at(frame, side).name, exact(told(from), units),
      exact(told(to), units), neighbor);
  // Of the later bumper the end that lies in the other, where the other goes on past it.
  const bool starts = overlap.other == &b.sides.front() && !overlap.other->starts_at_corner &&
                      overlap.one == &a.sides.back() && !overlap.one->ends_at_corner &&
                      overlap.one->from_x < overlap.other->from_x;
  const bool ends = overlap.other == &b.sides.back() && !overlap.other->ends_at_corner &&
                    overlap.one == &a.sides.front() && !overlap.one->starts_at_corner &&
                    overlap.one->to_x > overlap.other->to_x;
  const double x =
      starts ? overlap.one->to_x + a.end_clearance : overlap.one->from_x - a.end_clearance;
  const FrameSide& on = side_at(frame, side);
  if (starts != ends && x >= on.own_from && x <= on.own_from + on.own_length) {
    sentence += fmt::format(": give {} = {}", starts ? "from" : "to",
                            end_text(frame, side, told(x), neighbor, units));
    const std::string key = starts ? "from" : "to";
    return {Why::DoesNotFit,
            sentence + std::string(kWhichWay),
            places.of(table + "." + key),
            {{fmt::format("bumper.{}.{}", b.keys + 1, key),
              end_text(frame, side, told(x), neighbor, units)}}};
  }
  return {Why::DoesNotFit, sentence + std::string(kWhichWay), places.of(table)};
}

/// Along the frame's outline from the first corner, not counting what stands out beyond corners.
double round_frame(const Frame& frame, int side, double x) {
  double before = 0.0;
  for (int i = 0; i < side; ++i) before += side_at(frame, i).length_mm;
  return before + std::clamp(x, 0.0, side_at(frame, side).length_mm);
}

double perimeter(const Frame& frame) {
  return std::accumulate(frame.sides().begin(), frame.sides().end(), 0.0,
                         [](double sum, const FrameSide& side) { return sum + side.length_mm; });
}

}  // namespace

Outcome<Run> make_run(const Frame& frame, const Section& section, const PaddingKeys& padding,
                      const BumperKeys& keys, int number, const Places& places, Units units,
                      const std::vector<OpeningKeys>& openings) {
  const std::string table = fmt::format("bumper.{}", number);
  const auto from =
      place_of_end(frame, section, padding, keys, true, table + ".from", places, units, openings);
  const auto to =
      place_of_end(frame, section, padding, keys, false, table + ".to", places, units, openings);
  Refusals faults;
  for (const auto* end : {&from, &to})
    if (!*end) faults.insert(faults.end(), end->error().begin(), end->error().end());
  if (!faults.empty()) return tl::unexpected(std::move(faults));

  const double clearance = keys.end_clearance.mm();
  const double start_x = from->padding + clearance, end_x = to->padding - clearance;
  const int first = *frame.side(keys.from.side), last = *frame.side(keys.to.side);
  Run run;
  run.name = keys.name;
  run.end_clearance = clearance;
  run.keys = number;
  run.sides.push_back({first, start_x, end_x, -start_x, false, false, from->bare, 0.0});
  // A bumper that ends on the side it starts on, behind its start, goes once round the frame.
  const bool turns = first != last || to->padding <= from->padding;
  for (int side = first; turns && (run.corners.empty() || side != last); side = frame.next(side)) {
    RunSide& leg = run.sides.back();
    leg.to_x = side_at(frame, side).length_mm;
    leg.ends_at_corner = true;
    RunCorner corner{frame.corner_after(side), side, frame.next(side)};
    if (std::abs(corner.turn) < kStraight)
      return refuse(
          Why::DoesNotFit,
          fmt::format(
              "bumper \"{}\" goes round a corner between \"{}\" and \"{}\" that is straight "
              "(180 deg), expected one side there: take this corner out of frame.corners, "
              "and \"{}\" out of frame.sides",
              keys.name, side_at(frame, side).name, side_at(frame, corner.after).name,
              side_at(frame, corner.after).name),
          places.of(fmt::format("frame.corners.{}", corner.after)));
    if (padding.corner == PaddingCorner::Bent) corner.sharp_to = section.thickness_mm();
    corner.filled = padding.filled && padding.form == PaddingForm::Noodles &&
                    padding.corner == PaddingCorner::Butted;
    if (corner.turn <= 0.0)
      return refuse(
          Why::ReflexCorner,
          fmt::format("bumper \"{0}\" would turn inwards between \"{1}\" and \"{2}\", expected two "
                      "bumpers: one that ends on \"{1}\", one that begins on \"{2}\"",
                      keys.name, side_at(frame, side).name, side_at(frame, corner.after).name),
          places.of(table));
    corner.past = corner.to_middle(section.depth_mm());
    corner.s = leg.to_x + leg.s_minus_x + corner.past;
    run.corners.push_back(corner);
    run.sides.push_back({corner.after, 0.0, end_x, corner.s + corner.past, true, false});
  }
  run.sides.back().bare_end = to->bare;
  run.length = end_x + run.sides.back().s_minus_x;

  const auto too_short = [&](const RunSide& leg, const char* key) {
    const double left = leg.board_to() - leg.board_from();
    const double needs = turns ? section.depth_mm() : 3 * kTouch;
    if (left < needs - kTouch)
      faults.push_back({Why::DoesNotFit,
                        too_short_words(frame, leg, keys, turns ? needs : 0.0, units,
                                        kEndLayers * section.cloth_thickness_mm(), openings),
                        places.of(table + key)});
  };
  too_short(run.sides.front(), ".from");
  if (turns) too_short(run.sides.back(), ".to");
  if (!faults.empty()) return tl::unexpected(std::move(faults));
  return run;
}

Outcome<std::vector<double>> gaps_between(const Frame& frame, const Section& section,
                                          const std::vector<Run>& runs, const Places& places,
                                          Units units) {
  Refusals faults;
  for (std::size_t a = 0; a < runs.size(); ++a)
    for (std::size_t b = a + 1; b < runs.size(); ++b) {
      const Overlap overlap = overlap_of(frame, section, runs[a], runs[b]);
      if (overlap.deepest < -kTouch)
        faults.push_back(overlap_words(frame, runs[a], runs[b], overlap, places, units));
    }
  if (!faults.empty()) return tl::unexpected(std::move(faults));

  const double whole = perimeter(frame);
  std::vector<double> gaps;
  for (const Run& run : runs) {
    const RunSide& end = run.sides.back();
    const double here = round_frame(frame, end.side, end.to_x);
    double best = 1e300;
    for (const Run& next : runs) {
      const RunSide& start = next.sides.front();
      double gap = round_frame(frame, start.side, start.from_x) - here;
      if (gap < -kTouch || (&next == &run && gap <= 0.0)) gap += whole;
      const bool through_corner =
          start.side == frame.next(end.side) &&
          (end.to_x > side_at(frame, end.side).length_mm + kTouch || start.from_x < -kTouch);
      if (through_corner)
        gap = std::max(0.0, apart(plans_of(frame, section, end), plans_of(frame, section, start)));
      best = std::min(best, gap);
    }
    gaps.push_back(best);
  }
  return gaps;
}

}  // namespace swathe
