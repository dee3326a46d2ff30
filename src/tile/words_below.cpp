#include "tile/words_below.hpp"

#include <algorithm>
#include <utility>

#include "draw/furniture.hpp"
#include "tile/place_on_first.hpp"

namespace swathe {
namespace {

constexpr double kWhite = 2.0;    ///< round them, lest they are read on into other words
constexpr double kTiled = 110.0;  ///< below a drawing wider than a tile, lest an edge cuts them
constexpr double kOtherWidths[] = {150.0, 130.0, 110.0, 90.0, 70.0, 55.0};

}  // namespace

WordsBelow::WordsBelow(std::vector<std::string> texts, const Font& labels, const plane::Box& drawn,
                       double narrowest)
    : texts_(std::move(texts)), labels_(labels) {
  if (texts_.empty()) return;
  const double wide = drawn.width() > narrowest ? std::min(kTiled, narrowest) : narrowest;
  Drawing words;
  const plane::Box box = draw_with_white(words, wide - 2 * kWhite);
  block_.add(words, {false, 0, FlatPoint{} - box.lo});
  const FlatPoint lo = drawn.lo - FlatPoint{0, box.height()};
  room_ = {lo, lo + FlatPoint{box.width(), box.height()}};
}

bool WordsBelow::place(Tiling& tiling) const {
  if (tiling.place_at(room_.lo, block_, {room_.width(), room_.height()})) return true;
  return place_on_first(tiling, kOtherWidths,
                        [&](Drawing& onto, double width) { return draw_with_white(onto, width); });
}

void WordsBelow::draw(Drawing& page) const { page.add(block_, {false, 0, room_.lo}); }

plane::Box WordsBelow::draw_with_white(Drawing& onto, double width) const {
  return draw_text_blocks(onto, labels_, {0, 0}, width, texts_).grown(kWhite);
}

}  // namespace swathe
