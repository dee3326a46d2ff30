#include "sheet/shown_subjects.hpp"

#include <algorithm>
#include <cmath>

namespace swathe {
namespace {

constexpr double kSame = 1.0;  ///< mm: a part and its mirror image lie no further apart

Subjects both(Subject one, Subject other) {
  if (one == other) return one;
  return {std::move(one), std::move(other)};
}

FlatPoint middle_of(const BracketOnPattern& bracket) {
  plane::Box box;
  for (const auto* paths : {&bracket.footprints, &bracket.windows})
    for (const plane::Path& path : *paths) box.cover(bounds(path));
  return box.middle();
}

Subject subject_of(const BracketOnPattern& bracket) { return Subject::bracket(bracket.keys + 1); }

}  // namespace

Subject subject_of(const PlacedNumeral& numeral) { return Subject::numeral(numeral.place); }

Subject showing_subject(const Made& made, std::size_t showing) {
  for (const PlacedNumeral& placed : made.numerals->placed)
    if (placed.showing == static_cast<int>(showing)) return subject_of(placed);
  return Subject::numerals();
}

Subject subject_of(const sight::Solid& solid) {
  constexpr std::string_view kBlind = "blind box ", kBumper = "bumper ";
  const std::string& name = solid.name;
  if (name.starts_with(kBlind)) return Subject::blind(std::stoi(name.substr(kBlind.size())));
  return Subject::bumper(name.substr(kBumper.size()));
}

Subjects padding_subjects(const Made& made, const bumper::Piece& padding) {
  if (made.job.padding.corner != PaddingCorner::Bent)
    return Subject::padding_piece(padding.bumper, padding.side);
  std::vector<Subject> pieces;
  for (const Wrap& wrap : made.wraps) {
    if (wrap.run().name != padding.bumper) continue;
    for (const RunSide& leg : wrap.run().sides)
      pieces.push_back(Subject::padding_piece(
          padding.bumper, made.frame.sides()[static_cast<std::size_t>(leg.side)].name));
  }
  return Subjects(std::move(pieces));
}

Subjects gap_subjects(const Made& made, std::size_t bumper) {
  const std::size_t next = (bumper + 1) % made.wraps.size();
  return {Subject::end(made.wraps[bumper].run().name, false),
          Subject::end(made.wraps[next].run().name, true)};
}

Subjects ShownOnCover::side(const std::string& name) const {
  return {Subject::bumper(pattern_.bumper), Subject::side(name)};
}

Subjects ShownOnCover::end(bool start) const {
  const Subject one = Subject::end(pattern_.bumper, start);
  return fold_ ? both(one, Subject::end(pattern_.bumper, !start)) : one;
}

Subject ShownOnCover::nearest_corner(double s) const {
  const auto nearest = std::ranges::min_element(
      pattern_.corners, {}, [&](const PatternCorner& corner) { return std::abs(corner.s - s); });
  if (nearest == pattern_.corners.end()) return Subject::bumper(pattern_.bumper);
  return Subject::bumper_corner(pattern_.bumper, nearest->side_before, nearest->side_after);
}

Subjects ShownOnCover::corner(double s) const {
  const Subject one = nearest_corner(s);
  return fold_ ? both(one, nearest_corner(mirrored(s))) : one;
}

Subjects ShownOnCover::bracket(const BracketOnPattern& bracket) const {
  const Subject one = subject_of(bracket);
  if (!fold_) return one;
  const FlatPoint middle = middle_of(bracket);
  const FlatPoint image{mirrored(middle.x), middle.y};
  const auto other = std::ranges::min_element(
      pattern_.brackets, {},
      [&](const BracketOnPattern& candidate) { return apart(middle_of(candidate), image); });
  return both(one, subject_of(*other));
}

Subjects ShownOnCover::numeral(const PlacedNumeral& numeral) const {
  const Subject one = subject_of(numeral);
  if (!fold_) return one;
  for (const PlacedNumeral& other : made_.numerals_on_patterns())
    if (other.bumper == numeral.bumper &&
        std::abs(other.center_s - mirrored(numeral.center_s)) < kSame)
      return both(one, subject_of(other));
  return one;
}

Subjects ShownOnCover::line(const NamedLine& line) const {
  switch (line.what) {
    case NamedLine::What::CornerLine:
    case NamedLine::What::InsideCorner:
      return corner(line.from.x);
    case NamedLine::What::EndFace:
    case NamedLine::What::PaddingEdge:
    case NamedLine::What::BoardEnd:
      return end(line.from.x < 0.5 * pattern_.length);
    default:
      return bumper();
  }
}

Subjects ShownOnCover::pleat(const PleatLine& pleat) const {
  return corner(bounds(pleat.path).middle().x);
}

}  // namespace swathe
