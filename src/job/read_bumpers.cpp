#include <algorithm>

#include "base/print.hpp"
#include "job/read_tables.hpp"

// The pieces and what is fixed to them: [[bumper]] and [[bracket]].
namespace swathe {
namespace {

/// "corner", "50%", or a length.
std::optional<decltype(RunEnd::at)> read_distance(TableReader& in, const toml::node& node,
                                                  const std::string& what) {
  const auto text = node.value_exact<std::string>();
  if (text == "corner") return RunEnd::Corner{};
  if (!text || !text->ends_with('%')) {
    const auto length = in.read_length(node, what, kAlong);
    return length ? std::optional<decltype(RunEnd::at)>(*length) : std::nullopt;
  }
  std::string_view digits(*text);
  digits.remove_suffix(1);
  while (digits.ends_with(' ')) digits.remove_suffix(1);
  const auto percent = parse_number(digits);
  if (percent && *percent >= 0 && *percent <= 100) return RunEnd::Share{*percent / 100};
  in.wrong(percent ? Why::OutOfRange : Why::Malformed, node, what, "0% to 100%");
  return std::nullopt;
}

void read_end(TableReader& in, std::string_view key, RunEnd& out) {
  if (!in.require(key, "a side and the distance along it, like [\"front\", \"50%\"]")) return;
  const toml::node& node = *in.take(key);
  const toml::array* pair = node.as_array();
  const std::string what = in.name_of(key);
  if (!pair || pair->size() != 2)
    return in.wrong(Why::WrongType, node, what,
                    "a side and the distance along it, like [\"front\", \"50%\"]");
  auto side = in.read_side((*pair)[0], what);
  const auto at = read_distance(in, (*pair)[1], what);
  if (side && at) out = {std::move(*side), *at};
}

/// Names stand in sentences and in the names of files.
std::optional<std::string> read_name(TableReader& in, const std::vector<std::string>& taken) {
  if (!in.require("name", "the bumper's name, like \"A\"")) return std::nullopt;
  const toml::node& node = *in.take("name");
  auto name = in.read_text(node, in.name_of("name"), kMostName);
  if (!name) return std::nullopt;
  if (name->find_first_of("/\\") != std::string::npos) {
    in.wrong(Why::OutOfRange, node, in.name_of("name"), "a name without a slash");
    return std::nullopt;
  }
  if (std::ranges::count(taken, *name) > 0) {
    in.wrong(Why::OutOfRange, node, in.name_of("name"), "a name that no other bumper has");
    return std::nullopt;
  }
  in.call_it(fmt::format("bumper {}: ", *name));
  return name;
}

/// Centers from the bracket's top left; every one on the bracket.
void read_holes(TableReader& in, BracketKeys& bracket) {
  const toml::node* node = in.take("holes");
  const std::string what = in.name_of("holes");
  const toml::array* list =
      node ? in.read_list(*node, what, "points [right, down]", kHoles) : nullptr;
  if (!list) return;
  const bool sized = bracket.width > Length() && bracket.height > Length();
  std::vector<FlatPoint> holes;
  for (const toml::node& item : *list) {
    const auto point = in.read_lengths<2>(item, what, kAlong);
    if (!point) continue;
    const auto [right, down] = *point;
    if (sized && (right > bracket.width || down > bracket.height)) {
      const Units units = in.file().units;
      in.fault(
          Why::DoesNotFit,
          fmt::format("{}: a hole {} right and {} down is off the bracket, expected at most {} "
                      "and {}",
                      what, exact(right, units), exact(down, units), exact(bracket.width, units),
                      exact(bracket.height, units)),
          item.source());
      continue;
    }
    holes.push_back({right.mm(), down.mm()});
  }
  if (holes.size() == list->size()) bracket.holes = std::move(holes);
}

void read_from_end(TableReader& in, BracketKeys& bracket) {
  constexpr std::string_view kAnEnd =
      "an end of the board and the distance from it, like [\"left\", \"11 in\"]";
  if (!in.require("at", kAnEnd)) return;
  const toml::node& node = *in.take("at");
  const toml::array* pair = node.as_array();
  const std::string what = in.name_of("at");
  if (!pair || pair->size() != 2) return in.wrong(Why::WrongType, node, what, kAnEnd);
  const auto from = in.read_choice((*pair)[0], what, kFromEndWords);
  const auto at = in.read_length((*pair)[1], what, kAlong);
  if (!from || !at) return;
  bracket.from = *from;
  bracket.at = *at;
}

}  // namespace

void read_bumpers(TableReader& root) {
  JobFile& file = root.file();
  root.require("bumper", "[[bumper]], once for each");
  std::vector<std::string> names;
  bool all_named = true;
  root.tables("bumper", kBumpers, [&](const toml::table& table, int i) {
    TableReader in(file, &table, fmt::format("bumper.{}", i), fmt::format("bumper {}: ", i + 1));
    BumperKeys bumper;
    if (auto name = read_name(in, names)) {
      bumper.name = std::move(*name);
      names.push_back(bumper.name);
    } else {
      all_named = false;
    }
    read_end(in, "from", bumper.from);
    read_end(in, "to", bumper.to);
    in.length("end_clearance", bumper.end_clearance, kSmallGap);
    in.finish();
    file.job().bumpers.push_back(std::move(bumper));
  });
  if (all_named && !names.empty()) file.bumpers = std::move(names);
}

void read_brackets(TableReader& root) {
  JobFile& file = root.file();
  root.tables("bracket", kBrackets, [&](const toml::table& table, int i) {
    TableReader in(file, &table, fmt::format("bracket.{}", i), fmt::format("bracket {}: ", i + 1));
    BracketKeys bracket;
    in.require("bumper", "the name of the bumper it is on, like \"A\"");
    in.require("side", "the side it is on, like \"left\"");
    in.require("width", "its width, like \"2 in\"");
    in.require("height", "its height, like \"3 in\"");
    in.bumper("bumper", bracket.bumper);
    in.side("side", bracket.side);
    read_from_end(in, bracket);
    in.side("next_to", bracket.next_to);
    in.length("width", bracket.width, kBracketSize);
    in.length("height", bracket.height, kBracketSize);
    in.length("down", bracket.down, kAlong);
    read_holes(in, bracket);
    in.choice("cloth", bracket.cloth, kBracketClothWords);
    in.length("clearance", bracket.clearance, kSmallGap);
    in.length("corner_radius", bracket.corner_radius, kSmallGap);
    in.number("mass", bracket.mass_g, kBracketMass);
    in.finish();
    file.job().brackets.push_back(std::move(bracket));
  });
}

}  // namespace swathe
