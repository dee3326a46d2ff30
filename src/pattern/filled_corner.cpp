#include "pattern/filled_corner.hpp"

#include <algorithm>
#include <cmath>

namespace swathe {
namespace {

/// Beside a square front the cloth is back on the round within the padding's depth of it.
/// Common practice, no source.
double settles_within(const Wrap& wrap) { return wrap.section().padding_depth_mm(); }

/// How far from the corner line the flaps' notch reaches; so far the cloth lies on a square front.
double square_within(const RunCorner& corner, const ClothKeys& cloth) {
  return corner.past + cloth.setback.mm();
}

}  // namespace

const Section& section_at(const Wrap& wrap, const RunCorner& corner) {
  return corner.filled ? wrap.section().square_front() : wrap.section();
}

double dart_on_pattern(const Wrap& wrap, const RunCorner& corner, double u) {
  return corner.surplus(section_at(wrap, corner).at(u).d, wrap.section().depth_mm());
}

double taken_at_corners(const Wrap& wrap, const ClothKeys& cloth, double s) {
  double share = 0.0;
  for (const RunCorner& corner : wrap.run().corners) {
    if (!corner.filled) continue;
    const double beyond = std::abs(s - corner.s) - square_within(corner, cloth);
    share = std::max(share, 1.0 - std::max(0.0, beyond) / settles_within(wrap));
  }
  return share * wrap.section().square_end_allowance_mm();
}

std::vector<double> bends_of_taken(const Wrap& wrap, const ClothKeys& cloth) {
  std::vector<double> bends;
  double last = 0.0;  // the filled corner before
  for (const RunCorner& corner : wrap.run().corners) {
    if (!corner.filled) continue;
    const double near = square_within(corner, cloth), far = near + settles_within(wrap);
    // Where two corners are close together, their shares meet halfway.
    if (!bends.empty() && corner.s - far < bends.back()) bends.push_back(0.5 * (last + corner.s));
    bends.insert(bends.end(), {corner.s - far, corner.s - near, corner.s + near, corner.s + far});
    last = corner.s;
  }
  std::ranges::sort(bends);
  return bends;
}

}  // namespace swathe
