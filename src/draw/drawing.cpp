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

}  // namespace swathe
