#include "screen/movable.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "sheet/shown_subjects.hpp"

namespace swathe::screen {
namespace {

constexpr double kSame = 1e-6;  // mm

class Movables {
 public:
  explicit Movables(const Made& made) : made_(made), frame_(made.frame) {}

  std::vector<Movable> all() && {
    brackets();
    ends();
    openings();
    numbers();
    return std::move(all_);
  }

 private:
  const FrameSide& side_at(int side) const {
    return frame_.sides()[static_cast<std::size_t>(side)];
  }

  /// With its side, and the corner from which its place is told: where that says none, the one at
  /// which the side begins.
  Movable on_side(Handle::Kind kind, int side, const SidePlace* told) const {
    Movable one;
    one.handle.kind = kind;
    one.side = side;
    one.handle.side = side_at(side).name;
    const auto* from = told ? std::get_if<FromCorner>(told) : nullptr;
    one.handle.corner = from ? from->neighbor : side_at(frame_.previous(side)).name;
    one.grows = frame_.begins_at(side, one.handle.corner);
    one.handle.most = side_at(side).own_length;
    return one;
  }
  double distance(const Movable& one, double x) const {
    return frame_.from_corner(one.side, x, one.handle.corner).mm();
  }

  void brackets() {
    for (std::size_t k = 0; k < made_.job.brackets.size(); ++k) {
      const BracketKeys& keys = made_.job.brackets[k];
      const auto side = frame_.side(keys.side);
      if (!side) continue;
      const AlongSide on = stretch_of(frame_, *side, keys);
      // One whose holes are measured from a corner is moved from there, too.
      const std::string& corner = measured_from(keys);
      const SidePlace told = corner.empty() ? keys.at : FromCorner{Length(), corner};
      Movable one = on_side(Handle::Kind::Bracket, *side, &told);
      one.handle.shows = Subject::bracket(static_cast<int>(k) + 1);
      one.x = 0.5 * (on.from + on.to);
      one.handle.mm = distance(one, one.grows ? on.from : on.to);
      one.handle.most -= keys.width.mm();
      one.handle.keys = {"bracket." + std::to_string(k + 1) + ".at"};
      for (std::size_t b = 0; b < made_.patterns.size(); ++b)
        if (std::ranges::count(made_.patterns[b].brackets, static_cast<int>(k),
                               &BracketOnPattern::keys) > 0)
          one.bumper = b;
      all_.push_back(std::move(one));
    }
  }

  std::optional<Movable> end(std::size_t bumper, bool start) const {
    const Run& run = made_.wraps[bumper].run();
    const auto number = static_cast<std::size_t>(run.keys);
    const RunEnd& told = start ? made_.job.bumpers[number].from : made_.job.bumpers[number].to;
    const auto place = place_on_side(told);
    const auto side = frame_.side(told.side);
    if (!place || !side) return std::nullopt;
    Movable one = on_side(Handle::Kind::End, *side, &*place);
    one.handle.shows = Subject::end(run.name, start);
    one.x = frame_.along(*side, *place);
    one.handle.mm = distance(one, one.x);
    one.handle.keys = {"bumper." + std::to_string(number + 1) + (start ? ".from" : ".to")};
    one.bumper = bumper;
    return one;
  }

  void ends() {
    const std::size_t count = made_.wraps.size();
    for (std::size_t b = 0; b < count; ++b) {
      const std::size_t next = (b + 1) % count;
      auto before = end(b, false), after = end(next, true);
      if (before && after && before->side == after->side &&
          std::abs(before->x - after->x) < kSame) {
        before->handle.kind = Handle::Kind::Gap;
        before->handle.shows = gap_subjects(made_, b);
        before->handle.keys.push_back(after->handle.keys.front());
        before->bumper.reset();
        after.reset();
      }
      if (before) all_.push_back(*std::move(before));
      if (after) all_.push_back(*std::move(after));
    }
  }

  void openings() {
    for (std::size_t k = 0; k < made_.job.openings.size(); ++k) {
      const OpeningKeys& keys = made_.job.openings[k];
      const auto side = frame_.side(keys.side);
      if (!side) continue;
      Movable one = on_side(Handle::Kind::Opening, *side, &keys.center);
      one.handle.shows = Subject::side(keys.side);
      one.x = frame_.along(*side, keys.center);
      one.handle.mm = distance(one, one.x);
      one.handle.least = 0.5 * keys.width.mm();
      one.handle.most -= 0.5 * keys.width.mm();
      one.handle.keys = {"opening." + std::to_string(k + 1) + ".center"};
      all_.push_back(std::move(one));
    }
  }

  void numbers() {
    if (!made_.numerals) return;
    for (const PlacedNumeral& placed : made_.numerals->placed) {
      if (!placed.whole) continue;  // a split one stays at its gap
      const auto bumper = static_cast<std::size_t>(placed.bumper);
      const Run& run = made_.wraps[bumper].run();
      const RunSide& leg =
          run.sides[static_cast<std::size_t>(made_.wraps[bumper].side_of(placed.center_s))];
      const auto& places = made_.job.numerals.places;
      const auto number = static_cast<std::size_t>(placed.place - 1);
      const SidePlace* told =
          number < places.size() && places[number].center ? &*places[number].center : nullptr;
      Movable one = on_side(Handle::Kind::Numeral, leg.side, told);
      one.handle.shows = subject_of(placed);
      one.x = placed.center_s - leg.s_minus_x;
      one.handle.mm = distance(one, one.x);
      one.handle.least = one.handle.most = one.handle.mm;
      for (const ClearStretch& clear : made_.clear[bumper]) {
        if (placed.center_s < clear.from_s - kSame || placed.center_s > clear.to_s + kSame ||
            clear.side != one.handle.side)
          continue;
        const double half = 0.5 * placed.width;
        const double a = distance(one, clear.from_s + half - leg.s_minus_x);
        const double b = distance(one, clear.to_s - half - leg.s_minus_x);
        one.handle.least = std::min({a, b, one.handle.mm});
        one.handle.most = std::max({a, b, one.handle.mm});
      }
      one.handle.keys = {"numerals.place." + std::to_string(placed.place) + ".center"};
      one.bumper = bumper;
      all_.push_back(std::move(one));
    }
  }

  const Made& made_;
  const Frame& frame_;
  std::vector<Movable> all_;
};

}  // namespace

std::vector<Movable> movables_of(const Made& made) { return Movables(made).all(); }

std::string to_text(Handle::Kind kind) {
  switch (kind) {
    case Handle::Kind::Bracket:
      return "bracket";
    case Handle::Kind::End:
      return "end";
    case Handle::Kind::Gap:
      return "gap";
    case Handle::Kind::Opening:
      return "opening";
    case Handle::Kind::Numeral:
      break;
  }
  return "numeral";
}

}  // namespace swathe::screen
