#include "place/advice.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "job/key_path.hpp"
#include "numeral/digit.hpp"
#include "swathe/type.hpp"

namespace swathe {
namespace {

constexpr std::size_t kMostFonts = 3;
constexpr double kLowest = 0.25;  // of the asked height, where no season sets a least one

/// A number that is scaled here is flattened again when it is set, so that its height and its width
/// may differ by this much, mm.
double flattened_anew(const SetNumber& set) {
  return 2 * kDigitFlatness * (1 + set.ink.width() / set.height);
}

/// Whether this number fits somewhere on the side, also after it is set again.
bool fits(const PlaceInput& input, const SetNumber& set, const std::string& side,
          std::optional<int> bumper) {
  const std::vector<NumeralRoom> rooms =
      numeral_rooms(input.wraps, half_band(set.ink.height(), input.keys));
  return std::any_of(rooms.begin(), rooms.end(), [&](const NumeralRoom& room) {
    return room.side == side && (!bumper || room.bumper == *bumper) &&
           room.length() >= needed_for(set.ink.width(), input.keys) + flattened_anew(set);
  });
}

/// The greatest lower height at which the number fits, rounded as a person would give it.
std::optional<Length> lower_height(const PlaceInput& input, const std::string& side,
                                   std::optional<int> bumper) {
  const Length asked = mm(input.number.height);
  const auto fits_at = [&](Length height) {
    return fits(input, at_height(input.number, height, input.keys.spacing), side, bumper);
  };
  const Length least = input.least_height.value_or(kLowest * asked);
  if (least >= asked || !fits_at(least)) return std::nullopt;
  Length low = least, high = asked;
  while (high - low > mm(0.01)) {
    const Length middle = 0.5 * (low + high);
    (fits_at(middle) ? low : high) = middle;
  }
  const Length height = std::max(least, on_grid(low, input.units, Rounding::Down));
  if (!keeps_stroke(at_height(input.number, height, input.keys.spacing), input.keys,
                    input.least_stroke))
    return std::nullopt;
  return height;
}

/// Fonts in which the number fits at the asked height, widest first: "Saira at wdth 50 (9.2 in
/// wide), OSP-DIN (9.9 in wide)".
std::string narrower_fonts(const PlaceInput& input, const std::string& side,
                           std::optional<int> bumper) {
  struct Fitting {
    std::string font;
    SetNumber set;
  };
  std::vector<Fitting> fitting;
  for (const FontCandidate& candidate : input.candidates) {
    SetNumber set = at_height(candidate.number, mm(input.number.height), input.keys.spacing);
    if (fits(input, set, side, bumper)) fitting.push_back({candidate.font, std::move(set)});
  }
  std::stable_sort(fitting.begin(), fitting.end(), [](const Fitting& p, const Fitting& q) {
    return std::round(p.set.ink.width() * 1e3) > std::round(q.set.ink.width() * 1e3);
  });
  std::size_t told = 0;
  std::string words;
  for (const Fitting& f : fitting) {
    if (told == kMostFonts) break;
    if (!keeps_stroke(f.set, input.keys, input.least_stroke)) continue;
    words += fmt::format("{}{} ({} wide)", told++ == 0 ? "" : ", ", f.font,
                         measured(mm(f.set.ink.width()), input.units));
  }
  return words;
}

}  // namespace

double margin_of(const NumeralKeys& keys) { return (kNumeralMargin + keys.outline).mm(); }

double needed_for(double ink_width, const NumeralKeys& keys) {
  return ink_width + 2 * margin_of(keys);
}

double half_band(double ink_height, const NumeralKeys& keys) {
  return 0.5 * ink_height + keys.outline.mm();
}

Advice advice_for_width(const PlaceInput& input, const std::string& side,
                        std::optional<int> bumper) {
  const auto height = lower_height(input, side, bumper);
  const std::string fonts = narrower_fonts(input, side, bumper);
  const std::string low =
      height ? fmt::format("set numerals.height to {}", exact(*height, input.units)) : "";
  const std::string narrow = fonts.empty()
                                 ? ""
                                 : fmt::format("take a font that fits at {}: {}",
                                               exact(mm(input.number.height), input.units), fonts);
  if (low.empty() && narrow.empty()) {
    return {"choose another side: no allowed height and no bundled font fits"};
  }
  Advice advice{low.empty() || narrow.empty() ? low + narrow : low + "; or " + narrow};
  if (height) advice.mend = {{"numerals.height", quoted_text(exact(*height, input.units))}};
  return advice;
}

Length on_grid(Length length, Units units, Rounding rounding) {
  const Length step = units == Units::Inches ? inches(1.0 / 16) : mm(1);
  constexpr double kNearly = 1e-6;  // of a step: what rounding may have lost
  const double steps = length / step;
  return step *
         (rounding == Rounding::Up ? std::ceil(steps - kNearly) : std::floor(steps + kNearly));
}

}  // namespace swathe
