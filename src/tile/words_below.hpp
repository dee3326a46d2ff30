#pragma once

#include <string>
#include <vector>

#include "swathe/draw.hpp"
#include "swathe/type.hpp"
#include "tile/tiling.hpp"

namespace swathe {

/// The words below a page: all of them on one tile, in their order.
class WordsBelow {
 public:
  /// Below what is drawn on the page, for tiles whose images are no narrower than `narrowest`.
  WordsBelow(std::vector<std::string> texts, const Font& labels, const plane::Box& drawn,
             double narrowest);

  bool empty() const { return texts_.empty(); }
  /// What tiles must hold for the words to stand there.
  const plane::Box& room() const { return room_; }
  /// Puts them there, else where the lowest tile that has room for them has it; false where no tile
  /// has.
  bool place(Tiling& tiling) const;
  /// As texts of the page, each of which finds a place for itself.
  void draw(Drawing& page) const;

 private:
  /// From the origin down; the box they take.
  plane::Box draw_with_white(Drawing& onto, double width) const;

  std::vector<std::string> texts_;
  const Font& labels_;
  Drawing block_;    ///< lower left corner at the origin
  plane::Box room_;  ///< with white round it
};

}  // namespace swathe
