#include <array>
#include <utility>

#include "swathe/draw.hpp"

namespace swathe {
namespace {

draw::Anchor flipped(draw::Anchor anchor) {
  switch (anchor) {
    case draw::Anchor::Left:
      return draw::Anchor::Right;
    case draw::Anchor::Right:
      return draw::Anchor::Left;
    case draw::Anchor::Middle:
      break;
  }
  return draw::Anchor::Middle;
}

struct Placed {
  const plane::Placement& placement;

  LineMark operator()(const LineMark& mark) const {
    return LineMark{mark.kind, placement(mark.path), mark.sample, mark.shows};
  }

  FillMark operator()(FillMark mark) const {
    for (plane::Path& outline : mark.outlines) outline = placement(outline);
    return mark;
  }

  TextMark operator()(TextMark mark) const {
    mark.at = placement(mark.at);
    // Read from its other end, mirrored text keeps to its side of the base line.
    if (placement.mirrored) {
      mark.anchor = flipped(mark.anchor);
      mark.turn = -mark.turn;
    }
    mark.turn += placement.turn;
    return mark;
  }
};

}  // namespace

// Dashes follow ISO 128-2 (line types 02, 04 and 05): dash 12 d, long dash 24 d, gap 3 d, dot half
// a d, where d is the line's width. Gaps are opened and dashes cut by about d more, since round
// ends lengthen every stroke, and the gaps of thin lines opened again for a bench's distance.
const LineStyle& style_of(LineKind kind) {
  static const std::array<LineStyle, 17> styles = {{
      {0.70, {}, "CUT"},
      {0.70, {}, "CUT-LAST"},
      {0.35, {8.0, 2.0, 0.2, 2.0}, "FOLD"},
      {0.35, {3.0, 2.0}, "STITCH"},
      {0.25, {9.0, 1.6, 0.2, 1.6, 0.2, 1.6}, "CORNER"},
      {0.18, {}, "STAPLE-LINE"},
      {0.35, {}, "STAPLE"},
      {0.25, {}, "PUNCH"},
      {0.35, {}, "MATCH"},
      {0.25, {}, "NUMERAL"},
      {0.25, {1.5, 1.5}, "BRIDGE"},
      {0.35, {}, "GRAIN"},
      {0.18, {}, "JOIN"},
      {0.25, {1.0, 1.5}, "TRIM"},
      {0.25, {}, "SCALE"},
      {0.18, {}, "THIN"},
      {0.35, {}, "OUTLINE"},
  }};
  static_assert(static_cast<std::size_t>(LineKind::Outline) + 1 == styles.size());
  return styles[static_cast<std::size_t>(kind)];
}

void Drawing::add(const Drawing& other, const plane::Placement& placement) {
  const std::size_t count = other.marks_.size();  // `other` may be this one
  marks_.reserve(marks_.size() + count);
  for (std::size_t k = 0; k < count; ++k)
    std::visit([&](const auto& mark) { marks_.emplace_back(Placed{placement}(mark)); },
               other.marks_[k]);
}

Showing::~Showing() {
  for (std::size_t k = from_; k < onto_.marks_.size(); ++k)
    std::visit(
        [&](auto& mark) {
          if (mark.shows.empty()) mark.shows = shows_;
        },
        onto_.marks_[k]);
}

const Subjects& shown_by(const draw::Mark& mark) {
  return std::visit([](const auto& one) -> const Subjects& { return one.shows; }, mark);
}

std::string to_text(SheetKind kind) {
  switch (kind) {
    case SheetKind::TestPage:
      return "test-page";
    case SheetKind::Pattern:
      return "pattern";
    case SheetKind::Tiles:
      return "tiles";
    case SheetKind::Fold:
      return "fold";
    case SheetKind::Measures:
      return "measures";
    case SheetKind::Templates:
      return "templates";
    case SheetKind::Model:
      return "model";
    case SheetKind::Numerals:
      return "numerals";
    case SheetKind::Placing:
      return "placing";
    case SheetKind::Book:
      return "book";
    case SheetKind::Views:
      return "views";
    case SheetKind::Lay:
      return "lay";
  }
  return {};
}

bool is_at_full_size(SheetKind kind) {
  switch (kind) {
    case SheetKind::TestPage:
    case SheetKind::Pattern:
    case SheetKind::Tiles:
    case SheetKind::Fold:
    case SheetKind::Templates:
    case SheetKind::Model:
    case SheetKind::Numerals:
    case SheetKind::Placing:
      return true;
    case SheetKind::Measures:
    case SheetKind::Book:
    case SheetKind::Views:
    case SheetKind::Lay:
      return false;
  }
  return false;
}

}  // namespace swathe
