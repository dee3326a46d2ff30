#include "make/font.hpp"

#include <utility>

#include "make/files.hpp"
#include "swathe/type/fonts.hpp"

namespace swathe {

Staged<OpenFont> open_font(const Job& job, const NamedFiles& files) {
  OpenFont into;
  const NumeralKeys& keys = job.numerals;
  const Place place = job.places.of("numerals.font");
  Refusals faults;
  if (is_font_file(keys.font)) {
    auto bytes = take(at_key(bytes_of(keys.font, files), place), faults);
    if (!bytes) return {std::move(into), std::move(faults)};
    into.bytes = std::make_shared<const std::string>(std::move(*bytes));
    into.axes = keys.axes;
    into.font = take(at_key(Font::open(*into.bytes, keys.axes), place), faults);
    if (into.font) into.name = into.font->name();
    return {std::move(into), std::move(faults)};
  }
  const auto bundled = take(at_key(bundled_font(keys.font), place), faults);
  if (!bundled) return {std::move(into), std::move(faults)};
  into.name = bundled->name;
  into.axes = bundled->axes;
  for (const auto& [axis, value] : keys.axes) into.axes[axis] = value;
  const bool own_axes = !keys.axes.empty();
  into.font = take(
      at_key(open_bundled(*bundled, keys.axes), own_axes ? job.places.of("numerals.axes") : place),
      faults);
  return {std::move(into), std::move(faults)};
}

std::vector<FontCandidate> candidates_for(const Job& job) {
  std::vector<FontCandidate> candidates;
  for (const BundledFont& bundled : bundled_fonts()) {
    const auto font = open_bundled(bundled);
    if (!font) continue;
    if (auto candidate = font_candidate(bundled.name, *font, job.number, job.numerals.spacing))
      candidates.push_back(std::move(*candidate));
  }
  return candidates;
}

}  // namespace swathe
