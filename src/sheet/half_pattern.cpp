#include "sheet/half_pattern.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "draw/path_clip.hpp"
#include "swathe/stock/symmetry.hpp"

namespace swathe {
namespace {

constexpr double kSame = 0.05;  ///< mm, as patterns are compared

double middle_of(const Pattern& pattern) { return bounds(pattern.outline).middle().x; }

bool mirrored_places(const std::vector<PlacedNumeral>& numerals, int bumper, double fold) {
  return std::ranges::all_of(numerals, [&](const PlacedNumeral& p) {
    return p.bumper != bumper || std::ranges::any_of(numerals, [&](const PlacedNumeral& q) {
             return q.bumper == bumper && std::abs(p.center_s + q.center_s - 2 * fold) < kSame &&
                    std::abs(p.center_u - q.center_u) < kSame &&
                    std::abs(p.width - q.width) < kSame && std::abs(p.height - q.height) < kSame;
           });
  });
}

Box up_to(double x, const Box& box) { return {box.lo, {x, box.hi.y}}; }

/// Cuts a pattern at its fold.
class Halving {
 public:
  explicit Halving(const Pattern& whole)
      : whole_(whole), fold_(middle_of(whole)), box_(up_to(fold_, bounds(whole.outline))) {}

  HalfPattern half() const {
    HalfPattern half{whole_, fold_, box_};
    Pattern& pattern = half.pattern;
    pattern.outline.clear();
    pattern.snips = parts(whole_.snips);
    for (Path& part : clipped(closed_path(whole_.outline), cut_box()))
      pattern.snips.push_back(std::move(part));
    for (std::vector<Path>* paths : {&pattern.stitches, &pattern.seam_marks, &pattern.strips})
      *paths = parts(*paths);
    pattern.pleats.clear();
    for (const PleatLine& pleat : whole_.pleats)  // a hem's line runs past the fold
      for (Path& part : clipped(pleat.path, cut_box()))
        pattern.pleats.push_back({std::move(part), pleat.under});
    drop(pattern.staples, [](const Staple& s) { return s.at.x; });
    drop(pattern.ends, [&](const EndOnPattern& e) { return e.start ? 0.0 : whole_.length; });
    cut(pattern.lines);
    name_marks(pattern.marks);
    name_brackets(pattern.brackets);
    name_corners(pattern.corners);
    pattern.cloth_length = box_.width();
    return half;
  }

 private:
  /// The half and what lies outside the cover beside it: a cut on its edge stays whole.
  Box cut_box() const { return {box_.lo - FlatPoint{1, 1}, {fold_, box_.hi.y + 1}}; }

  std::vector<Path> parts(const std::vector<Path>& paths) const {
    std::vector<Path> inside;
    for (const Path& path : paths)
      for (Path& part : clipped(path, cut_box())) inside.push_back(std::move(part));
    return inside;
  }

  bool is_past(double x) const { return x > fold_ + kSame; }

  template <class T, class At>
  void drop(std::vector<T>& all, At at) const {
    std::erase_if(all, [&](const T& one) { return is_past(at(one)); });
  }

  void cut(std::vector<NamedLine>& lines) const {
    drop(lines, [](const NamedLine& line) { return std::min(line.from.x, line.to.x); });
    for (NamedLine& line : lines) {
      line.from.x = std::min(line.from.x, fold_);
      line.to.x = std::min(line.to.x, fold_);
    }
  }

  FlatPoint mirrored(FlatPoint p) const { return {2 * fold_ - p.x, p.y}; }

  void name_marks(std::vector<MatchMark>& marks) const {
    drop(marks, [](const MatchMark& mark) { return mark.at.x; });
    for (MatchMark& mark : marks) {
      const auto image = std::ranges::min_element(whole_.marks, {}, [&](const MatchMark& other) {
        return apart(other.at, mirrored(mark.at));
      });
      if (image->name != mark.name) mark.name += ", " + image->name;
    }
  }

  static FlatPoint middle(const BracketOnPattern& bracket) {
    Box box;
    for (const auto* paths : {&bracket.footprints, &bracket.windows})
      for (const Path& path : *paths) box.cover(bounds(path));
    return box.middle();
  }

  void name_brackets(std::vector<BracketOnPattern>& brackets) const {
    drop(brackets, [](const BracketOnPattern& bracket) { return middle(bracket).x; });
    for (BracketOnPattern& bracket : brackets) {
      const auto image =
          std::ranges::min_element(whole_.brackets, {}, [&](const BracketOnPattern& other) {
            return apart(middle(other), mirrored(middle(bracket)));
          });
      if (image->side != bracket.side) bracket.side += ", " + image->side;
    }
  }

  void name_corners(std::vector<PatternCorner>& corners) const {
    drop(corners, [](const PatternCorner& corner) { return corner.s; });
    for (std::size_t k = 0; k < corners.size(); ++k) {
      const PatternCorner& image = whole_.corners[whole_.corners.size() - 1 - k];
      if (image.side_before != corners[k].side_before)
        corners[k].side_after += ", " + image.side_before + " / " + image.side_after;
    }
  }

  const Pattern& whole_;
  double fold_;
  Box box_;
};

}  // namespace

std::vector<std::string> unlike_halves(const Pattern& pattern,
                                       const std::vector<PlacedNumeral>& numerals, int bumper) {
  if (!pattern.joins.empty()) return {"seams"};  // cut from pieces, and so without a fold
  std::vector<std::string> unlike = unlike_mirrored(pattern);
  if (!mirrored_places(numerals, bumper, middle_of(pattern))) unlike.push_back("numerals");
  return unlike;
}

HalfPattern first_half(const Pattern& whole) { return Halving(whole).half(); }

}  // namespace swathe
