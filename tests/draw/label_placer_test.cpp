#include "draw/label_placer.hpp"

#include <doctest/doctest.h>

#include <numbers>

#include "support/drawn.hpp"
#include "support/label_font.hpp"
#include "support/made_by_hand.hpp"
#include "support/overlaps.hpp"

namespace swathe {
namespace {

TEST_CASE("text boxes: turned rectangles overlap where a dense set of their points does") {
  // Second method: points sown over one box and asked whether they lie in the other.
  test::for_drawn_cases("text-boxes", 400, [](std::mt19937_64& rng) {
    const auto box = [&] {
      return TextBox{{test::drawn(rng, -20, 20), test::drawn(rng, -20, 20)},
                     plane::direction(test::drawn(rng, 0, 2 * std::numbers::pi)),
                     test::drawn(rng, 1, 15),
                     test::drawn(rng, 1, 15)};
    };
    const TextBox a = box(), b = box();
    bool sown = false;
    constexpr int kSow = 60;
    for (int i = 0; i <= kSow && !sown; ++i)
      for (int k = 0; k <= kSow && !sown; ++k) {
        const FlatPoint p = a.middle + ((2.0 * i / kSow - 1) * a.half_length) * a.along +
                            ((2.0 * k / kSow - 1) * a.half_height) * left_of(a.along);
        sown = contains(b.corners(), p);
      }
    if (sown) CHECK(overlap(a, b));
    // What the sowing may miss is narrower than its mesh.
    if (overlap(a.grown(-0.6), b)) CHECK((sown || overlap(b.grown(-0.6), a) == false));
  });
}

TEST_CASE("text boxes: a stretch crosses a box where points along it lie inside") {
  test::for_drawn_cases("text-box-stretch", 400, [](std::mt19937_64& rng) {
    const TextBox box{{0, 0}, plane::direction(test::drawn(rng, 0, 6)), 10, 4};
    const FlatPoint a{test::drawn(rng, -20, 20), test::drawn(rng, -20, 20)};
    const FlatPoint b{test::drawn(rng, -20, 20), test::drawn(rng, -20, 20)};
    bool inside = false;
    for (int k = 0; k <= 4000; ++k) {
      const FlatPoint p = a + (k / 4000.0) * (b - a);
      inside = inside || contains(box.corners(), p);
    }
    if (inside) CHECK(crossed_by(box, a, b));
    if (!inside) CHECK_FALSE(crossed_by(box.grown(-0.05), a, b));
  });
}

TEST_CASE("LabelPlacer (1), (2): crowded labels keep off one another and off lines") {
  const Font font = test::label_font();
  test::for_drawn_cases("label-placer", 20, [&](std::mt19937_64& rng) {
    Page page{200, 150, {}, "drawn"};
    for (int k = 0; k < 12; ++k)
      page.drawing.line(LineKind::Cut, {test::drawn(rng, 0, 200), test::drawn(rng, 0, 150)},
                        {test::drawn(rng, 0, 200), test::drawn(rng, 0, 150)});
    LabelPlacer labels(page.drawing, font, {{0, 0}, {200, 150}});
    int written = 0;
    for (int k = 0; k < 40; ++k) {
      const FlatPoint p{test::drawn(rng, 0, 200), test::drawn(rng, 0, 150)};
      const FlatPoint q{test::drawn(rng, 0, 200), test::drawn(rng, 0, 150)};
      written += labels.near(p, "label", 3.5, 3.9) ? 1 : 0;
      written += labels.beside(p, q, "along", 4, 2) ? 1 : 0;
      written += labels.block({{{"one", 5}, {"and two", 4}}}, {{0, 0}, {200, 150}}, p) ? 1 : 0;
    }
    CHECK(written > 20);
    CHECK(test::text_faults(page, font).empty());
    CHECK(test::lines_through_text(page, font).empty());
  });
}

}  // namespace
}  // namespace swathe
