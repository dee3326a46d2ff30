#include "pattern/half_pattern.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <utility>

#include "draw/path_clip.hpp"

namespace swathe {
namespace {

constexpr double kSame = 0.05;  ///< mm, as patterns are compared

plane::Box up_to(double x, const plane::Box& box) { return {box.lo, {x, box.hi.y}}; }

/// Cuts a pattern at its fold.
class Halving {
 public:
  Halving(const Pattern& whole, const std::vector<std::string>& mark_names)
      : whole_(whole),
        mark_names_(mark_names),
        fold_(fold_of(whole)),
        box_(up_to(fold_, bounds(whole.outline))) {}

  HalfPattern half() const {
    HalfPattern half;
    half.fold = fold_;
    half.box = box_;
    half.cuts = parts(whole_.snips);
    for (plane::Path& part : clipped(closed_path(whole_.outline), cut_box()))
      half.cuts.push_back(std::move(part));
    for (const PleatLine& pleat : whole_.pleats)
      for (plane::Path& part : clipped(pleat.path, cut_box()))
        half.pleats.push_back({std::move(part), pleat.under});
    for (const HemFold& hem : whole_.hems)  // it runs past the fold
      for (const plane::Path& part : clipped(hem.path(), cut_box()))
        half.hems.push_back({part.vertices.front().at, part.vertices.back().at, hem.top});
    half.stitches = parts(whole_.stitches);
    half.seam_marks = parts(whole_.seam_marks);
    half.strips = parts(whole_.strips);
    half.lines = cut(whole_.lines);
    half.corners = named_corners();
    half.brackets = named_brackets();
    half.staples = kept(whole_.staples, [](const Staple& s) { return s.at.x; });
    add_marks(half);
    half.ends =
        kept(whole_.ends, [&](const EndOnPattern& e) { return e.start ? 0.0 : whole_.length; });
    return half;
  }

 private:
  /// The half and what lies outside the cover beside it: a cut on its edge stays whole.
  plane::Box cut_box() const { return {box_.lo - FlatPoint{1, 1}, {fold_, box_.hi.y + 1}}; }

  std::vector<plane::Path> parts(const std::vector<plane::Path>& paths) const {
    std::vector<plane::Path> inside;
    for (const plane::Path& path : paths)
      for (plane::Path& part : clipped(path, cut_box())) inside.push_back(std::move(part));
    return inside;
  }

  bool is_past(double x) const { return x > fold_ + kSame; }

  /// Those that do not lie past the fold; `at` tells where one is.
  template <class T, class At>
  std::vector<T> kept(std::vector<T> all, At at) const {
    std::erase_if(all, [&](const T& one) { return is_past(at(one)); });
    return all;
  }

  std::vector<NamedLine> cut(const std::vector<NamedLine>& all) const {
    auto lines = kept(all, [](const NamedLine& line) { return std::min(line.from.x, line.to.x); });
    const auto cut_at_fold = [&](FlatPoint& end, FlatPoint other) {
      if (end.x <= fold_) return;
      const double along = end.x - other.x;  // none of upright lines, which are on the fold
      end = {fold_, along > kSame ? std::lerp(other.y, end.y, (fold_ - other.x) / along) : end.y};
    };
    for (NamedLine& line : lines) {
      const FlatPoint from = line.from;
      cut_at_fold(line.from, line.to);
      cut_at_fold(line.to, from);
    }
    return lines;
  }

  FlatPoint mirrored(FlatPoint p) const { return {2 * fold_ - p.x, p.y}; }

  void add_marks(HalfPattern& half) const {
    for (std::size_t k = 0; k < whole_.marks.size(); ++k) {
      const MatchMark& mark = whole_.marks[k];
      if (is_past(mark.at.x)) continue;
      const auto image = std::ranges::min_element(whole_.marks, {}, [&](const MatchMark& other) {
        return apart(other.at, mirrored(mark.at));
      });
      const std::string& own = mark_names_[k];
      const std::string& other =
          mark_names_[static_cast<std::size_t>(image - whole_.marks.begin())];
      half.marks.push_back(mark);
      half.mark_names.push_back(other == own ? own : own + ", " + other);
    }
  }

  static FlatPoint middle(const BracketOnPattern& bracket) {
    plane::Box box;
    for (const auto* paths : {&bracket.footprints, &bracket.windows})
      for (const plane::Path& path : *paths) box.cover(bounds(path));
    return box.middle();
  }

  std::vector<BracketOnPattern> named_brackets() const {
    auto brackets =
        kept(whole_.brackets, [](const BracketOnPattern& bracket) { return middle(bracket).x; });
    for (BracketOnPattern& bracket : brackets) {
      const auto image =
          std::ranges::min_element(whole_.brackets, {}, [&](const BracketOnPattern& other) {
            return apart(middle(other), mirrored(middle(bracket)));
          });
      if (image->side != bracket.side) bracket.side += ", " + image->side;
    }
    return brackets;
  }

  std::vector<PatternCorner> named_corners() const {
    auto corners = kept(whole_.corners, [](const PatternCorner& corner) { return corner.s; });
    for (std::size_t k = 0; k < corners.size(); ++k) {
      const PatternCorner& image = whole_.corners[whole_.corners.size() - 1 - k];
      if (image.side_before != corners[k].side_before)
        corners[k].side_after += ", " + image.side_before + " / " + image.side_after;
    }
    return corners;
  }

  const Pattern& whole_;
  const std::vector<std::string>& mark_names_;
  double fold_;
  plane::Box box_;
};

}  // namespace

double fold_of(const Pattern& pattern) { return bounds(pattern.outline).middle().x; }

HalfPattern first_half(const Pattern& whole, const std::vector<std::string>& mark_names) {
  assert(mark_names.size() == whole.marks.size());
  return Halving(whole, mark_names).half();
}

}  // namespace swathe
