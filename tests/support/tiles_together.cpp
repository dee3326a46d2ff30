#include "support/tiles_together.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <variant>

#include "draw/marks.hpp"
#include "support/picture.hpp"
#include "swathe/write.hpp"

namespace swathe::test {
namespace {

/// Where samples of a key stand: they show a kind, and are nothing of the page's own.
std::vector<plane::Box> samples_of(const Page& page) {
  std::vector<plane::Box> samples;
  for (const draw::Mark& mark : page.drawing.marks())
    if (const auto* const line = std::get_if<LineMark>(&mark); line && line->sample)
      samples.push_back(bounds(line->path).grown(5.0));  // a filled sign stands on its line
  return samples;
}

/// The page's own lines and fills alone, dashed lines as whole ones: dashes start anew on each
/// tile.
Page bare(const Page& page) {
  Page own{page.width_mm, page.height_mm, {}, page.name};
  const std::vector<plane::Box> samples = samples_of(page);
  const auto in_key = [&](const FillMark& fill) {
    plane::Box all;
    for (const plane::Path& outline : fill.outlines) all.cover(bounds(outline));
    return std::ranges::any_of(samples, [&](const plane::Box& box) { return box.holds(all); });
  };
  for (const draw::Mark& mark : page.drawing.marks()) {
    if (const auto* const line = std::get_if<LineMark>(&mark))
      if (is_pages_own(*line)) own.drawing.line(LineKind::Outline, line->path);
    if (const auto* const fill = std::get_if<FillMark>(&mark))
      if (is_pages_own(fill->kind) && !in_key(*fill))
        own.drawing.fill(fill->kind, fill->color, fill->outlines);
  }
  return own;
}

plane::Box ink_bounds(const Page& page) {
  plane::Box box;
  for (const draw::Mark& mark : page.drawing.marks()) {
    if (const auto* const line = std::get_if<LineMark>(&mark)) box.cover(bounds(line->path));
    if (const auto* const fill = std::get_if<FillMark>(&mark))
      for (const plane::Path& outline : fill->outlines) box.cover(bounds(outline));
  }
  return box;
}

}  // namespace

bool is_pages_own(LineKind kind) { return kind < LineKind::Grain && kind != LineKind::Bridge; }

std::vector<Diamond> diamonds_of(const Page& page, const std::vector<std::string>& tiles) {
  std::vector<Diamond> diamonds;
  for (const draw::Mark& mark : page.drawing.marks()) {
    const auto* const fill = std::get_if<FillMark>(&mark);
    if (!fill || fill->kind != LineKind::Join || fill->color.red > 0.5) continue;
    REQUIRE(fill->outlines.size() == 2);  // and its white middle
    const auto& v = fill->outlines[0].vertices;
    REQUIRE(v.size() == 3);
    if (apart(v[0].at, v[2].at) < 2 * kDiamondHalf - 1e-6) continue;  // the key's are smaller
    Diamond diamond{0.5 * (v[0].at + v[2].at), {}, {}};
    diamond.into = unit(v[1].at - diamond.base);
    double nearest = 1e9;
    for (const draw::Mark& other : page.drawing.marks()) {
      const auto* const text = std::get_if<TextMark>(&other);
      if (!text) continue;
      const std::string name = text->text.starts_with("JOIN ") ? text->text.substr(5) : text->text;
      if (std::ranges::find(tiles, name) == tiles.end()) continue;
      if (const double away = apart(text->at, diamond.base); away < nearest) {
        nearest = away;
        diamond.neighbor = name;
      }
    }
    diamonds.push_back(diamond);
  }
  return diamonds;
}

std::map<std::string, FlatPoint> put_together(const Sheet& sheet) {
  std::vector<std::string> names;
  for (const Page& page : sheet.pages) names.push_back(page.name);
  std::map<std::string, std::vector<Diamond>> diamonds;
  for (const Page& page : sheet.pages) diamonds[page.name] = diamonds_of(page, names);
  std::map<std::string, FlatPoint> places = {{sheet.pages.front().name, {0, 0}}};
  for (std::size_t round = 0; round < sheet.pages.size(); ++round)
    for (const auto& [name, own] : diamonds) {
      if (!places.contains(name)) continue;
      for (const Diamond& diamond : own) {
        REQUIRE(diamonds.contains(diamond.neighbor));
        std::vector<Diamond> faced, mine;
        for (const Diamond& other : diamonds[diamond.neighbor])
          if (other.neighbor == name) faced.push_back(other);
        for (const Diamond& d : own)
          if (d.neighbor == diamond.neighbor) mine.push_back(d);
        REQUIRE(faced.size() == mine.size());
        for (std::size_t k = 0; k < mine.size(); ++k) {
          CHECK(norm(mine[k].into + faced[k].into) < 1e-9);  // two halves of one
          const FlatPoint place = places[name] + mine[k].base - faced[k].base;
          const auto [slot, fresh] = places.try_emplace(diamond.neighbor, place);
          CHECK(apart(slot->second, place) < 1e-9);
        }
      }
    }
  CHECK(places.size() == sheet.pages.size());
  return places;
}

void check_together(const Page& page, const Sheet& sheet, const Font& font, int dpi) {
  const auto places = put_together(sheet);
  Sheet one{{"whole", "whole", SheetKind::Pattern, "full size"}, {bare(page)}};
  const Picture single = raster(to_pdf(one, font), 1, dpi);
  plane::Box assembled;
  for (const Page& part : sheet.pages) {
    const plane::Box box = ink_bounds(bare(part));
    if (box.empty()) continue;
    assembled.cover(box.lo + places.at(part.name));
    assembled.cover(box.hi + places.at(part.name));
  }
  const plane::Box original = ink_bounds(bare(page));
  CHECK(assembled.width() == doctest::Approx(original.width()));
  CHECK(assembled.height() == doctest::Approx(original.height()));
  const FlatPoint origin = assembled.lo - original.lo;

  const auto dots = static_cast<std::size_t>(single.width * single.height);
  std::vector<unsigned char> ink(dots, 255), times(dots, 0), strip(dots, 0);
  for (const Page& part : sheet.pages) {
    Sheet bare_part{{"part", "part", SheetKind::Tiles, ""}, {bare(part)}};
    const Picture picture = raster(to_pdf(bare_part, font), 1, dpi);
    const FlatPoint at = places.at(part.name) - origin;
    const double per_mm = single.dots_per_mm;
    const int right = static_cast<int>(std::lround(at.x * per_mm));
    const int down =
        static_cast<int>(std::lround((page.height_mm - at.y - part.height_mm) * per_mm));
    const auto on_page = [&](int x, int y) {
      return x >= 0 && y >= 0 && x < single.width && y < single.height
                 ? static_cast<std::size_t>(y * single.width + x)
                 : dots;
    };
    for (int y = 0; y < picture.height; ++y)
      for (int x = 0; x < picture.width; ++x) {
        const std::size_t k = on_page(x + right, y + down);
        if (k == dots) continue;
        ink[k] = std::min(ink[k], static_cast<unsigned char>(picture.gray(x, y)));
        times[k] = static_cast<unsigned char>(times[k] + (picture.gray(x, y) < 100));
      }
    for (const draw::Mark& mark : part.drawing.marks()) {
      const auto* const fill = std::get_if<FillMark>(&mark);
      if (!fill || fill->kind != LineKind::Join || fill->color.red < 0.5) continue;
      for (const plane::Path& outline : fill->outlines) {
        const plane::Box box = bounds(outline).grown(1.0);  // a line at its edge is so wide
        for (int y = static_cast<int>((part.height_mm - box.hi.y) * per_mm);
             y < (part.height_mm - box.lo.y) * per_mm; ++y)
          for (int x = static_cast<int>(box.lo.x * per_mm); x < box.hi.x * per_mm; ++x)
            if (const std::size_t k = on_page(x + right, y + down); k < dots) strip[k] = 1;
      }
    }
  }
  const auto dark_near = [&](const auto& gray, int x, int y) {
    for (int dy = -2; dy <= 2; ++dy)
      for (int dx = -2; dx <= 2; ++dx) {
        const int px = x + dx, py = y + dy;
        if (px < 0 || py < 0 || px >= single.width || py >= single.height) continue;
        if (gray(px, py) < 160) return true;
      }
    return false;
  };
  const auto of_tiles = [&](int x, int y) {
    return static_cast<int>(ink[static_cast<std::size_t>(y * single.width + x)]);
  };
  const auto of_page = [&](int x, int y) { return single.gray(x, y); };
  int lost = 0, extra = 0, doubled = 0, seen = 0;
  for (int y = 0; y < single.height; ++y)
    for (int x = 0; x < single.width; ++x) {
      const auto k = static_cast<std::size_t>(y * single.width + x);
      if (of_page(x, y) < 100) {
        ++seen;
        lost += !dark_near(of_tiles, x, y);
      }
      if (of_tiles(x, y) < 100) extra += !dark_near(of_page, x, y);
      doubled += times[k] > 1 && !strip[k];
    }
  CHECK(seen > 10000);
  CHECK(lost == 0);
  CHECK(extra == 0);
  CHECK(doubled == 0);
}

}  // namespace swathe::test
