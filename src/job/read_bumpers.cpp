#include <algorithm>
#include <cmath>

#include "base/print.hpp"
#include "job/read_place.hpp"
#include "job/read_tables.hpp"
#include "job/spelling.hpp"

// The pieces, what is fixed to them and where there is none: [[bumper]], [[bracket]], [[opening]].
namespace swathe {
namespace {

void read_end(TableReader& in, std::string_view key, RunEnd& out) {
  const toml::node* node = in.take(key);
  if (!node) return;
  if (auto end = read_run_end(in, key, *node)) out = std::move(*end);
}

/// Names stand in sentences and in the names of files. Read first: the bumper is called by it.
void read_name(TableReader& in, const std::vector<std::string>& taken, std::string& out) {
  in.require("name");
  std::string name;
  if (!in.read("name", name)) return;
  const toml::node& node = *in.take("name");
  if (name.find_first_of("/\\") != std::string::npos)
    return in.wrong(Why::OutOfRange, node, in.name_of("name"), "a name without a slash");
  if (std::ranges::any_of(taken,
                          [&](const std::string& other) { return same_but_for_case(other, name); }))
    return in.wrong(Why::OutOfRange, node, in.name_of("name"), "a name that no other bumper has");
  in.call_it(fmt::format("bumper {}: ", name));
  out = std::move(name);
}

/// Centers along from one edge of the bracket and down from its top; every one on the bracket.
void read_holes(TableReader& in, BracketKeys& bracket) {
  const OfPoints& of = in.held<OfPoints>("holes");
  const toml::node* node = in.take("holes");
  const std::string what = in.name_of("holes");
  const toml::array* list =
      node ? in.read_list(*node, what, "points [along, down]", of.count) : nullptr;
  if (!list) return;
  const bool sized = bracket.width > Length() && bracket.height > Length();
  std::vector<FlatPoint> holes;
  for (const toml::node& item : *list) {
    const auto point = in.read_lengths<2>(item, what, of.range);
    if (!point) continue;
    const auto [along, down] = *point;
    if (sized && (along > bracket.width || down > bracket.height)) {
      const Units units = in.file().units;
      in.fault(
          Why::DoesNotFit,
          fmt::format("{}: a hole {} along and {} down is off the bracket, expected at most {} "
                      "and {}",
                      what, exact(along, units), exact(down, units), exact(bracket.width, units),
                      exact(bracket.height, units)),
          item.source());
      continue;
    }
    holes.push_back({along.mm(), down.mm()});
  }
  if (holes.size() == list->size()) bracket.holes = std::move(holes);
}

void read_place(TableReader& in, std::string_view key, const std::string& side, SidePlace& out) {
  const toml::node* node = in.take(key);
  if (!node) return;
  if (auto place = read_side_place(in, key, *node, side)) out = std::move(*place);
}

/// Whether every hole has its like as far from the bracket's other edge.
bool alike_from_both_edges(const BracketKeys& bracket) {
  constexpr double kSame = 1e-6;
  return std::ranges::all_of(bracket.holes, [&](FlatPoint hole) {
    return std::ranges::any_of(bracket.holes, [&](FlatPoint other) {
      return std::abs(other.x + hole.x - bracket.width.mm()) < kSame &&
             std::abs(other.y - hole.y) < kSame;
    });
  });
}

/// Where holes are counted from: said by `at`, or by `holes_from` where that is a share.
void read_holes_from(TableReader& in, BracketKeys& bracket) {
  const auto sides = neighbors_of(in.file(), bracket.side);
  const toml::node* node = in.take("holes_from");
  if (const auto* from = std::get_if<FromCorner>(&bracket.at)) {
    if (node)
      in.fault(Why::OutOfRange,
               fmt::format("{} is given beside at = [..., \"{}\"], which says where holes are "
                           "counted from: take holes_from out",
                           in.name_of("holes_from"), clip(from->neighbor)),
               node->source());
    return;
  }
  if (!sides) return;
  const std::string choice = quoted_choice({(*sides)[0], (*sides)[1]});
  if (node && !bracket.holes_from.empty()) {
    if (std::ranges::count(*sides, bracket.holes_from) == 0)
      in.wrong(Why::UnknownName, *node, in.name_of("holes_from"),
               fmt::format("a side that has a corner with \"{}\": {}", clip(bracket.side), choice));
  } else if (!node && !alike_from_both_edges(bracket)) {
    in.fault(Why::Missing,
             fmt::format("{}: the holes are not alike from both edges, expected also which edge "
                         "they are counted from: holes_from = {}",
                         in.name_of("holes"), choice),
             in.take("holes")->source());
  }
}

/// Keys that said a bracket's place before it was told from the frame's corners.
void refuse_next_to(TableReader& in, const toml::table& table, const BracketKeys& bracket) {
  if (!table.contains("next_to")) return;
  const toml::node* node = in.take("next_to");
  const auto sides = neighbors_of(in.file(), bracket.side);
  in.fault(Why::UnknownKey,
           fmt::format("{} is no longer a key: take it out, and say the place from a corner of the "
                       "frame, like at = [\"11 in\", \"{}\"]",
                       in.name_of("next_to"), sides ? clip((*sides)[1]) : "left"),
           node->source());
}

}  // namespace

void read_openings(TableReader& root) {
  JobFile& file = root.file();
  std::vector<std::string> sides;
  root.tables("opening", [&](const toml::table& table, int i) {
    TableReader in(file, &table, fmt::format("opening.{}", i), fmt::format("opening {}: ", i + 1));
    OpeningKeys opening;
    read_keys(in, opening, [&](std::string_view key, SidePlace& center) {
      read_place(in, key, opening.side, center);
    });
    if (!opening.side.empty() && std::ranges::count(sides, opening.side) > 0)
      in.wrong(Why::OutOfRange, *in.take("side"), in.name_of("side"),
               "a side that no other [[opening]] is in");
    sides.push_back(opening.side);
    in.finish();
    file.job().openings.push_back(std::move(opening));
  });
}

void read_bumpers(TableReader& root) {
  JobFile& file = root.file();
  root.require("bumper", "[[bumper]], once for each");
  std::vector<std::string> names;
  bool all_named = true;
  root.tables("bumper", [&](const toml::table& table, int i) {
    TableReader in(file, &table, fmt::format("bumper.{}", i), fmt::format("bumper {}: ", i + 1));
    BumperKeys bumper;
    read_name(in, names, bumper.name);
    read_keys(
        in, bumper, [](std::string_view, std::string&) {},
        [&](std::string_view key, RunEnd& end) { read_end(in, key, end); });
    in.finish();
    if (bumper.name.empty())
      all_named = false;
    else
      names.push_back(bumper.name);
    file.job().bumpers.push_back(std::move(bumper));
  });
  if (all_named && !names.empty()) file.bumpers = std::move(names);
}

void read_brackets(TableReader& root) {
  JobFile& file = root.file();
  root.tables("bracket", [&](const toml::table& table, int i) {
    TableReader in(file, &table, fmt::format("bracket.{}", i), fmt::format("bracket {}: ", i + 1));
    BracketKeys bracket;
    read_keys(
        in, bracket,
        [&](std::string_view key, SidePlace& place) { read_place(in, key, bracket.side, place); },
        [&](std::string_view, std::vector<FlatPoint>&) { read_holes(in, bracket); });
    if (file.reading.sound(fmt::format("bracket.{}", i))) read_holes_from(in, bracket);
    refuse_next_to(in, table, bracket);
    in.finish();
    file.job().brackets.push_back(std::move(bracket));
  });
}

}  // namespace swathe
