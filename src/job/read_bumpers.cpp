#include <algorithm>

#include "base/print.hpp"
#include "job/read_tables.hpp"

// The pieces and what is fixed to them: [[bumper]] and [[bracket]].
namespace swathe {
namespace {

/// "corner", "50%", or a length.
std::optional<decltype(RunEnd::at)> read_distance(TableReader& in, const toml::node& node,
                                                  const std::string& what,
                                                  const LengthRange& range) {
  const auto text = node.value_exact<std::string>();
  if (text == "corner") return RunEnd::Corner{};
  if (!text || !text->ends_with('%')) {
    const auto length = in.read_length(node, what, range);
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
  const toml::node* node = in.take(key);
  if (!node) return;
  const toml::array* pair = node->as_array();
  const std::string what = in.name_of(key);
  if (!pair || pair->size() != 2) return in.wrong(Why::WrongType, *node, what, in.needed(key));
  auto side = in.read_side((*pair)[0], what);
  const auto at = read_distance(in, (*pair)[1], what, in.held<OfEnd>(key).range);
  if (side && at) out = {std::move(*side), *at};
}

/// Names stand in sentences and in the names of files. Read first: the bumper is called by it.
void read_name(TableReader& in, const std::vector<std::string>& taken, std::string& out) {
  in.require("name");
  std::string name;
  if (!in.read("name", name)) return;
  const toml::node& node = *in.take("name");
  if (name.find_first_of("/\\") != std::string::npos)
    return in.wrong(Why::OutOfRange, node, in.name_of("name"), "a name without a slash");
  if (std::ranges::count(taken, name) > 0)
    return in.wrong(Why::OutOfRange, node, in.name_of("name"), "a name that no other bumper has");
  in.call_it(fmt::format("bumper {}: ", name));
  out = std::move(name);
}

/// Centers from the bracket's top left; every one on the bracket.
void read_holes(TableReader& in, BracketKeys& bracket) {
  const OfPoints& of = in.held<OfPoints>("holes");
  const toml::node* node = in.take("holes");
  const std::string what = in.name_of("holes");
  const toml::array* list =
      node ? in.read_list(*node, what, "points [right, down]", of.count) : nullptr;
  if (!list) return;
  const bool sized = bracket.width > Length() && bracket.height > Length();
  std::vector<FlatPoint> holes;
  for (const toml::node& item : *list) {
    const auto point = in.read_lengths<2>(item, what, of.range);
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

void read_from_end(TableReader& in, FromEnd& from_out, Length& at_out) {
  constexpr std::string_view kAnEnd =
      "an end of the board and the distance from it, like [\"left\", \"11 in\"]";
  if (!in.require("at", kAnEnd)) return;
  const toml::node& node = *in.take("at");
  const toml::array* pair = node.as_array();
  const std::string what = in.name_of("at");
  if (!pair || pair->size() != 2) return in.wrong(Why::WrongType, node, what, kAnEnd);
  const OfBoardPlace& of = in.held<OfBoardPlace>("at");
  const auto from = in.read_choice<FromEnd>((*pair)[0], what, of.words);
  const auto at = in.read_length((*pair)[1], what, of.range);
  if (!from || !at) return;
  from_out = *from;
  at_out = *at;
}

}  // namespace

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
        [&](std::string_view, std::tuple<FromEnd&, Length&> place) {
          read_from_end(in, std::get<0>(place), std::get<1>(place));
        },
        [&](std::string_view, std::vector<FlatPoint>&) { read_holes(in, bracket); });
    in.finish();
    file.job().brackets.push_back(std::move(bracket));
  });
}

}  // namespace swathe
