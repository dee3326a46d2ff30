#pragma once

#include <vector>

#include "stock/no_fit.hpp"
#include "stock/strip.hpp"

namespace swathe {

/// Pieces and the ways they may be turned, shapes that are alike under one number, and how each
/// shape fits beside each.
///
/// Of more than kMostShapes only each piece's first way is kept; of more than these, or of more
/// than kMostPieces, it is not reckoned how they fit.
class StripTable {
 public:
  explicit StripTable(const std::vector<StripPiece>& pieces);
  bool has_no_fits() const { return !no_fits_.empty(); }

  std::size_t size() const { return ways_.size(); }
  /// A piece's ways: numbers of shapes, each once.
  const std::vector<std::size_t>& ways(std::size_t piece) const { return ways_[piece]; }
  const SteppedShape& shape(std::size_t number) const { return shapes_[number]; }
  const NoFit& no_fit(std::size_t first, std::size_t second) const {
    return no_fits_[first * shapes_.size() + second];
  }
  bool alike(std::size_t a, std::size_t b) const { return ways_[a] == ways_[b]; }
  /// The first of the piece's own ways with that shape.
  std::size_t way_of(std::size_t piece, std::size_t shape) const;
  /// No lay is shorter: the longest piece, and all of their cloth over the width.
  Micron at_least(const Strip& strip) const;

 private:
  void take(const std::vector<StripPiece>& pieces, std::size_t most_ways);

  std::vector<SteppedShape> shapes_;
  std::vector<std::vector<std::size_t>> ways_, shape_of_way_;
  std::vector<NoFit> no_fits_;
};

inline constexpr std::size_t kMostShapes = 64, kMostPieces = 64;

/// A piece while a lay is made: the number of its shape, and the lower left corner of its box.
struct Laid {
  std::size_t shape = 0;
  Micron x = 0, y = 0;
};
using Layout = std::vector<Laid>;  ///< of each piece, in the order given

Micron length_of(const Layout& layout, const StripTable& table);
/// The nearest place from `x` on where a piece so long lies on one strip.
Micron on_one_strip(Micron x, Micron along, const Strip& strip);

}  // namespace swathe
