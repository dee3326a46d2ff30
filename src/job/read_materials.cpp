#include <algorithm>

#include "base/print.hpp"
#include "job/read_tables.hpp"

// What a bumper is made of: [boards], [padding] and [cloth].
namespace swathe {
namespace {

void read_lapping(TableReader& in, std::vector<std::string>& lapping) {
  if (const auto& sides = in.file().sides) lapping = every_other(*sides);
  in.sides("lapping", lapping);
}

/// Kept in the order of the file, which a TOML table forgets.
void read_colors(TableReader& in, std::vector<ClothColor>& out) {
  const toml::table* table = in.table("colors");
  if (!table) return;
  const int size = static_cast<int>(table->size());
  if (size < kColors.least || size > kColors.most)
    return in.fault(size == 0 ? Why::OutOfRange : Why::TooLarge,
                    fmt::format("cloth.colors has {} colors, expected {} to {}", size,
                                kColors.least, kColors.most),
                    table->source());
  struct Placed {
    toml::source_position at;
    ClothColor color;
  };
  std::vector<Placed> read;
  for (const auto& [key, node] : *table) {
    const std::string expected = fmt::format("1 to {} printable characters", kMostName);
    const int length = characters_in(key.str());
    if (const auto code = first_unprintable(key.str()))
      in.unprintable(*code, key.source(), "the name of a color", expected);
    else if (length < 1 || length > kMostName)
      in.fault(Why::OutOfRange,
               fmt::format("a color is called \"{}\", expected {}", clip(key.str()), expected),
               key.source());
    else if (const auto color = in.read_color(node, "cloth.colors " + clip(key.str())))
      read.push_back({node.source().begin, {std::string(key.str()), *color}});
  }
  if (read.size() != table->size()) return;
  std::ranges::sort(read, [](const Placed& a, const Placed& b) { return a.at < b.at; });
  out.clear();
  for (const Placed& one : read) out.push_back(one.color);
}

void read_hook_and_loop(TableReader& cloth, HookAndLoopKeys& keys) {
  TableReader in(cloth.file(), cloth.table("hook_and_loop"), "cloth", "cloth.hook_and_loop.");
  in.length("flap", keys.flap, kFlap);
  in.length("hem", keys.hem, kSmallGap);
  in.length("strip", keys.strip, kFlap);
  in.number("stretch", keys.stretch, kStretch);
  in.number("density", keys.density_kg_m2, kClothDensity);
  in.finish();
}

}  // namespace

void read_boards(TableReader& root) {
  BoardKeys& boards = root.file().job().boards;
  TableReader in(root.file(), root.table("boards"), "boards", "boards.");
  in.length("thickness", boards.thickness, kBoardThickness);
  in.length("height", boards.height, kBoardHeight);
  in.choice("joint", boards.joint, kJointWords);
  read_lapping(in, boards.lapping);
  in.lengths("stock", boards.stock, kStockLength);
  in.length("kerf", boards.kerf, kKerf);
  in.length("hard_depth", boards.hard_depth, kHardDepth);
  in.number("density", boards.density_kg_m3, kDensity);
  in.finish();
}

void read_padding(TableReader& root) {
  PaddingKeys& padding = root.file().job().padding;
  TableReader in(root.file(), root.table("padding"), "padding", "padding.");
  in.choice("form", padding.form, kPaddingFormWords);
  in.length("diameter", padding.diameter, kPaddingSize);
  in.count("stack", padding.stack, kNoodleStack);
  in.choice("core", padding.core, kCoreWords);
  in.length("depth", padding.depth, kPaddingSize);
  in.length("height", padding.height, kPaddingSize);
  in.length("edge_radius", padding.edge_radius, kEdgeRadius);
  in.choice("corner", padding.corner, kPaddingCornerWords);
  read_lapping(in, padding.lapping);
  in.length("stock", padding.stock, kStockLength);
  in.number("density", padding.density_kg_m3, kDensity);
  in.finish();
}

void read_cloth(TableReader& root) {
  ClothKeys& cloth = root.file().job().cloth;
  TableReader in(root.file(), root.table("cloth"), "cloth", "cloth.");
  in.length("thickness", cloth.thickness, kClothThickness);
  in.length("roll_width", cloth.roll_width, kStockLength);
  in.length("buy_step", cloth.buy_step, kBuyStep);
  read_colors(in, cloth.colors);
  in.length("flap", cloth.flap, kFlap);
  in.length("staple_line", cloth.staple_line, kFlap);
  in.length("staple_spacing", cloth.staple_spacing, kStapleSpacing);
  in.number("stretch_along", cloth.stretch_along, kStretch);
  in.number("stretch_around", cloth.stretch_around, kStretch);
  in.choice("relief", cloth.relief, kReliefWords);
  in.length("setback", cloth.setback, kSmallGap);
  in.length("cut_clear", cloth.cut_clear, kSmallGap);
  in.length("seam", cloth.seam, kSmallGap);
  in.length("end_reach", cloth.end_reach, kFlap);
  in.flag("may_join", cloth.may_join);
  in.length("longest_piece", cloth.longest_piece, kStockLength);
  in.flag("may_lie_across", cloth.may_lie_across);
  in.flag("one_way", cloth.one_way);
  in.number("density", cloth.density_kg_m2, kClothDensity);
  in.number("staple_mass", cloth.staple_g, kStapleMass);
  in.choice("fixing", cloth.fixing, kFixingWords);
  read_hook_and_loop(in, cloth.hook_and_loop);
  in.finish();
}

}  // namespace swathe
