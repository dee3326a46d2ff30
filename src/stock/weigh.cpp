#include "stock/weigh.hpp"

#include <algorithm>
#include <numbers>

#include "bumper/corner_hollows.hpp"

namespace swathe {
namespace {

constexpr double kGramsPerKg = 1000.0;
constexpr double kCubicMeter = 1e-9;   // of a cubic millimeter
constexpr double kSquareMeter = 1e-6;  // of a square millimeter

/// Length along the middle of a piece: half of what each slanted end takes away.
double middle_length(const bumper::Piece& piece) {
  const auto taken = [](const EndCut& end) { return 0.5 * (end.inner_short + end.outer_short); };
  return piece.length_mm - taken(piece.start) - taken(piece.end);
}

/// Of one noodle, or of the block.
double padding_section(const PaddingKeys& padding) {
  if (padding.form == PaddingForm::Noodles) {
    return std::numbers::pi * padding.diameter.mm() * padding.diameter.mm() / 4.0;
  }
  const double rho = padding.edge_radius.mm();
  const double rounding = 2.0 * (1.0 - std::numbers::pi / 4.0) * rho * rho;
  return padding.depth.mm() * padding.height.mm() - rounding;
}

/// Volume of the strips that fill a bumper's corners.
double fillings(const Job& job, const Pattern& pattern) {
  double volume = 0;
  for (const PatternCorner& corner : pattern.corners) {
    if (!corner.filled) continue;
    const CornerVoid hollow = hollow_at({Angle::from_degrees(corner.turn_deg).radians()},
                                        job.boards.thickness.mm(), job.padding);
    volume += hollow.strips * hollow.length * 0.5 * hollow.leg * hollow.leg;
  }
  return volume;
}

/// Hook-and-loop strips, hooks and loops.
double strips_g(const Pattern& pattern, const HookAndLoopKeys& keys) {
  double area = 0;
  for (const plane::Path& strip : pattern.strips) {
    const plane::Box box = bounds(strip);
    area += std::max(box.width(), box.height()) * keys.strip.mm();
  }
  return area * kSquareMeter * keys.density_kg_m2 * kGramsPerKg;
}

void weigh_fasteners(const Job& job, const Pattern& pattern, BumperWeight& weight) {
  const int joints = static_cast<int>(pattern.corners.size());
  const Screws screws = screws_for(job, joints);
  weight.fasteners_g = static_cast<double>(pattern.staples.size()) * job.cloth.staple_g +
                       strips_g(pattern, job.cloth.hook_and_loop) +
                       joints * screws.a_joint * screw_g(screws);
  for (const BracketOnPattern& laid : pattern.brackets) {
    const BracketKeys& bracket = job.brackets[static_cast<std::size_t>(laid.keys)];
    if (bracket.mass_g)
      weight.fasteners_g += *bracket.mass_g;
    else
      ++weight.unknown_brackets;
  }
}

}  // namespace

std::vector<BumperWeight> weigh(const Job& job, const std::vector<bumper::Piece>& boards,
                                const std::vector<bumper::Piece>& padding,
                                const std::vector<Pattern>& patterns) {
  const auto sum = [](const std::vector<bumper::Piece>& pieces, const std::string& bumper) {
    double length = 0;
    for (const bumper::Piece& piece : pieces) {
      if (piece.bumper == bumper) length += piece.count * middle_length(piece);
    }
    return length;
  };
  const double board_section = job.boards.thickness.mm() * job.boards.height.mm();

  std::vector<BumperWeight> weights;
  for (const Pattern& pattern : patterns) {
    BumperWeight& weight = weights.emplace_back();
    weight.bumper = pattern.bumper;
    weight.boards_g = sum(boards, pattern.bumper) * board_section * kCubicMeter *
                      job.boards.density_kg_m3 * kGramsPerKg;
    weight.padding_g =
        (sum(padding, pattern.bumper) * padding_section(job.padding) + fillings(job, pattern)) *
        kCubicMeter * job.padding.density_kg_m3 * kGramsPerKg;
    weight.cloth_g = pattern.cloth_area * kSquareMeter * job.cloth.density_kg_m2 * kGramsPerKg;
    weigh_fasteners(job, pattern, weight);
  }
  return weights;
}

}  // namespace swathe
