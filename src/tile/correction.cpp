#include "tile/correction.hpp"

#include <cmath>

#include "swathe/base.hpp"
#include "swathe/job.hpp"
#include "tile/texts.hpp"

namespace swathe {
namespace {

constexpr double kScale = 100.0;    ///< mm, of the check scales
constexpr double kSameEdge = 1e-6;  ///< mm

struct Came {
  double shorter = 1, longer = 1;  ///< printed over meant, along each edge of the paper
};

Came came_of(const PaperKeys& paper) {
  if (!paper.measured) return {};
  const auto& [across, down] = *paper.measured;
  return {across.mm() / kScale, down.mm() / kScale};
}

}  // namespace

PaperKeys before_stretch(const PaperKeys& paper) {
  const Came came = came_of(paper);
  PaperKeys before = paper;
  const bool stands = paper.width <= paper.height;
  before.width = (stands ? came.shorter : came.longer) * paper.width;
  before.height = (stands ? came.longer : came.shorter) * paper.height;
  return before;
}

draw::Stretch stretch_of(const Page& page, const PaperKeys& paper) {
  const Came came = came_of(paper);
  // A roll's page may be shorter than the roll is wide, and its width is across all the same.
  const double across = came.shorter * paper.width.mm();
  const bool fills_roll = paper.sheet == kRoll && std::abs(page.width_mm - across) < kSameEdge;
  const bool stands = fills_roll || page.width_mm <= page.height_mm;
  return {1 / (stands ? came.shorter : came.longer), 1 / (stands ? came.longer : came.shorter)};
}

std::string correction_words(const PaperKeys& paper) {
  if (!paper.measured) return "";
  const auto& [across, down] = *paper.measured;
  return tile_texts::say("correction.for-printer", {{"short", exact(across, Units::Millimeters)},
                                                    {"long", exact(down, Units::Millimeters)}});
}

}  // namespace swathe
