#include <algorithm>

#include "base/print.hpp"
#include "job/read_tables.hpp"

// What a bumper is made of: [boards], [padding] and [cloth].
namespace swathe {
namespace {

/// Where a job does not say, every other side laps.
template <class Keys>
void read_with_lapping(TableReader& in, Keys& keys) {
  if (const auto& sides = in.file().sides) keys.lapping = every_other(*sides);
  read_keys(in, keys);
  in.finish();
}

/// Kept in the order of the file, which a TOML table forgets.
void read_colors(TableReader& in, std::vector<ClothColor>& out) {
  const toml::table* table = in.table("colors");
  if (!table) return;
  const auto& [count, most] = in.held<OfColors>("colors");
  const int size = static_cast<int>(table->size());
  if (size < count.least || size > count.most)
    return in.fault(
        size == 0 ? Why::OutOfRange : Why::TooLarge,
        fmt::format("cloth.colors has {} colors, expected {} to {}", size, count.least, count.most),
        table->source());
  struct Placed {
    toml::source_position at;
    ClothColor color;
  };
  std::vector<Placed> read;
  for (const auto& [key, node] : *table) {
    const std::string expected = fmt::format("1 to {} printable characters", most);
    const int length = characters_in(key.str());
    if (const auto code = first_unprintable(key.str()))
      in.unprintable(*code, key.source(), "the name of a color", expected);
    else if (length < 1 || length > most)
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
  read_keys(in, keys);
  in.finish();
}

}  // namespace

void read_boards(TableReader& root) {
  TableReader in(root.file(), root.table("boards"), "boards", "boards.");
  read_with_lapping(in, root.file().job().boards);
}

void read_padding(TableReader& root) {
  TableReader in(root.file(), root.table("padding"), "padding", "padding.");
  read_with_lapping(in, root.file().job().padding);
}

void read_cloth(TableReader& root) {
  TableReader in(root.file(), root.table("cloth"), "cloth", "cloth.");
  read_keys(
      in, root.file().job().cloth,
      [&](std::string_view, std::vector<ClothColor>& colors) { read_colors(in, colors); },
      [&](std::string_view, HookAndLoopKeys& keys) { read_hook_and_loop(in, keys); });
  in.finish();
}

}  // namespace swathe
