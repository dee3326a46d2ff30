#include "place/sight_change.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <variant>

#include "job/key_path.hpp"
#include "place/more_sides.hpp"

namespace swathe {
namespace {

/// The middle of a number's ink, along its bumper.
double middle_of(const SightNumber& number) {
  double from = number.digits.front().from_s, to = number.digits.front().to_s;
  for (const SightDigit& digit : number.digits) {
    from = std::min(from, digit.from_s);
    to = std::max(to, digit.to_s);
  }
  return 0.5 * (from + to);
}

/// A change as the job's keys say it.
class ChangeOfKeys {
 public:
  /// `places` are the numbers' places, as PlacedNumeral has them.
  ChangeOfKeys(const std::vector<Wrap>& wraps, const std::vector<int>& places, const Job& job)
      : wraps_(wraps), places_(places), job_(job) {}

  std::vector<KeyChange> of(const SightChange& change) const {
    std::vector<KeyChange> mend;
    if (change.height)
      mend.push_back({"numerals.height", quoted_text(exact(*change.height, job_.units))});
    const bool more = change.numbers.size() > places_.size();
    if (!more && !change.moved) return mend;
    if (std::ranges::any_of(change.numbers, is_split)) return {};
    const NumeralKeys& keys = job_.numerals;
    const bool by_hand = !keys.places.empty();
    if (more && (by_hand || !change.moved))
      std::ranges::copy(added(change), std::back_inserter(mend));
    if (!change.moved) return mend;
    if (by_hand) {
      const std::size_t n = *change.moved, there = places_.size();
      const std::size_t place =
          n < there ? static_cast<std::size_t>(places_[n]) : keys.places.size() + n - there + 1;
      mend.push_back(center_of(place, change.numbers[n]));
      return mend;
    }
    if (keys.sides) return {};
    for (std::size_t n = 0; n < change.numbers.size(); ++n) {
      const SightNumber& number = change.numbers[n];
      const std::string key = fmt::format("numerals.place.{}.", n + 1);
      mend.push_back({key + "side", quoted_text(number.side)});
      mend.push_back({key + "bumper", quoted_text(wrap_of(number).run().name)});
      if (change.moved == n) mend.push_back(center_of(n + 1, number));
    }
    return mend;
  }

 private:
  std::vector<KeyChange> added(const SightChange& change) const {
    std::vector<OneMore> more;
    std::vector<std::string> now;
    for (std::size_t n = 0; n < change.numbers.size(); ++n) {
      const SightNumber& number = change.numbers[n];
      if (n < places_.size())
        now.push_back(number.side);
      else
        more.push_back({number.side, wrap_of(number).run().name});
    }
    return put_there_too(more, now, job_);
  }

  /// Where it stands along its side: from the corner that the job measures it from, else from the
  /// first.
  KeyChange center_of(std::size_t place, const SightNumber& number) const {
    const Wrap& wrap = wrap_of(number);
    const double middle = middle_of(number);
    const RunSide& leg = wrap.run().sides[static_cast<std::size_t>(wrap.side_of(middle))];
    const Frame& frame = wrap.frame();
    std::string corner = frame.sides()[static_cast<std::size_t>(frame.previous(leg.side))].name;
    const auto& by_hand = job_.numerals.places;
    if (place <= by_hand.size() && by_hand[place - 1].center)
      if (const auto* told = std::get_if<FromCorner>(&*by_hand[place - 1].center))
        corner = told->neighbor;
    const Length center = frame.from_corner(leg.side, middle - leg.s_minus_x, corner);
    return {fmt::format("numerals.place.{}.center", place),
            fmt::format("[{}, {}]", quoted_text(exact(center, job_.units)), quoted_text(corner))};
  }

  const Wrap& wrap_of(const SightNumber& number) const {
    return wraps_[static_cast<std::size_t>(number.digits.front().bumper)];
  }

  const std::vector<Wrap>& wraps_;
  const std::vector<int>& places_;
  const Job& job_;
};

}  // namespace

bool is_split(const SightNumber& number) {
  return std::ranges::any_of(number.digits, [&](const SightDigit& digit) {
    return digit.bumper != number.digits.front().bumper;
  });
}

std::vector<KeyChange> keys_of(const SightChange& change, const std::vector<Wrap>& wraps,
                               const std::vector<int>& places, const Job& job) {
  return ChangeOfKeys(wraps, places, job).of(change);
}

}  // namespace swathe
