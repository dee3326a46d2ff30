#include "place/place.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "base/maths.hpp"
#include "base/print.hpp"
#include "base/workshop.hpp"
#include "job/key_path.hpp"
#include "place/advice.hpp"
#include "place/choose_places.hpp"
#include "place/split.hpp"
#include "swathe/pattern.hpp"

namespace swathe {
namespace {

constexpr double kTouch = 1e-6;  // mm: how much shorter rounding may make a stretch

/// The longest of these rooms on a side, of one bumper or of any (-1).
std::optional<NumeralRoom> longest_on(const std::vector<NumeralRoom>& rooms,
                                      const std::string& side,
                                      std::optional<int> bumper = std::nullopt) {
  std::optional<NumeralRoom> best;
  for (const NumeralRoom& room : rooms) {
    if (room.side != side || (bumper && room.bumper != *bumper)) continue;
    if (!best || room.length() > best->length() + kTouch) best = room;
  }
  return best;
}

bool covers(const Wrap& wrap, const std::string& side) {
  const auto number = wrap.frame().side(side);
  const auto& sides = wrap.run().sides;
  return number && std::any_of(sides.begin(), sides.end(),
                               [&](const RunSide& s) { return s.side == *number; });
}

/// A number, or a part of it that keeps its level in the whole, at its place on the cloth.
PlacedNumeral placed_at(const SetNumber& number, double level, const Section& section,
                        const NumeralRoom& room, double center_s) {
  PlacedNumeral placed;
  placed.text = number.text;
  placed.bumper = room.bumper;
  placed.side = room.side;
  placed.center_s = center_s;
  placed.width = number.ink.width();
  placed.height = number.height;
  placed.largest_space = number.largest_space;
  placed.least_space = number.least_space;
  const FlatPoint move{center_s - number.ink.middle().x, -level};
  placed.seen_height = std::numeric_limits<double>::infinity();
  for (const PlacedDigit& digit : number.digits) {
    const FlatPoint origin = digit.origin + move;
    placed.digits.push_back({digit.digit, origin});
    const plane::Box& ink = number.shape(digit.digit).ink;
    const SeenBand seen = seen_band(section, origin.y + ink.lo.y, origin.y + ink.hi.y);
    placed.seen_height = std::min(placed.seen_height, seen.height);
    placed.tilt_deg = std::max(placed.tilt_deg, seen.tilt_deg);
  }
  return placed;
}

/// The smallest angle between two neighboring bearings, degrees; 360 for one alone.
double least_turn(std::vector<double> bearings) {
  std::sort(bearings.begin(), bearings.end());
  double least = bearings.front() + 360 - bearings.back();
  for (std::size_t i = 1; i < bearings.size(); ++i) {
    least = std::min(least, bearings[i] - bearings[i - 1]);
  }
  return least;
}

/// Places numbers one after another and collects those that do not fit.
class Placer {
 public:
  explicit Placer(const PlaceInput& input)
      : in_(input),
        rooms_(numeral_rooms(input.wraps, half_band(input.number.ink.height(), input.keys))),
        gaps_(split_rooms(input.wraps, rooms_)) {}

  Outcome<PlacedNumbers> run() && {
    if (!in_.keys.places.empty()) {
      by_hand();
    } else if (in_.keys.sides) {
      on_sides(*in_.keys.sides);
    } else {
      on_chosen_sides();
    }
    if (!refusals_.empty()) return tl::unexpected<Refusals>(std::move(refusals_));
    return std::move(result_);
  }

 private:
  double needs() const { return needed_for(in_.number.ink.width(), in_.keys); }
  bool fits(const NumeralRoom& room) const { return room.length() >= needs() - kTouch; }

  void by_hand() {
    for (std::size_t i = 0; i < in_.keys.places.size(); ++i) {
      place_ = static_cast<int>(i) + 1;
      const NumeralPlaceKeys& place = in_.keys.places[i];
      const std::string key = fmt::format("numerals.place.{}", i);
      const auto bumper = bumper_of(place, key);
      if (!bumper) continue;
      if (place.split > 0) {
        split_by_hand(*bumper, place.side, static_cast<std::size_t>(place.split), key + ".split");
      } else if (place.center) {
        at_center(*bumper, place.side, *place.center, key + ".center");
      } else {
        in_the_middle(longest_on(rooms_, place.side, *bumper), place.side, *bumper, key);
      }
    }
  }

  /// The bumper that a place by hand is on: the one it names, or the only one that can be meant.
  /// Nothing, and a refusal, where there is none or more than one.
  std::optional<int> bumper_of(const NumeralPlaceKeys& place, const std::string& key) {
    std::vector<int> on_side;
    for (std::size_t k = 0; k < in_.wraps.size(); ++k) {
      if (!covers(in_.wraps[k], place.side)) continue;
      on_side.push_back(static_cast<int>(k));
      if (in_.wraps[k].run().name == place.bumper) return on_side.back();
    }
    if (!place.bumper.empty()) {
      refuse_unnamed(place, key);
      return std::nullopt;
    }
    if (on_side.empty()) {
      refuse_at(
          key + ".side", Why::UnknownName,
          fmt::format("no bumper is on side \"{}\", expected a side that has one", place.side));
      return std::nullopt;
    }
    if (on_side.size() == 1) return on_side.front();
    if (place.center && place.split == 0) return bumper_at(place, on_side);
    if (place.split > 0) {
      std::vector<int> before_gap;
      for (const SplitRoom& gap : gaps_)
        if (gap.left.side == place.side) before_gap.push_back(gap.left.bumper);
      if (before_gap.size() == 1) return before_gap.front();
    }
    std::vector<std::string> names;
    for (const int k : on_side) names.push_back(in_.wraps[static_cast<std::size_t>(k)].run().name);
    refuse_at(key, Why::Missing,
              fmt::format("{} bumpers are on side \"{}\", expected also which one gets the number: "
                          "bumper = {}",
                          names.size(), place.side, quoted_choice(names)));
    return std::nullopt;
  }

  /// Of the bumpers on a side the one at whose stretch the center lies; else the nearest one.
  int bumper_at(const NumeralPlaceKeys& place, const std::vector<int>& on_side) const {
    int nearest = on_side.front();
    double least = std::numeric_limits<double>::infinity();
    for (const int k : on_side) {
      const Wrap& wrap = in_.wraps[static_cast<std::size_t>(k)];
      const int side = *wrap.frame().side(place.side);
      const double x = wrap.frame().along(side, *place.center);
      for (const RunSide& leg : wrap.run().sides) {
        const double off = std::max({leg.from_x - x, x - leg.to_x, 0.0});
        if (leg.side != side || off >= least) continue;
        least = off;
        nearest = k;
      }
    }
    return nearest;
  }

  void refuse_unnamed(const NumeralPlaceKeys& place, const std::string& key) {
    const auto wrap = std::find_if(in_.wraps.begin(), in_.wraps.end(),
                                   [&](const Wrap& w) { return w.run().name == place.bumper; });
    if (wrap == in_.wraps.end())
      refuse_at(key + ".bumper", Why::UnknownName,
                fmt::format("no bumper is named \"{}\", expected {}", place.bumper,
                            quoted_choice(bumper_names())));
    else
      refuse_at(key + ".side", Why::UnknownName,
                fmt::format("bumper \"{}\" is not on side \"{}\", expected {}", place.bumper,
                            place.side, quoted_choice(sides_of(*wrap))));
  }

  std::vector<std::string> bumper_names() const {
    std::vector<std::string> names;
    for (const Wrap& wrap : in_.wraps) names.push_back(wrap.run().name);
    return names;
  }

  std::vector<std::string> frame_sides() const {
    std::vector<std::string> names;
    for (const FrameSide& side : in_.wraps.front().frame().sides()) names.push_back(side.name);
    return names;
  }

  static std::vector<std::string> sides_of(const Wrap& wrap) {
    std::vector<std::string> names;
    for (const RunSide& leg : wrap.run().sides)
      names.push_back(wrap.frame().sides()[static_cast<std::size_t>(leg.side)].name);
    return names;
  }

  void on_sides(const std::vector<std::string>& sides) {
    for (std::size_t i = 0; i < sides.size(); ++i) {
      place_ = static_cast<int>(i) + 1;
      const std::string key = fmt::format("numerals.sides.{}", i);
      if (!in_.wraps.empty() && !in_.wraps.front().frame().side(sides[i])) {
        refuse_at(key, Why::UnknownName,
                  fmt::format("the frame has no side \"{}\", expected {}", sides[i],
                              quoted_choice(frame_sides())));
        continue;
      }
      const auto longest = longest_on(rooms_, sides[i]);
      if (longest && !fits(*longest)) {
        if (const auto gap = best_gap({}, sides[i])) {
          put_split(gap->split, *gap->room, key);
          continue;
        }
      }
      in_the_middle(longest, sides[i], std::nullopt, key);
    }
  }

  void on_chosen_sides() {
    const std::vector<NumeralRoom> chosen =
        choose_by_sight(rooms_that_fit(rooms_, needs()), in_.number, in_.least_places, in_.wraps,
                        in_.sight, in_.demand);
    for (const NumeralRoom& room : chosen) {
      ++place_;
      in_the_middle(room, room.side, std::nullopt, "numerals");
    }
    // Where it fits whole on too few sides, it is split on others.
    const int enough = std::max(1, in_.least_places);
    std::vector<NumeralRoom> used = chosen;
    while (static_cast<int>(used.size()) < enough) {
      const auto gap = best_gap(used, std::nullopt);
      if (!gap) break;
      ++place_;
      put_split(gap->split, *gap->room, "numerals");
      used.push_back(gap->room->left);
    }
    // If too few sides have room, the longest of the others say what is missing.
    std::vector<NumeralRoom> others;
    for (const NumeralRoom& room : rooms_) {
      const auto same_side = [&](const NumeralRoom& r) { return r.side == room.side; };
      if (std::any_of(used.begin(), used.end(), same_side)) continue;
      if (std::any_of(others.begin(), others.end(), same_side)) continue;
      others.push_back(*longest_on(rooms_, room.side));
    }
    std::stable_sort(others.begin(), others.end(), [](auto& p, auto& q) {
      return std::round(p.length() * 1e3) > std::round(q.length() * 1e3);
    });
    for (std::size_t i = 0; i < others.size(); ++i) {
      if (static_cast<int>(used.size() + i) >= enough) break;
      ++place_;
      in_the_middle(others[i], others[i].side, std::nullopt, "numerals");
    }
  }

  /// In the middle of `room`, the longest of the side (of one bumper, where one is named).
  void in_the_middle(const std::optional<NumeralRoom>& room, const std::string& side,
                     std::optional<int> bumper, const std::string& key) {
    if (room && fits(*room)) return put(*room, 0.5 * (room->from_s + room->to_s), key);
    const int on = room ? room->bumper : bumper.value_or(first_on(side));
    miss(on, side, room ? room->length() : 0.0,
         on < 0 ? Advice{"choose another side: no bumper is on this one"}
                : advice_for_width(in_, side, bumper));
  }

  /// At this place of the side, where it fits.
  void at_center(int bumper, const std::string& side, const SidePlace& place,
                 const std::string& key) {
    const double half = 0.5 * needs();
    const Frame& frame = in_.wraps[static_cast<std::size_t>(bumper)].frame();
    const double x = frame.along(*frame.side(side), place);
    double has = 0;
    std::optional<NumeralRoom> wide_enough;
    for (const NumeralRoom& room : rooms_) {
      if (room.bumper != bumper || room.side != side) continue;
      const double center = x + leg_of(room).s_minus_x;
      has = std::max(has, 2 * std::min(center - room.from_s, room.to_s - center));
      if (2 * half > room.length() + kTouch) continue;
      if (center - half >= room.from_s - kTouch && center + half <= room.to_s + kTouch) {
        return put(room, center, key);
      }
      if (!wide_enough || room.length() > wide_enough->length()) wide_enough = room;
    }
    miss(bumper, side, std::max(0.0, has),
         wide_enough ? centers_in(*wide_enough, place) : advice_for_width(in_, side, bumper));
  }

  /// A key of the place that is being filled, as the job's writer counts.
  std::string key_here(const char* name) const {
    return fmt::format("numerals.place.{}.{}", place_, name);
  }

  /// "set numerals.place.1.center to at least ["8 in", "front"] and at most ["12 in", "front"]",
  /// from the corner that the job names.
  Advice centers_in(const NumeralRoom& room, const SidePlace& place) const {
    const Frame& frame = wrap_of(room).frame();
    const RunSide& leg = leg_of(room);
    const auto* told = std::get_if<FromCorner>(&place);
    const std::string& corner =
        told ? told->neighbor
             : frame.sides()[static_cast<std::size_t>(frame.previous(leg.side))].name;
    const double half = 0.5 * needs();
    Length from = frame.from_corner(leg.side, room.from_s + half - leg.s_minus_x, corner);
    Length to = frame.from_corner(leg.side, room.to_s - half - leg.s_minus_x, corner);
    if (from > to) std::swap(from, to);
    from = on_tape(from, in_.units, Rounding::Up);
    to = on_tape(to, in_.units, Rounding::Down);
    if (from > to || from < Length())
      return {fmt::format("leave {} out: then it stands in the middle of the free cloth",
                          key_here("center"))};
    const auto text = [&](Length length) {
      return fmt::format("[{}, {}]", quoted_text(exact(length, in_.units)), quoted_text(corner));
    };
    return {fmt::format("set {} to at least {} and at most {}", key_here("center"), text(from),
                        text(to)),
            {{key_here("center"), text(from)}}};
  }

  /// A gap across which the number may be split, and how.
  struct Gap {
    const SplitRoom* room;
    Split split;
  };

  /// The gap on a side, or on any unused side, that points furthest away from the used ones.
  std::optional<Gap> best_gap(const std::vector<NumeralRoom>& used,
                              const std::optional<std::string>& side) const {
    if (!in_.may_split) return std::nullopt;
    std::optional<Gap> best;
    double best_turn = -1;
    for (const SplitRoom& room : gaps_) {
      if (side && room.left.side != *side) continue;
      std::vector<double> bearings = {room.left.bearing_deg};
      bool free = true;
      for (const NumeralRoom& other : used) {
        free = free && other.side != room.left.side;
        bearings.push_back(other.bearing_deg);
      }
      if (!free) continue;
      auto split = split_number(in_.number, room, margin_of(in_.keys), in_.most_space);
      if (!split) continue;
      const double turn = std::round(least_turn(bearings));
      if (turn <= best_turn) continue;
      best = Gap{&room, *std::move(split)};
      best_turn = turn;
    }
    return best;
  }

  void split_by_hand(int bumper, const std::string& side, std::size_t digits,
                     const std::string& key) {
    const auto gap = std::ranges::find_if(gaps_, [&](const SplitRoom& room) {
      return room.left.side == side && room.left.bumper == bumper;
    });
    if (digits >= in_.number.digits.size()) {
      return refuse_at(key, Why::OutOfRange,
                       fmt::format("split is {}, expected fewer than the {} digits of the number",
                                   digits, in_.number.digits.size()));
    }
    if (gap == gaps_.end()) {
      return miss(bumper, side, 0,
                  {fmt::format("leave {} out, or choose another side: no other bumper follows on "
                               "this one",
                               key_here("split"))});
    }
    const double margin = margin_of(in_.keys);
    const Split split = split_at(in_.number, *gap, digits, margin);
    if (swathe::fits(split, *gap, margin)) return put_split(split, *gap, key);
    const auto other = split_number(in_.number, *gap, margin, std::nullopt);
    miss(bumper, side, gap->left.length() + gap->right.length(),
         other ? Advice{fmt::format("set {} to {}", key_here("split"), other->left.digits.size()),
                        {{key_here("split"), std::to_string(other->left.digits.size())}}}
               : Advice{fmt::format("leave {} out, or choose another side: no split fits here",
                                    key_here("split"))});
  }

  void put_split(const Split& split, const SplitRoom& room, const std::string& key) {
    if (!is_free(room.left, split.left_center_s, split.left.ink.width(), key) ||
        !is_free(room.right, split.right_center_s, split.right.ink.width(), key))
      return;
    const double level = in_.number.ink.middle().y;
    PlacedNumeral left =
        placed_at(split.left, level, wrap_of(room.left).section(), room.left, split.left_center_s);
    PlacedNumeral right = placed_at(split.right, level, wrap_of(room.right).section(), room.right,
                                    split.right_center_s);
    left.showing = right.showing = showings_++;
    left.place = right.place = place_;
    left.whole = right.whole = false;
    right.from = static_cast<int>(split.left.digits.size());
    right.space_across = split.space;
    result_.placed.push_back(std::move(left));
    result_.placed.push_back(std::move(right));
  }

  /// Whether nothing stands there yet; if something does, this is refused at `key`.
  bool is_free(const NumeralRoom& room, double center_s, double width, const std::string& key) {
    for (const PlacedNumeral& other : result_.placed) {
      if (other.bumper != room.bumper) continue;
      if (std::abs(other.center_s - center_s) >= 0.5 * (other.width + width)) continue;
      refuse_at(
          key, Why::DoesNotFit,
          fmt::format("two numbers would lie over each other on the {} side of bumper \"{}\", "
                      "expected them further apart",
                      room.side, wrap_of(room).run().name));
      return false;
    }
    return true;
  }

  void put(const NumeralRoom& room, double center_s, const std::string& key) {
    if (!is_free(room, center_s, in_.number.ink.width(), key)) return;
    PlacedNumeral placed =
        placed_at(in_.number, in_.number.ink.middle().y, wrap_of(room).section(), room, center_s);
    placed.showing = showings_++;
    placed.place = place_;
    result_.placed.push_back(std::move(placed));
  }

  void miss(int bumper, const std::string& side, double has, Advice advice) {
    result_.misfits.push_back(
        {bumper, side, needs(), has, std::move(advice.words), place_, std::move(advice.mend)});
  }

  void refuse_at(const std::string& key, Why why, std::string sentence) {
    refusals_.push_back({why, std::move(sentence), in_.places.of(key)});
  }

  /// The first bumper on a side; -1 where there is none.
  int first_on(const std::string& side) const {
    const auto wrap = std::find_if(in_.wraps.begin(), in_.wraps.end(),
                                   [&](const Wrap& w) { return covers(w, side); });
    return wrap == in_.wraps.end() ? -1 : static_cast<int>(wrap - in_.wraps.begin());
  }

  const Wrap& wrap_of(const NumeralRoom& room) const {
    return in_.wraps[static_cast<std::size_t>(room.bumper)];
  }

  /// The side of its bumper's run that a room lies on. A bumper that goes once round has two on the
  /// side on which it begins and ends.
  const RunSide& leg_of(const NumeralRoom& room) const {
    const Wrap& wrap = wrap_of(room);
    return wrap.run()
        .sides[static_cast<std::size_t>(wrap.side_of(0.5 * (room.from_s + room.to_s)))];
  }

  const PlaceInput& in_;
  std::vector<NumeralRoom> rooms_;
  std::vector<SplitRoom> gaps_;
  PlacedNumbers result_;
  int showings_ = 0;
  int place_ = 0;  ///< that is being filled, from 1
  Refusals refusals_;
};

}  // namespace

SeenBand seen_band(const Section& section, double from_u, double to_u) {
  constexpr int kSteps = 64;
  SeenBand seen;
  double lo = std::numeric_limits<double>::infinity(), hi = -lo;
  for (int i = 0; i <= kSteps; ++i) {
    const SectionPoint p = section.at(from_u + (to_u - from_u) * i / kSteps);
    lo = std::min(lo, p.z);
    hi = std::max(hi, p.z);
    seen.tilt_deg = std::max(seen.tilt_deg, Angle::from_radians(std::abs(p.tilt)).degrees());
  }
  seen.height = hi - lo;
  return seen;
}

std::vector<NumeralRoom> numeral_rooms(const std::vector<Wrap>& wraps, double half_height) {
  std::vector<NumeralRoom> rooms;
  for (std::size_t i = 0; i < wraps.size(); ++i) {
    for (const ClearStretch& clear : clear_stretches(wraps[i], half_height)) {
      const Frame& frame = wraps[i].frame();
      const auto side = frame.side(clear.side);
      if (!side) continue;
      const FlatPoint outward = frame.sides()[static_cast<std::size_t>(*side)].outward;
      const double bearing = Angle::from_radians(maths::atan2(-outward.x, outward.y)).degrees();
      rooms.push_back({static_cast<int>(i), clear.side, bearing < 0 ? bearing + 360 : bearing,
                       clear.from_s, clear.to_s});
    }
  }
  return rooms;
}

std::vector<NumeralRoom> rooms_that_fit(const std::vector<NumeralRoom>& rooms, double needs) {
  std::vector<NumeralRoom> fit;
  for (const NumeralRoom& room : rooms) {
    if (room.length() < needs - kTouch) continue;
    const auto same = std::find_if(fit.begin(), fit.end(),
                                   [&](const NumeralRoom& r) { return r.side == room.side; });
    if (same == fit.end()) {
      fit.push_back(room);
    } else if (room.length() > same->length() + kTouch) {
      *same = room;
    }
  }
  return fit;
}

Outcome<PlacedNumbers> place_number(const PlaceInput& input) { return Placer(input).run(); }

}  // namespace swathe
