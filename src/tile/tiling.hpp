#pragma once

#include <cstddef>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "draw/strips.hpp"
#include "draw/text_box.hpp"
#include "swathe/draw.hpp"
#include "swathe/type.hpp"
#include "tile/tile_grid.hpp"
#include "tile/tile_search.hpp"

namespace swathe {

inline constexpr double kChord = 0.02;  ///< how far the chords of an arc may stray from it, mm

/// Counts the strokes that a box lies over.
class Crossings {
 public:
  Crossings(const Ink& ink, const plane::Box& page) : ink_(ink), strips_(page) {
    for (std::size_t k = 0; k < ink.clusters.size(); ++k) strips_.add(ink.clusters[k].box, k);
  }

  std::size_t of(const TextBox& box) const {
    const plane::Box around = bounds(box);
    std::size_t count = 0;
    strips_.any_near(around, [&](std::size_t k) {
      const Ink::Cluster& cluster = ink_.clusters[k];
      if (!cluster.box.meets(around)) return false;
      for (std::size_t n = cluster.first; n < cluster.last; ++n)
        if (crossed_by(box, ink_.strokes[n].a, ink_.strokes[n].b)) ++count;
      return false;  // on to the next
    });
    return count;
  }

 private:
  const Ink& ink_;
  Strips strips_;
};

struct TileAt {
  std::size_t column, row;
  friend bool operator==(TileAt, TileAt) = default;
};

/// In the order in which they are glued.
std::vector<TileAt> tiles_of(const TileGrid& grid);

/// The page taken apart, in the page's own coordinates.
class Tiling {
 public:
  Tiling(const Page& full, const Font& labels, TileGrid grid, const Ink& ink);

  const TileGrid& grid() const { return grid_; }
  const std::vector<TileAt>& tiles() const { return tiles_; }
  Drawing drawn(TileAt tile);
  /// The number of the first tile that has room for a block, from 0; nothing where none has.
  std::optional<std::size_t> room_for(FlatPoint size) const;
  /// Puts a block that is printed only once (its lower left corner is its origin) on the first tile
  /// with room for it; false where none has. To be called before any tile is drawn.
  bool place(const Drawing& block, FlatPoint size);
  /// The same at a place of the page: false where no tile has it whole and empty.
  bool place_at(FlatPoint lo, const Drawing& block, FlatPoint size);

 private:
  /// A text of the page on its tile.
  struct PlacedText {
    TextMark text;
    TextBox box;
    TileAt tile;
  };
  /// Where two tiles meet.
  struct Joint {
    struct Diamond {
      FlatPoint middle;
      TextMark on_before, on_after;  ///< the neighbor's name beside each half
    };
    TileAt before, after;  ///< left and right, or upper and lower
    bool upright;
    FlatPoint from, to;
    std::vector<Diamond> diamonds;

    /// Away from the joint, into one of its tiles.
    FlatPoint inward(bool into_before) const {
      const double way = into_before ? 1.0 : -1.0;
      return upright ? FlatPoint{-way, 0} : FlatPoint{0, way};
    }
  };

  std::string name(TileAt tile) const {
    return std::to_string(order_[tile.row * grid_.columns + tile.column]);
  }
  plane::Box cell(TileAt tile) const { return grid_.cell(tile.column, tile.row); }
  plane::Box image(TileAt tile) const { return grid_.image(tile.column, tile.row); }
  bool is_taken(const TextBox& box) const;
  void take(const TextBox& box) {
    const plane::Box around = bounds(box);
    taken_strips_.add(around, taken_.size());
    taken_.push_back({box, around});
  }

  /// Lines of words one below the other, said together: they stay together on a tile.
  using Stack = std::vector<TextMark>;
  std::vector<Stack> stacks() const;
  void place_texts();
  std::optional<std::vector<PlacedText>> placed_together(const Stack& stack) const;
  PlacedText placed(const TextMark& text) const;
  /// A stroke under a text counts as much as moving the text this far, mm.
  static constexpr double kCrossed = 1000.0;
  struct Settled {
    FlatPoint shift;
    TextBox box;
    double cost;  ///< in mm moved; past kCrossed it lies over ink or another text
  };
  Settled settle(const TextBox& box, const plane::Box& room, double reach, double step,
                 double worst = std::numeric_limits<double>::infinity()) const;
  /// The same on whichever tile it finds the best place.
  struct SettledOn {
    Settled place;
    TileAt tile;
  };
  SettledOn settle_on_a_tile(const TextBox& box, double far_reach) const;
  void find_joints();
  void add_joint(TileAt before, TileAt after, bool upright);
  std::vector<FlatPoint> diamond_spots(const Joint& joint) const;
  TextMark neighbor_name(const Joint& joint, FlatPoint diamond, bool on_before) const;

  void draw_marks(Drawing& onto, const plane::Box& image) const;
  void draw_joint(Drawing& onto, const Joint& joint, bool before) const;
  std::optional<FlatPoint> free_place(TileAt tile, FlatPoint size) const;
  bool draw_upright_scale(Drawing& onto, TileAt tile);

  const Page& full_;
  const Font& labels_;
  TileGrid grid_;
  Crossings crossings_;
  std::vector<std::size_t> order_;  ///< glue_order()
  std::vector<TileAt> tiles_;
  std::vector<PlacedText> texts_;
  std::vector<Joint> joints_;
  bool has_upright_scale_ = false;
  struct Block {
    TileAt tile;
    FlatPoint at;
    Drawing drawing;
  };
  std::vector<Block> blocks_;
  struct Taken {
    TextBox box;
    plane::Box around;
  };
  std::vector<Taken> taken_;  ///< by texts, diamonds and scales
  Strips taken_strips_;
};

}  // namespace swathe
