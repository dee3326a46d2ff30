#include "place/make_numerals.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>

#include "job/key_path.hpp"
#include "numeral/digit.hpp"
#include "numeral/make_legal.hpp"
#include "numeral/size.hpp"
#include "plane/clip.hpp"
#include "rules/practice.hpp"

namespace swathe {
namespace {

/// The same refusals at the job's key, each with `before` in front of its sentence.
tl::unexpected<Refusals> at_key(Refusals refusals, const Place& place,
                                const std::string& before = {}) {
  for (Refusal& refusal : refusals) {
    refusal.place = place;
    refusal.sentence = before + refusal.sentence;
  }
  return tl::unexpected<Refusals>(std::move(refusals));
}

/// Which key of the job a refusal to set the number is about.
std::string key_of(Why why, const std::string& number) {
  if (why == Why::BadFont) return "numerals.font";
  if (why == Why::DoesNotFit) return "numerals.spacing";
  const bool digits =
      std::all_of(number.begin(), number.end(), [](char c) { return c >= '0' && c <= '9'; });
  return digits && !number.empty() && number.size() <= 5 ? "numerals.height" : "job.number";
}

/// Digits so close that their white outlines would run into each other.
Refusals outlines_that_meet(const SetNumber& set, const NumeralInput& input) {
  const double outline = input.keys.outline.mm();
  if (!(outline > 0) || set.digits.size() < 2) return {};
  for (std::size_t i = 1; i < set.digits.size(); ++i) {
    const auto grown = [&](const PlacedDigit& at) {
      plane::Region region = offset(set.shape(at.digit).outline, outline);
      for (plane::Polygon& contour : region) {
        for (FlatPoint& p : contour) p = p + at.origin;
      }
      return region;
    };
    if (intersect(grown(set.digits[i - 1]), grown(set.digits[i])).empty()) continue;
    const Length step = input.units == Units::Inches ? inches(1.0 / 16) : mm(1);
    const double more = 2 * outline - set.least_space + input.keys.spacing.extra.mm();
    const std::string spacing = exact(std::ceil(mm(more) / step) * step, input.units);
    return {{Why::DoesNotFit,
             fmt::format("white outlines {} wide run into each other, expected numerals.spacing of "
                         "at least {}",
                         exact(input.keys.outline, input.units), spacing),
             input.places.of("numerals.outline"),
             {{"numerals.spacing", quoted_text(spacing)}}}};
  }
  return {};
}

}  // namespace

Length numeral_height(const NumeralKeys& keys, const NumeralRules& rules) {
  if (keys.height) return *keys.height;
  return rules.height ? *rules.height + practice::kSpareHeight : practice::kPlainHeight;
}

Outcome<Numerals> make_numerals(const NumeralInput& input) {
  const Length height = numeral_height(input.keys, input.rules);
  Outcome<SetNumber> set = set_number(input.font, input.number, height, input.keys.spacing);
  if (!set) {
    const std::string key = key_of(set.error().front().why, input.number);
    return at_key(std::move(set.error()), input.places.of(key));
  }

  Refusals refusals;
  Numerals made;
  if (input.keys.make_legal && input.rules.stroke) {
    Outcome<LegalNumber> legal = make_legal(*set, input.keys, *input.rules.stroke, input.units);
    if (legal) {
      *set = std::move(legal->number);
      made.change = std::move(legal->change);
    } else {
      auto here = at_key(std::move(legal.error()), input.places.of("numerals.make_legal"));
      std::move(here.value().begin(), here.value().end(), std::back_inserter(refusals));
    }
  }
  for (Refusal& refusal : outlines_that_meet(*set, input)) refusals.push_back(std::move(refusal));
  made.number = input.number;
  made.outline = input.keys.outline.mm();
  made.font = input.font_name;
  made.axes = input.keys.axes;
  made.size = set->em;
  made.height = set->height;
  made.width = set->ink.width();
  for (const DigitOutline& shape : set->shapes) {
    const Digit* kept = input.kept ? kept_digit(*input.kept, shape, input.keys) : nullptr;
    Outcome<Digit> digit =
        kept ? Outcome<Digit>(*kept) : made_digit(shape, input.keys, input.units);
    if (digit) {
      made.digits.push_back(*std::move(digit));
    } else {
      auto here = at_key(std::move(digit.error()), input.places.of("numerals.bridge"),
                         fmt::format("digit {}: ", shape.digit));
      std::move(here.value().begin(), here.value().end(), std::back_inserter(refusals));
    }
  }

  Outcome<PlacedNumbers> placing = place_number({
      .number = *set,
      .keys = input.keys,
      .wraps = input.wraps,
      .least_places = input.rules.places,
      .may_split = input.rules.may_split,
      .most_space = input.rules.space,
      .candidates = input.candidates,
      .least_height = made.change.empty() ? input.rules.height : mm(set->height),
      .least_stroke = input.rules.stroke.value_or(Length()),
      .sight = input.sight,
      .demand = input.demand,
      .units = input.units,
      .places = input.places,
  });
  if (!placing) {
    std::move(placing.error().begin(), placing.error().end(), std::back_inserter(refusals));
  }
  if (!refusals.empty()) return tl::unexpected<Refusals>(std::move(refusals));

  made.placed = std::move(placing->placed);
  made.misfits = std::move(placing->misfits);
  for (Digit& digit : made.digits) {
    const auto in_number = std::count(input.number.begin(), input.number.end(), digit.digit);
    const int numbers = (made.showings() + input.keys.spares) * input.colors;
    digit.count = static_cast<int>(in_number) * numbers;
  }
  return made;
}

}  // namespace swathe
