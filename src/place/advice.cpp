#include "place/advice.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "base/workshop.hpp"
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

/// The greatest height of at least `least` and less than the asked one at which this number fits,
/// rounded as a person would give it.
std::optional<Length> tallest(const PlaceInput& input, const SetNumber& number, Length least,
                              const std::string& side, std::optional<int> bumper) {
  const Length asked = mm(input.number.height);
  const auto fits_at = [&](Length height) {
    return fits(input, at_height(number, height, input.keys.spacing), side, bumper);
  };
  if (least >= asked || !fits_at(least)) return std::nullopt;
  Length low = least, high = asked;
  while (high - low > mm(0.01)) {
    const Length middle = 0.5 * (low + high);
    (fits_at(middle) ? low : high) = middle;
  }
  return std::max(least, on_tape(low, input.units, Rounding::Down));
}

/// The same, of those that are allowed.
std::optional<Length> lower_height(const PlaceInput& input, const SetNumber& number,
                                   const std::string& side, std::optional<int> bumper) {
  const Length least = input.least_height.value_or(kLowest * mm(input.number.height));
  const auto height = tallest(input, number, least, side, bumper);
  if (!height ||
      !keeps_stroke(at_height(number, *height, input.keys.spacing), input.keys, input.least_stroke))
    return std::nullopt;
  return height;
}

/// A bundled font in which the number fits at the asked height.
struct FittingFont {
  std::string font;
  SetNumber set;
};

/// Those there are, widest first, as many as are told.
std::vector<FittingFont> fonts_that_fit(const PlaceInput& input, const std::string& side,
                                        std::optional<int> bumper) {
  std::vector<FittingFont> fitting;
  for (const FontCandidate& candidate : input.candidates) {
    SetNumber set = at_height(candidate.number, mm(input.number.height), input.keys.spacing);
    if (fits(input, set, side, bumper)) fitting.push_back({candidate.font, std::move(set)});
  }
  std::stable_sort(fitting.begin(), fitting.end(), [](const auto& p, const auto& q) {
    return std::round(p.set.ink.width() * 1e3) > std::round(q.set.ink.width() * 1e3);
  });
  std::vector<FittingFont> told;  // strokes are measured only as long as fonts are wanted
  for (FittingFont& f : fitting)
    if (told.size() < kMostFonts && keeps_stroke(f.set, input.keys, input.least_stroke))
      told.push_back(std::move(f));
  return told;
}

/// "Saira at wdth 50 (9 1/4 in wide), OSP-DIN (9 7/8 in wide)".
std::string words_of(const std::vector<FittingFont>& fonts, Units units) {
  std::string words;
  for (const FittingFont& f : fonts)
    words += fmt::format("{}{} ({} wide)", words.empty() ? "" : ", ", f.font,
                         dimension_with_unit(mm(f.set.ink.width()), units));
  return words;
}

/// The other sides on which the number fits as it is, as the frame has them: "left or right".
std::string sides_that_fit(const PlaceInput& input, const std::string& not_on) {
  std::vector<std::string> sides;
  if (input.wraps.empty()) return "";
  for (const FrameSide& side : input.wraps.front().frame().sides())
    if (side.name != not_on && fits(input, input.number, side.name, std::nullopt))
      sides.push_back(side.name);
  std::string words;
  for (std::size_t k = 0; k < sides.size(); ++k)
    words += (k == 0 ? "" : k + 1 == sides.size() ? " or " : ", ") + sides[k];
  return words;
}

/// A font of the job's own has axes of its own, which another font may not have.
std::vector<KeyChange> change_of_font(const PlaceInput& input, const std::string& font) {
  if (!input.keys.axes.empty()) return {};
  return {{"numerals.font", quoted_text(font)}};
}

/// Where neither a lower height nor another font is enough: both, as high as that can be.
std::optional<Advice> font_and_height(const PlaceInput& input, const std::string& side,
                                      std::optional<int> bumper) {
  std::optional<Length> best;
  const FontCandidate* font = nullptr;
  for (const FontCandidate& candidate : input.candidates) {
    const auto height = lower_height(input, candidate.number, side, bumper);
    if (!height || (best && *height <= *best)) continue;
    best = height;
    font = &candidate;
  }
  if (font == nullptr) return std::nullopt;
  const std::string height = exact(*best, input.units);
  Advice advice{fmt::format("take the font {} and set numerals.height to {}: it takes both",
                            font->font, height),
                change_of_font(input, font->font)};
  if (!advice.mend.empty()) advice.mend.push_back({"numerals.height", quoted_text(height)});
  return advice;
}

/// What is left to say where neither helps, nor both together.
Advice no_way(const PlaceInput& input, const std::string& side, std::optional<int> bumper,
              const std::string& sides) {
  std::optional<Length> best;
  const auto try_number = [&](const SetNumber& number) {
    const auto height = tallest(input, number, kLowest * mm(input.number.height), side, bumper);
    if (height && (!best || *height > *best)) best = height;
  };
  try_number(input.number);
  for (const FontCandidate& candidate : input.candidates) try_number(candidate.number);
  std::string why = "no bundled font fits here at a height that is allowed";
  if (best && input.least_height && *best < *input.least_height)
    why = fmt::format(
        "the tallest that fits here in any bundled font is {}, and the rules ask for {}",
        exact(*best, input.units), exact(*input.least_height, input.units));
  return {fmt::format("choose another side{}: {}", sides.empty() ? "" : ", " + sides, why)};
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
  const auto height = lower_height(input, input.number, side, bumper);
  const std::vector<FittingFont> fonts = fonts_that_fit(input, side, bumper);
  const std::string sides = sides_that_fit(input, side);
  const std::string asked = exact(mm(input.number.height), input.units);
  Advice advice;
  const auto say = [&](const std::string& words) {
    advice.words += (advice.words.empty() ? "" : "; or ") + words;
  };
  if (height) {
    say(fmt::format("set numerals.height to {}; a taller number does not fit here",
                    exact(*height, input.units)));
    advice.mend = {{"numerals.height", quoted_text(exact(*height, input.units))}};
  }
  if (!fonts.empty()) {
    say(fmt::format("take a font that fits at {}: {}", asked, words_of(fonts, input.units)));
    if (!height) advice.mend = change_of_font(input, fonts.front().font);
  }
  if (advice.words.empty()) {
    auto both = font_and_height(input, side, bumper);
    if (!both) return no_way(input, side, bumper, sides);
    advice = *std::move(both);
  }
  if (!sides.empty()) say(fmt::format("choose a side where it fits at {}: {}", asked, sides));
  return advice;
}

}  // namespace swathe
