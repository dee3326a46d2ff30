#pragma once

#include <optional>

#include "swathe/base.hpp"
#include "swathe/make.hpp"

namespace swathe {

/// A place where the number stands.
Subject subject_of(const PlacedNumeral& numeral);
/// The number as it stands in one place or split over two, by sight's count of them from 0.
Subject showing_subject(const Made& made, std::size_t showing);
/// A bumper's solid, or a blind.
Subject subject_of(const sight::Solid& solid);
/// A piece of padding; one that bends stands for the pieces of all its bumper's sides.
Subjects padding_subjects(const Made& made, const bumper::Piece& padding);
/// The two ends beside the gap after a bumper.
Subjects gap_subjects(const Made& made, std::size_t bumper);

/// What the parts of one cover show of the model. Of a half, on the fold, each part stands for its
/// mirror image too.
class ShownOnCover {
 public:
  /// `fold` is the s of it; nothing for a whole cover. The pattern is always the whole one's.
  ShownOnCover(const Made& made, std::size_t bumper, std::optional<double> fold = std::nullopt)
      : made_(made), pattern_(made.patterns[bumper]), fold_(fold) {}

  Subjects bumper() const { return Subject::bumper(pattern_.bumper); }
  /// The part of the cover on that side.
  Subjects side(const std::string& name) const;
  Subjects end(bool start) const;
  /// The corner nearest to s; the whole bumper where it turns no corner.
  Subjects corner(double s) const;
  Subjects bracket(const BracketOnPattern& bracket) const;
  Subjects numeral(const PlacedNumeral& numeral) const;
  Subjects line(const NamedLine& line) const;
  Subjects pleat(const PleatLine& pleat) const;

 private:
  Subject nearest_corner(double s) const;
  double mirrored(double s) const { return 2 * *fold_ - s; }

  const Made& made_;
  const Pattern& pattern_;
  std::optional<double> fold_;
};

}  // namespace swathe
