#include "make/font.hpp"

#include <utility>

#include "base/embedded.hpp"
#include "make/named_files.hpp"
#include "swathe/type.hpp"

namespace swathe {
namespace {

/// Opened, and kept where there are fonts to keep it with.
Outcome<OpenedFont> opened(std::string_view bytes, const std::map<std::string, double>& axes,
                           OpenFonts* fonts) {
  OpenFonts once;
  return (fonts != nullptr ? *fonts : once).open(bytes, axes);
}

}  // namespace

Staged<OpenFont> open_font(const Job& job, const NamedFiles& files, OpenFonts* fonts) {
  OpenFont into;
  const NumeralKeys& keys = job.numerals;
  const Place place = job.places.of("numerals.font");
  Refusals faults;
  if (is_font_file(keys.font)) {
    auto bytes = take(at_key(bytes_of(keys.font, files), place), faults);
    if (!bytes) return {std::move(into), std::move(faults)};
    into.axes = keys.axes;
    into.font = take(at_key(opened(*bytes, into.axes, fonts), place), faults);
    if (into.font) into.name = into.font->font.name();
    return {std::move(into), std::move(faults)};
  }
  const auto bundled = take(at_key(bundled_font(keys.font), place), faults);
  if (!bundled) return {std::move(into), std::move(faults)};
  into.name = bundled->name;
  into.axes = bundled->axes;
  for (const auto& [axis, value] : keys.axes) into.axes[axis] = value;
  const bool own_axes = !keys.axes.empty();
  into.font = take(at_key(opened(embedded(bundled->file), into.axes, fonts),
                          own_axes ? job.places.of("numerals.axes") : place),
                   faults);
  return {std::move(into), std::move(faults)};
}

std::vector<FontCandidate> candidates_for(const Job& job, OpenFonts* fonts) {
  std::vector<FontCandidate> candidates;
  for (const BundledFont& bundled : bundled_fonts()) {
    const auto font = opened(embedded(bundled.file), bundled.axes, fonts);
    if (!font) continue;
    if (auto candidate = font_candidate(bundled.name, font->font, job.number, job.numerals.spacing))
      candidates.push_back(std::move(*candidate));
  }
  return candidates;
}

}  // namespace swathe
