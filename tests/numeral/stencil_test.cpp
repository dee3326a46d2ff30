#include "numeral/stencil.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <set>
#include <vector>

#include "numeral/size.hpp"
#include "plane/clip.hpp"
#include "support/fonts.hpp"
#include "swathe/base.hpp"

namespace swathe {
namespace {

constexpr double kWidth = 6.35;  // 1/4 in

plane::Polygon box(double x0, double y0, double x1, double y1) {
  return {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}};
}

plane::Polygon hole(double x0, double y0, double x1, double y1) {
  return {{x0, y0}, {x0, y1}, {x1, y1}, {x1, y0}};
}

plane::Region drawn_digit(const Font& font, char digit) {
  const auto set = set_number(font, std::string(1, digit), inches(4), {});
  REQUIRE(set.has_value());
  return set->shapes.front().outline;
}

/// Pieces of the sheet left when `cut` is cut out of it, by the polygon library: what is left of a
/// large rectangle has one counter-clockwise outline a piece.
int pieces_by_outlines(const plane::Region& cut) {
  const plane::Box around = bounds(cut).grown(20);
  const plane::Region sheet =
      subtract({box(around.lo.x, around.lo.y, around.hi.x, around.hi.y)}, cut);
  return static_cast<int>(std::count_if(sheet.begin(), sheet.end(),
                                        [](const plane::Polygon& p) { return area(p) > 0; }));
}

/// The same by another way that shares no code with it: the sheet as squares of a grid, joined to
/// their neighbors by union and find. Pieces smaller than four squares are the grid's own.
class GridSheet {
 public:
  explicit GridSheet(const plane::Region& cut) : around_(bounds(cut).grown(5)) {
    columns_ = static_cast<int>(around_.width() / kSquare);
    rows_ = static_cast<int>(around_.height() / kSquare);
    sheet_.assign(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_), true);
    for (int row = 0; row < rows_; ++row) cut_row(cut, row);
  }

  int pieces() {
    parent_.resize(sheet_.size());
    std::iota(parent_.begin(), parent_.end(), std::size_t{0});
    for (std::size_t i = 0; i < sheet_.size(); ++i) {
      const std::size_t across = static_cast<std::size_t>(columns_);
      if (!sheet_[i]) continue;
      if ((i + 1) % across != 0 && sheet_[i + 1]) parent_[root(i)] = root(i + 1);
      if (i + across < sheet_.size() && sheet_[i + across]) parent_[root(i)] = root(i + across);
    }
    std::vector<int> size(sheet_.size(), 0);
    for (std::size_t i = 0; i < sheet_.size(); ++i) size[root(i)] += sheet_[i] ? 1 : 0;
    return static_cast<int>(std::count_if(size.begin(), size.end(), [](int n) { return n >= 4; }));
  }

 private:
  static constexpr double kSquare = 0.5;  // mm

  void cut_row(const plane::Region& cut, int row) {
    const double y = around_.lo.y + (row + 0.5) * kSquare;
    std::vector<double> crossings;
    for (const plane::Polygon& contour : cut) {
      for (std::size_t i = 0; i < contour.size(); ++i) {
        const FlatPoint a = contour[i], b = contour[(i + 1) % contour.size()];
        if ((a.y <= y) != (b.y <= y)) {
          crossings.push_back(a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y));
        }
      }
    }
    std::sort(crossings.begin(), crossings.end());
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
      for (int column = 0; column < columns_; ++column) {
        const double x = around_.lo.x + (column + 0.5) * kSquare;
        if (x < crossings[i] || x > crossings[i + 1]) continue;
        sheet_[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) +
               static_cast<std::size_t>(column)] = false;
      }
    }
  }

  std::size_t root(std::size_t i) {
    while (parent_[i] != i) i = parent_[i] = parent_[parent_[i]];
    return i;
  }

  plane::Box around_;
  int columns_ = 0, rows_ = 0;
  std::vector<bool> sheet_;
  std::vector<std::size_t> parent_;
};

/// What is cut when every bridge but one is left standing.
plane::Region cut_without(const plane::Region& outline, const Stencil& stencil, std::size_t lost) {
  plane::Region bars;
  for (std::size_t i = 0; i < stencil.bridges.size(); ++i) {
    if (i != lost) bars.push_back(stencil.bridges[i].bar);
  }
  return subtract(outline, bars);
}

/// Checks all that make_stencil() holds; `outline` must have been given a stencil.
void check_holds(const plane::Region& outline, const Stencil& stencil, double width) {
  CHECK(pieces_by_outlines(stencil.cut) == 1);
  CHECK(GridSheet(stencil.cut).pieces() == 1);
  for (std::size_t lost = 0; lost < stencil.bridges.size(); ++lost) {
    CAPTURE(lost);
    const plane::Region cut = cut_without(outline, stencil, lost);
    CHECK(pieces_by_outlines(cut) == 1);
    CHECK(GridSheet(cut).pieces() == 1);
  }
  for (const Bridge& bridge : stencil.bridges) {
    CHECK(bridge.width == doctest::Approx(width));
    CHECK(bridge.length == doctest::Approx(apart(bridge.from, bridge.to)));
    // The bar is sheet throughout, and both its ends stand in sheet over their full width.
    // Where the cut crosses the bar's sides its corners are rounded to the grid.
    CHECK(intersect(plane::offset({bridge.bar}, -2 * plane::kClipGrid), stencil.cut).empty());
    REQUIRE(bridge.bar.size() == 4);
    CHECK(apart(bridge.bar[0], bridge.bar[1]) == doctest::Approx(width));
    CHECK(apart(bridge.bar[2], bridge.bar[3]) == doctest::Approx(width));
    for (int end : {0, 2}) {
      const FlatPoint a = bridge.bar[static_cast<std::size_t>(end)];
      const FlatPoint b = bridge.bar[static_cast<std::size_t>(end) + 1];
      for (int i = 0; i <= 20; ++i) CHECK_FALSE(contains(outline, a + (i / 20.0) * (b - a)));
    }
  }
  for (std::size_t i = 0; i < stencil.bridges.size(); ++i) {
    for (std::size_t j = i + 1; j < stencil.bridges.size(); ++j) {
      const plane::Region grown = plane::offset({stencil.bridges[i].bar}, width - 0.01);
      CHECK(intersect(grown, {stencil.bridges[j].bar}).empty());
    }
  }
}

TEST_CASE("stencil (1)-(4): every digit of every bundled font stays in one piece") {
  int islands = 0;
  for (const BundledFont& bundled : test::numeral_fonts()) {
    const Font font = test::opened(bundled);
    for (char digit = '0'; digit <= '9'; ++digit) {
      CAPTURE(bundled.name);
      CAPTURE(digit);
      const plane::Region outline = drawn_digit(font, digit);
      const auto stencil = make_stencil(outline, kWidth);
      REQUIRE(stencil.has_value());
      // The outline alone lets every island fall out: the checks can fail.
      CHECK(pieces_by_outlines(outline) == 1 + stencil->counters);
      CHECK(GridSheet(outline).pieces() == 1 + stencil->counters);
      islands += stencil->counters;
      check_holds(outline, *stencil, kWidth);
    }
  }
  CHECK(islands > 30);
}

TEST_CASE("stencil: the two stencil fonts have no islands and are cut as they are") {
  for (const BundledFont& bundled : test::numeral_fonts()) {
    if (bundled.name.find("Stencil") == std::string::npos) continue;
    const Font font = test::opened(bundled);
    for (char digit = '0'; digit <= '9'; ++digit) {
      const plane::Region outline = drawn_digit(font, digit);
      const auto stencil = make_stencil(outline, kWidth);
      REQUIRE(stencil.has_value());
      CHECK(stencil->counters == 0);
      CHECK(stencil->bridges.empty());
      CHECK(area(stencil->cut) == doctest::Approx(area(outline)));
    }
  }
}

TEST_CASE("stencil: a nought is bridged upright at top and bottom, in the middle") {
  // Strokes 20 wide at the sides and 12 at top and bottom: worked by hand.
  const plane::Region nought = {box(0, 0, 60, 100), hole(20, 12, 40, 88)};
  const auto stencil = make_stencil(nought, 6);
  REQUIRE(stencil.has_value());
  CHECK(stencil->counters == 1);
  REQUIRE(stencil->bridges.size() == 2);
  for (const Bridge& bridge : stencil->bridges) {
    CHECK(bridge.length == doctest::Approx(12));
    CHECK(bridge.from.x == doctest::Approx(30));
    CHECK(bridge.to.x == doctest::Approx(30));
  }
  CHECK(area(stencil->cut) == doctest::Approx(60 * 100 - 20 * 76 - 2 * 6 * 12).epsilon(1e-4));
}

TEST_CASE("stencil: level bars where the upright stroke is much the thinner") {
  const plane::Region nought = {box(0, 0, 60, 100), hole(10, 30, 50, 70)};
  const auto stencil = make_stencil(nought, 6);
  REQUIRE(stencil.has_value());
  REQUIRE(stencil->bridges.size() == 2);
  for (const Bridge& bridge : stencil->bridges) {
    CHECK(bridge.length == doctest::Approx(10));
    CHECK(bridge.from.y == doctest::Approx(50));
  }
}

TEST_CASE("stencil: an island slimmer than the bridge is held from its sides") {
  const plane::Region nought = {box(0, 0, 40, 100), hole(18, 20, 22, 80)};
  const auto stencil = make_stencil(nought, 6);
  REQUIRE(stencil.has_value());
  check_holds(nought, *stencil, 6);
  for (const Bridge& bridge : stencil->bridges) CHECK(bridge.length == doctest::Approx(18));
}

TEST_CASE("stencil: a dotted nought's dot is no island, and its island is held") {
  const plane::Region dotted = {box(0, 0, 60, 100), hole(12, 12, 48, 88), box(25, 45, 35, 55)};
  const auto stencil = make_stencil(dotted, 6);
  REQUIRE(stencil.has_value());
  CHECK(stencil->counters == 1);
  check_holds(dotted, *stencil, 6);
}

TEST_CASE("stencil: refusals say what to give") {
  // The island is 8 by 8. Two bars from opposite sides run 0.2 mm into it each and must stand
  // their own width apart: 7.6 mm is the most, and 7.5 what is safe to say.
  const plane::Region tight = {box(0, 0, 40, 40), hole(16, 16, 24, 24)};
  const auto refused = make_stencil(tight, 10);
  REQUIRE_FALSE(refused.has_value());
  REQUIRE(refused.error().size() == 1);
  CHECK(refused.error().front().why == Why::DoesNotFit);
  CHECK(refused.error().front().sentence ==
        "bridges 10 mm wide cannot hold its island, expected bridges 7.5 mm wide");
  CHECK(make_stencil(tight, 7.5).has_value());
  // In inches to 1/32: 9/32 in is 7.14 mm, 10/32 in would be 7.94 mm.
  CHECK(make_stencil(tight, 12.7, Units::Inches).error().front().sentence ==
        "bridges 1/2 in wide cannot hold its island, expected bridges 9/32 in wide");
  CHECK(make_stencil(tight, 0).error().front().why == Why::OutOfRange);
  CHECK(make_stencil(tight, std::nan("")).error().front().why == Why::OutOfRange);
}

TEST_CASE("stencil: what is advised does, for every digit that is refused") {
  for (const BundledFont& bundled : test::numeral_fonts()) {
    const Font font = test::opened(bundled);
    for (char digit : {'0', '4', '6', '8', '9'}) {
      CAPTURE(bundled.name);
      CAPTURE(digit);
      const plane::Region outline = drawn_digit(font, digit);
      const auto stencil = make_stencil(outline, 12.7);
      if (stencil) {
        check_holds(outline, *stencil, 12.7);
        continue;
      }
      const std::string& sentence = stencil.error().front().sentence;
      const std::string before = "expected bridges ";
      const auto from = sentence.find(before), to = sentence.rfind(" wide");
      REQUIRE(from != std::string::npos);
      REQUIRE(to > from);
      const auto advised = parse_length(
          sentence.substr(from + before.size(), to - from - before.size()), Units::Inches);
      REQUIRE(advised.has_value());
      const auto narrower = make_stencil(outline, advised->mm());
      REQUIRE(narrower.has_value());
      check_holds(outline, *narrower, advised->mm());
    }
  }
}

TEST_CASE("stencil: larger and smaller digits are bridged alike") {
  const Font font = test::opened(test::numeral_font("Anton"));
  for (char digit : {'0', '4', '6', '8', '9'}) {
    CAPTURE(digit);
    plane::Region outline = drawn_digit(font, digit);
    const auto plain = make_stencil(outline, kWidth);
    for (plane::Polygon& contour : outline) {
      for (FlatPoint& p : contour) p = 3 * p;
    }
    const auto large = make_stencil(outline, 3 * kWidth);
    REQUIRE(plain.has_value());
    REQUIRE(large.has_value());
    REQUIRE(plain->bridges.size() == large->bridges.size());
    for (std::size_t i = 0; i < plain->bridges.size(); ++i) {
      // The seat of 0.2 mm does not grow with the digit, so a place may differ a little.
      CHECK(apart(3 * plain->bridges[i].from, large->bridges[i].from) < kWidth);
      CHECK(large->bridges[i].length ==
            doctest::Approx(3 * plain->bridges[i].length).epsilon(0.01));
    }
  }
}

TEST_CASE("stencil: strokes under bridges keep their length and lose their width") {
  const plane::Region nought = {box(0, 0, 60, 100), hole(20, 12, 40, 88)};
  const auto stencil = make_stencil(nought, 6);
  REQUIRE(stencil.has_value());
  // A made-up axis: the ring's middle line in steps of 1 mm, 20 wide at the sides, 12 elsewhere.
  std::vector<StrokePiece> axis;
  for (double x = 10.5; x < 50; ++x) {
    axis.push_back({{x, 6}, 1, 12});
    axis.push_back({{x, 94}, 1, 12});
  }
  for (double y = 6.5; y < 94; ++y) {
    axis.push_back({{10, y}, 1, 20});
    axis.push_back({{50, y}, 1, 20});
  }
  const type::Stroke before(axis), after = less_bridges(before, stencil->bridges);
  CHECK(after.length() == doctest::Approx(before.length()));
  CHECK(before.share_at_least(12) == doctest::Approx(1));
  // Two bars of 6 mm out of 2 (40 + 88) mm.
  CHECK(after.share_at_least(12) == doctest::Approx(1 - 12.0 / 256));
  CHECK(after.share_at_least(20) == doctest::Approx(before.share_at_least(20)));
}

}  // namespace
}  // namespace swathe
