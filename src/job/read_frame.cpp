#include <algorithm>

#include "base/print.hpp"
#include "job/read_tables.hpp"
#include "job/spelling.hpp"

namespace swathe {
namespace {

/// Counter-clockwise from the front right, so that the sides run front, left, back, right.
std::vector<FlatPoint> rectangle(Length width, Length depth) {
  const double w = width.mm(), d = depth.mm();
  return {{w, d}, {0, d}, {0, 0}, {w, 0}};
}

void read_rectangle(TableReader& in, JobFile& file) {
  FrameKeys& frame = file.job().frame;
  frame.sides = {"front", "left", "back", "right"};
  file.sides = frame.sides;
  Length width, depth;
  in.require("width");
  in.require("depth");
  const bool wide = in.read("width", width), deep = in.read("depth", depth);
  if (wide && deep) frame.corners = rectangle(width, depth);
}

std::optional<std::vector<FlatPoint>> read_corners(TableReader& in, const toml::node& node) {
  const OfPoints& of = in.held<OfPoints>("corners");
  const toml::array* list = in.read_list(node, "frame.corners", "corners [x, y]", of.count);
  if (!list) return std::nullopt;
  std::vector<FlatPoint> corners;
  for (const toml::node& item : *list)
    if (const auto point = in.read_lengths<2>(item, "a corner of frame.corners", of.range))
      corners.push_back({(*point)[0].mm(), (*point)[1].mm()});
  return corners.size() == list->size() ? std::optional(corners) : std::nullopt;
}

std::optional<std::vector<std::string>> read_names(TableReader& in, const toml::node& node) {
  const OfNames& of = in.held<OfNames>("sides");
  const toml::array* list = in.read_list(node, "frame.sides", "names", of.count);
  if (!list) return std::nullopt;
  std::vector<std::string> names;
  for (const toml::node& item : *list) {
    auto name = in.read_text(item, "a side of frame.sides", of.most);
    if (!name) continue;
    if (std::ranges::any_of(
            names, [&](const std::string& other) { return same_but_for_case(other, *name); }))
      in.fault(Why::OutOfRange,
               fmt::format("two sides are called \"{}\", expected a name of its own for each",
                           clip(*name)),
               item.source());
    else
      names.push_back(std::move(*name));
  }
  return names.size() == list->size() ? std::optional(names) : std::nullopt;
}

void read_polygon(TableReader& in, JobFile& file) {
  for (const char* key : {"width", "depth"})
    if (const toml::node* node = in.take(key))
      in.fault(Why::OutOfRange,
               fmt::format("frame.{} is given beside frame.corners and frame.sides, expected width "
                           "and depth, or corners and sides",
                           key),
               node->source());
  in.require("corners", "the frame's corners, counter-clockwise from above");
  in.require("sides", "a name for each edge of frame.corners");
  const toml::node *corners = in.take("corners"), *sides = in.take("sides");
  const auto points = corners ? read_corners(in, *corners) : std::nullopt;
  const auto names = sides ? read_names(in, *sides) : std::nullopt;
  if (points && names && points->size() != names->size())
    return in.wrong(Why::OutOfRange, *sides, "frame.sides",
                    fmt::format("a name for each of the {} edges", points->size()));
  file.sides = names;
  if (points) file.job().frame.corners = *points;
  if (names) file.job().frame.sides = *names;
}

}  // namespace

void read_frame(TableReader& root) {
  JobFile& file = root.file();
  const bool there = root.require("frame", "the table [frame]");
  TableReader in(file, root.table("frame"), "frame", "frame.");
  const bool corners = in.take("corners") != nullptr, sides = in.take("sides") != nullptr;
  if (corners || sides)
    read_polygon(in, file);
  else if (there)
    read_rectangle(in, file);
  // The outline has been read by now.
  read_keys(
      in, file.job().frame, [](std::string_view, std::vector<FlatPoint>&) {},
      [](std::string_view, std::vector<std::string>&) {});
  in.finish();
}

}  // namespace swathe
