#include "make/font.hpp"

#include <utility>

#include "make/files.hpp"
#include "swathe/type/faces.hpp"

namespace swathe {

Staged<OpenFace> open_face(const Job& job, const NamedFiles& files) {
  OpenFace into;
  const NumeralKeys& keys = job.numerals;
  const Place place = job.places.of("numerals.font");
  Refusals faults;
  if (is_font_file(keys.font)) {
    auto bytes = take(at_key(bytes_of(keys.font, files), place), faults);
    if (!bytes) return {std::move(into), std::move(faults)};
    into.bytes = std::make_shared<const std::string>(std::move(*bytes));
    into.axes = keys.axes;
    into.face = take(at_key(Face::open(*into.bytes, keys.axes), place), faults);
    if (into.face) into.name = into.face->name();
    return {std::move(into), std::move(faults)};
  }
  const auto bundled = take(at_key(bundled_face(keys.font), place), faults);
  if (!bundled) return {std::move(into), std::move(faults)};
  into.name = bundled->name;
  into.axes = bundled->axes;
  for (const auto& [axis, value] : keys.axes) into.axes[axis] = value;
  const bool own_axes = !keys.axes.empty();
  into.face = take(
      at_key(open_bundled(*bundled, keys.axes), own_axes ? job.places.of("numerals.axes") : place),
      faults);
  return {std::move(into), std::move(faults)};
}

std::vector<FaceCandidate> candidates_for(const Job& job) {
  std::vector<FaceCandidate> candidates;
  for (const BundledFace& bundled : bundled_faces()) {
    const auto face = open_bundled(bundled);
    if (!face) continue;
    if (auto candidate = face_candidate(bundled.name, *face, job.number, job.numerals.spacing))
      candidates.push_back(std::move(*candidate));
  }
  return candidates;
}

}  // namespace swathe
