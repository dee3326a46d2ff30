#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <iterator>

#include "base/print.hpp"
#include "form/steps.hpp"
#include "job/key_path.hpp"
#include "screen/movable.hpp"
#include "swathe/form.hpp"

namespace swathe {
namespace {

using screen::Handle;

/// What a hand sets things to.
Length coarse_step(Units units) { return units == Units::Inches ? inches(0.25) : mm(5); }

/// The nearest whole step within what the handle allows; beside a limit the nearest fine one, and
/// where there is none it stays.
Length kept(const Handle& handle, Length to, Length coarse, Length fine) {
  const double least = std::ceil(mm(handle.least) / fine - kSameStep);
  const double most = std::floor(mm(handle.most) / fine + kSameStep);
  const Length whole = std::round(to / coarse) * coarse;
  if (whole >= least * fine && whole <= most * fine) return whole;
  if (least > most) return mm(handle.mm);
  return std::clamp(std::round(to / fine), least, most) * fine;
}

/// ["12 1/4 in", "left"]
std::string along_side(const Handle& handle, const std::string& distance) {
  return fmt::format("[{}, {}]", quoted_text(distance), quoted_text(handle.corner));
}
/// ["front", "12 1/4 in", "left"]
std::string run_end(const Handle& handle, const std::string& distance) {
  return fmt::format("[{}, {}, {}]", quoted_text(handle.side), quoted_text(distance),
                     quoted_text(handle.corner));
}

/// The places that the program chose, as the job says them by hand; a split number is one place.
/// `moved` is the place of one of them, and becomes the number of it that is written.
std::vector<KeyChange> places_by_hand(const Made& made, int& moved) {
  std::vector<KeyChange> changes;
  int written = 0, moved_to = 0;
  for (const PlacedNumeral& placed : made.numerals->placed) {
    if (placed.from > 0) continue;
    const std::string key = fmt::format("numerals.place.{}.", ++written);
    const std::string& bumper = made.job.bumpers[static_cast<std::size_t>(placed.bumper)].name;
    changes.push_back({key + "side", quoted_text(placed.side)});
    changes.push_back({key + "bumper", quoted_text(bumper)});
    if (!placed.whole) changes.push_back({key + "split", fmt::format("{}", placed.text.size())});
    if (placed.place == moved) moved_to = written;
  }
  assert(moved_to > 0 && "what is moved is one of those that stand there");
  moved = moved_to;
  return changes;
}

/// 2 of "bracket.2.at", 3 of "numerals.place.3.center".
int number_in(const std::string& key) {
  const auto end = key.rfind('.');
  return std::stoi(key.substr(key.rfind('.', end - 1) + 1, end));
}

class Move {
 public:
  Move(const Made& made, const Handle& handle, std::string distance)
      : made_(made), handle_(handle), distance_(std::move(distance)) {}

  std::vector<KeyChange> changes() const {
    switch (handle_.kind) {
      case Handle::Kind::End:
      case Handle::Kind::Gap:
        return for_all(run_end(handle_, distance_));
      case Handle::Kind::Bracket:
        return bracket();
      case Handle::Kind::Numeral:
        return numeral();
      case Handle::Kind::Opening:
        break;
    }
    return for_all(along_side(handle_, distance_));
  }

 private:
  std::vector<KeyChange> for_all(const std::string& value) const {
    std::vector<KeyChange> changes;
    for (const std::string& key : handle_.keys) changes.push_back({key, value});
    return changes;
  }

  /// The corner that its holes were measured from is now the one of its place.
  std::vector<KeyChange> bracket() const {
    std::vector<KeyChange> changes = for_all(along_side(handle_, distance_));
    const int number = number_in(handle_.keys.front());
    if (!made_.job.brackets[static_cast<std::size_t>(number - 1)].holes_from.empty())
      changes.push_back({fmt::format("bracket.{}.holes_from", number), ""});
    return changes;
  }

  std::vector<KeyChange> numeral() const {
    std::vector<KeyChange> changes;
    int place = number_in(handle_.keys.front());
    if (made_.job.numerals.places.empty()) {
      if (made_.job.numerals.sides) changes.push_back({"numerals.sides", ""});
      std::ranges::move(places_by_hand(made_, place), std::back_inserter(changes));
    }
    changes.push_back(
        {fmt::format("numerals.place.{}.center", place), along_side(handle_, distance_)});
    return changes;
  }

  const Made& made_;
  const Handle& handle_;
  std::string distance_;
};

Outcome<Moved> moved_to(const Made& made, std::string_view text, const Handle& handle, Length to,
                        Snap snap, const std::string& file) {
  const Units units = made.job.units;
  const Length fine = step_of(units), step = snap == Snap::Coarse ? coarse_step(units) : fine;
  Moved out;
  out.text = text;
  out.distance = kept(handle, to, step, fine);
  const std::string distance = exact(out.distance, units);
  out.words = fmt::format("{} from the corner of {} and {}", distance, handle.side, handle.corner);
  out.changes = Move(made, handle, distance).changes();
  for (const KeyChange& change : out.changes) {
    auto next = change.value.empty() ? remove_value(out.text, change.key, file)
                                     : set_value(out.text, change.key, change.value, file);
    if (!next) return tl::unexpected(std::move(next.error()));
    out.text = std::move(next->text);
  }
  return out;
}

}  // namespace

Outcome<Moved> moved(const Made& made, std::string_view text, std::string_view shows, Length to,
                     Snap snap, const std::string& file) {
  for (const screen::Movable& one : screen::movables_of(made))
    if (to_text(one.handle.shows) == shows) return moved_to(made, text, one.handle, to, snap, file);
  return refuse(Why::UnknownName,
                fmt::format("{} cannot be moved, expected a bracket, an end or gap of bumpers, an "
                            "opening, or a number that is not split",
                            clip(shows)),
                {file, 1, 1});
}

Outcome<Moved> from_corner(const Made& made, std::string_view text, std::string_view key,
                           const std::string& file) {
  for (const screen::Movable& one : screen::movables_of(made))
    if (std::ranges::find(one.handle.keys, key) != one.handle.keys.end())
      return moved_to(made, text, one.handle, mm(one.handle.mm), Snap::Fine, file);
  return refuse(Why::UnknownName,
                fmt::format("{} places nothing that can be moved, expected the place of a bracket, "
                            "an end of a bumper, an opening, or a number that is not split",
                            clip(key)),
                {file, 1, 1});
}

}  // namespace swathe
