#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <variant>
#include <vector>

#include "draw/text_box.hpp"
#include "swathe/draw.hpp"

namespace swathe::test {

/// How full the pages of a sheet are: the share of the area inside the paper's margins that lies
/// between marks. It is cut into strips 5 mm wide, across or up and down; each is full from its
/// first mark to its last, a mark's bounds counted. The larger share of the two ways holds.
///
/// What is not counted: a head or a foot, which is the room of words and scales that stand alike on
/// half of the other pages; the key; and on tiles what joins them.
class Fullness {
 public:
  Fullness(const Sheet& sheet, double margin_mm, const Font& labels)
      : sheet_(sheet), margin_(margin_mm) {
    for (const Page& page : sheet.pages) {
      std::vector<Part>& parts = parts_.emplace_back();
      for (const draw::Mark& mark : page.drawing.marks()) parts.push_back(part_of(mark, labels));
    }
  }

  double of(std::size_t number) const {
    const Page& page = sheet_.pages[number];
    const plane::Box all = plane::Box{{0, 0}, {page.width_mm, page.height_mm}}.grown(-margin_);
    plane::Box room = all;
    std::vector<double> key_rows;
    for (const Part& part : parts_[number]) {
      if (part.what == What::Sample) key_rows.push_back(part.box.middle().y);
      if (!stands_elsewhere(part, number)) continue;
      const bool foot = part.what == What::Scale && has_foot(number);
      if (foot && part.box.hi.y < kFoot * page.height_mm)
        room.lo.y = std::max(room.lo.y, part.box.hi.y + kAround);
      if (!has_foot(number) && part.box.lo.y > (1 - kHead) * page.height_mm)
        room.hi.y = std::min(room.hi.y, part.box.lo.y - kAround);
    }
    std::vector<plane::Box> own;
    for (const Part& part : parts_[number]) {
      const double y = part.box.middle().y;
      const auto beside = [&](double row) { return std::abs(row - y) < kBesideSample; };
      const bool of_key = part.what == What::Sample ||
                          (part.what == What::Words && std::ranges::any_of(key_rows, beside));
      if (part.what != What::Joint && !of_key && y > room.lo.y && y < room.hi.y)
        own.push_back(part.box);
    }
    return std::max(filled(own, all, true), filled(own, all, false)) / (all.width() * all.height());
  }

 private:
  enum class What { Drawn, Words, Scale, Sample, Joint };
  struct Part {
    What what;
    plane::Box box;
  };
  static constexpr double kStrip = 5.0, kBesideSample = 4.0, kAlike = 0.01, kAround = 1.0;
  static constexpr double kHead = 0.28, kFoot = 0.2;  ///< of the page's height, at most

  static Part part_of(const draw::Mark& mark, const Font& labels) {
    const auto joins = [](LineKind kind) {
      return kind == LineKind::Join || kind == LineKind::Trim;
    };
    if (const auto* line = std::get_if<LineMark>(&mark))
      return {line->sample                    ? What::Sample
              : joins(line->kind)             ? What::Joint
              : line->kind == LineKind::Scale ? What::Scale
                                              : What::Drawn,
              bounds(line->path)};
    if (const auto* fill = std::get_if<FillMark>(&mark)) {
      plane::Box box;
      for (const plane::Path& outline : fill->outlines) box.cover(bounds(outline));
      return {joins(fill->kind) ? What::Joint : What::Drawn, box};
    }
    const auto& text = std::get<TextMark>(mark);
    return {text.text.starts_with("JOIN ") ? What::Joint : What::Words,
            bounds(box_of(text, labels))};
  }

  bool stands_elsewhere(const Part& part, std::size_t page) const {
    if (part.what != What::Words && part.what != What::Scale) return false;
    const auto same = [&](const Part& other) {
      return other.what == part.what && apart(part.box.lo, other.box.lo) < kAlike &&
             apart(part.box.hi, other.box.hi) < kAlike;
    };
    std::size_t others = 0, with_it = 0;
    for (std::size_t k = 0; k < parts_.size(); ++k) {
      if (k == page) continue;
      ++others;
      with_it += std::ranges::any_of(parts_[k], same);
    }
    return others > 0 && 2 * with_it >= others;
  }

  /// Scales stand in the head of a page, or in the foot of a tile.
  bool has_foot(std::size_t page) const {
    return std::ranges::any_of(parts_[page], [&](const Part& part) {
      return part.what == What::Scale && part.box.hi.y < kFoot * sheet_.pages[page].height_mm;
    });
  }

  /// In mm2.
  static double filled(const std::vector<plane::Box>& marks, const plane::Box& room, bool across) {
    double area = 0;
    const double from = across ? room.lo.y : room.lo.x, to = across ? room.hi.y : room.hi.x;
    for (double at = from; at < to - 1e-9; at += kStrip) {
      double first = 1e300, last = -1e300;
      for (const plane::Box& box : marks) {
        const double lo = across ? box.lo.y : box.lo.x, hi = across ? box.hi.y : box.hi.x;
        if (hi < at || lo >= std::min(at + kStrip, to)) continue;
        first = std::min(first, across ? box.lo.x : box.lo.y);
        last = std::max(last, across ? box.hi.x : box.hi.y);
      }
      first = std::max(first, across ? room.lo.x : room.lo.y);
      last = std::min(last, across ? room.hi.x : room.hi.y);
      if (last > first) area += (last - first) * (std::min(at + kStrip, to) - at);
    }
    return area;
  }

  const Sheet& sheet_;
  double margin_;
  std::vector<std::vector<Part>> parts_;  ///< of each page
};

}  // namespace swathe::test
