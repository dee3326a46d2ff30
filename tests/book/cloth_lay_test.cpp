#include "book/cloth_lay.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "plane/clip.hpp"
#include "support/examples.hpp"
#include "support/label_font.hpp"
#include "support/made.hpp"
#include "support/made_examples.hpp"
#include "support/overlaps.hpp"

// The picture of the lay read back: outlines and words.
namespace swathe {
namespace {

/// What is drawn of a lay, in the page's millimeters.
struct Drawn {
  plane::Box roll;
  plane::Region covers;
};

Drawn drawn_in(const Picture& picture) {
  Drawn drawn;
  for (const draw::Mark& mark : picture.drawing.marks()) {
    const auto* line = std::get_if<LineMark>(&mark);
    if (!line || !line->path.closed) continue;
    if (line->kind == LineKind::Thin) drawn.roll.cover(bounds(line->path));
    if (line->kind == LineKind::Outline) {
      plane::Polygon outline = flatten(line->path, 0.01);
      if (area(outline) < 0) std::ranges::reverse(outline);
      drawn.covers.push_back(std::move(outline));
    }
  }
  return drawn;
}

TEST_CASE("lay's picture: covers to one scale, none over another, all on the roll") {
  // Overlaps by Clipper, areas by the shoelace formula against the share that the lay says is used.
  const Font labels = test::label_font();
  constexpr double kLine = 0.1;  // mm on the page: what a drawn outline may stray
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made_example(path);
    for (const ClothLay& lay : made.stock.cloth) {
      const Drawn drawn = drawn_in(draw_lay(made, lay, labels, 190, 150));
      REQUIRE(drawn.covers.size() == lay.placements.size());
      const double scale = drawn.roll.width() / lay.length_to_buy;
      CHECK(drawn.roll.height() == doctest::Approx(scale * lay.roll_width));
      double cloth = 0;
      for (std::size_t a = 0; a < drawn.covers.size(); ++a) {
        CHECK(drawn.roll.grown(1e-6).holds(bounds(drawn.covers[a])));
        cloth += area(drawn.covers[a]);
        for (std::size_t b = a + 1; b < drawn.covers.size(); ++b)
          for (const plane::Polygon& both :
               plane::intersect({drawn.covers[a]}, {drawn.covers[b]})) {
            const plane::Box box = bounds(both);  // no more than a line's width of either
            CHECK(std::min(box.width(), box.height()) <= 2 * kLine);
          }
      }
      CHECK(cloth / (drawn.roll.width() * drawn.roll.height()) ==
            doctest::Approx(lay.used_fraction).epsilon(0.01));
    }
  }
}

TEST_CASE("lay's picture: every cover and its name show its bumper, the rest the cloth") {
  const Font labels = test::label_font();
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made_example(path);
    for (const ClothLay& lay : made.stock.cloth) {
      const Drawing drawing = draw_lay(made, lay, labels, 190, 150).drawing;
      auto placement = lay.placements.begin();
      std::size_t named = 0;
      for (const draw::Mark& mark : drawing.marks()) {
        const auto* line = std::get_if<LineMark>(&mark);
        const auto* text = std::get_if<TextMark>(&mark);
        const std::string shows = to_text(shown_by(mark));
        if (line && line->kind == LineKind::Outline && line->path.closed) {
          REQUIRE(placement != lay.placements.end());
          CHECK(shows == "bumper." + (placement++)->bumper);
        } else if (text && text->text.starts_with("cover ")) {
          const auto one = std::ranges::find_if(lay.placements, [&](const ClothPlacement& p) {
            return (text->text + ",").starts_with("cover " + p.piece + ",");
          });
          REQUIRE(one != lay.placements.end());
          CHECK(shows == "bumper." + one->bumper);
          ++named;
        } else if (!shows.starts_with("bumper.")) {  // a leader to a small cover has its name's
          CHECK(shows == "cloth");
        }
      }
      CHECK(placement == lay.placements.end());
      CHECK(named == lay.placements.size());
    }
  }
}

TEST_CASE("lay's picture: seen with the asked face up, its measures printed") {
  const Font labels = test::label_font();
  for (const std::string face : {"inside", "outside"}) {
    CAPTURE(face);
    std::string text = test::bytes_of(test::example("tin-heron"));
    text += "\n[paper]\nface = \"" + face + "\"\n";
    const Made made = test::made(text);
    const ClothLay& lay = made.stock.cloth.front();
    const Picture picture = draw_lay(made, lay, labels, 190, 150);
    const Drawn drawn = drawn_in(picture);
    const double scale = drawn.roll.width() / lay.length_to_buy;
    for (std::size_t k = 0; k < lay.placements.size(); ++k) {
      // Inside up, the roll's start is on the right.
      const double left = bounds(drawn.covers[k]).lo.x - drawn.roll.lo.x;
      const double right = drawn.roll.hi.x - bounds(drawn.covers[k]).hi.x;
      CHECK((face == "inside" ? right : left) == doctest::Approx(scale * lay.placements[k].x));
      CHECK(test::says(picture.drawing, "cover " + lay.placements[k].piece));
    }
    for (const double asked : {lay.length_to_buy, lay.roll_width})
      CHECK(test::says(picture.drawing, exact(mm(asked), made.job.units)));
  }
}

}  // namespace
}  // namespace swathe
