#pragma once

#include <string>
#include <vector>

#include "swathe/draw.hpp"
#include "swathe/make.hpp"
#include "swathe/plane.hpp"

namespace swathe {

/// One kind of line of a template, in the template's own coordinates.
struct TemplateLine {
  LineKind kind;
  plane::Path path;
  FlatPoint under;  ///< of a fold: the way its cloth goes; else zero
  Subjects shows{};
};

/// A place of the cover that a template is for.
struct TemplateUse {
  std::string where;  ///< "corner front / left, top", "end on front, bottom half"
  std::string at;     ///< "corner line at 22 5/16", from the cloth's left edge as it lies
  std::string how;    ///< its paper is laid: "turned half round"; empty where it lies as printed
};

/// A part of a cover at full size, lower left corner at the origin, the job's face up.
struct TemplatePart {
  FlatPoint size;
  std::vector<TemplateLine> lines;
  std::vector<TemplateUse> uses;
};

/// The parts of one cover, alike ones once.
///
/// Holds (sheets_test.cpp): (1) both cuts of every corner, both halves of both ends and
///   every window are among the uses, once each.
std::vector<TemplatePart> template_parts(const Made& made, std::size_t bumper);

}  // namespace swathe
