#include "job/read_place.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/print.hpp"

namespace swathe {
namespace {

std::optional<double> percent_of(std::string_view text) {
  text.remove_suffix(1);
  while (text.ends_with(' ')) text.remove_suffix(1);
  return parse_number(text);
}

bool is_share(const toml::node& node) {
  const auto text = node.value_exact<std::string>();
  return text && text->ends_with('%');
}

/// Whether a value can be nothing but a distance.
bool is_distance(const TableReader&, const toml::node& node, Units units) {
  if (node.is_number()) return true;
  const auto text = node.value_exact<std::string>();
  return text && parse_length(*text, units).has_value();
}

/// A value as it would be typed; of a long or nested list, what it is.
std::string as_typed(const toml::node& node) {
  constexpr std::size_t kMost = 4;
  const toml::array* list = node.as_array();
  if (!list || list->empty() || list->size() > kMost) return described(node);
  std::string out;
  for (const toml::node& item : *list) {
    if (item.is_array()) return described(node);
    out += (out.empty() ? "" : ", ") + described(item);
  }
  return "[" + out + "]";
}

/// Reads a place along one side. The text around a distance and its corner is that of the key:
/// `at = [DISTANCE, SIDE]` or `from = ["front", DISTANCE, SIDE]`.
class PlaceReader {
 public:
  PlaceReader(TableReader& in, std::string_view key, const toml::node& whole, std::string side,
              bool side_in_list)
      : in_(in),
        key_(key),
        whole_(whole),
        side_(std::move(side)),
        side_in_list_(side_in_list),
        what_(in.name_of(key)),
        neighbors_(neighbors_of(in.file(), side_)) {}

  std::optional<SidePlace> share(const toml::node& node) {
    const auto percent = percent_of(*node.value_exact<std::string>());
    if (percent && *percent >= 0 && *percent <= 100) return SideShare{*percent / 100};
    in_.wrong(percent ? Why::OutOfRange : Why::Malformed, node, what_, "0% to 100%");
    return std::nullopt;
  }

  std::optional<SidePlace> distance(const toml::node& length, const toml::node& corner,
                                    const LengthRange& range) {
    if (is_distance(in_, corner, in_.file().units) && !is_distance(in_, length, in_.file().units))
      return swapped(length, corner);
    const auto from = in_.read_length(length, what_, range);
    auto neighbor = in_.read_side(corner, what_);
    if (!from || !neighbor) return std::nullopt;
    if (neighbors_ && std::ranges::count(*neighbors_, *neighbor) == 0) {
      in_.fault(
          Why::UnknownName,
          fmt::format("{}: side \"{}\" has no corner with \"{}\", expected {}: {}", what_,
                      clip(side_), clip(*neighbor),
                      quoted_choice({(*neighbors_)[0], (*neighbors_)[1]}), both(described(length))),
          corner.source());
      return std::nullopt;
    }
    return FromCorner{*from, std::move(*neighbor)};
  }

  /// A length alone may be counted from either corner.
  std::optional<SidePlace> bare(const toml::node& length) {
    in_.fault(Why::Malformed,
              fmt::format("{} is {}, expected also which corner of the frame it is measured from: "
                          "{}",
                          what_, as_typed(whole_), both(described(length))),
              length.source());
    return std::nullopt;
  }

  std::optional<SidePlace> none(const toml::node& node, std::string_view expected) {
    in_.fault(node.is_string() ? Why::Malformed : Why::WrongType,
              fmt::format("{} is {}, expected {}", what_, as_typed(whole_), expected),
              node.source());
    return std::nullopt;
  }

  /// `at = ["9 in", "front"] or ["9 in", "back"]`
  std::string both(const std::string& distance) const {
    if (!neighbors_) return fmt::format("{} = {}", key_, typed(distance, "left"));
    return fmt::format("{} = {} or {}", key_, typed(distance, (*neighbors_)[1]),
                       typed(distance, (*neighbors_)[0]));
  }

 private:
  std::string typed(const std::string& distance, const std::string& neighbor) const {
    if (side_in_list_)
      return fmt::format("[\"{}\", {}, \"{}\"]", clip(side_), distance, clip(neighbor));
    return fmt::format("[{}, \"{}\"]", distance, clip(neighbor));
  }

  std::optional<SidePlace> swapped(const toml::node& corner, const toml::node& length) {
    in_.fault(Why::Malformed,
              fmt::format("{} is {}, expected the distance first, then the neighboring side whose "
                          "corner with \"{}\" it is measured from: {}",
                          what_, as_typed(whole_), clip(side_), both(described(length))),
              corner.source());
    return std::nullopt;
  }

  TableReader& in_;
  std::string_view key_;
  const toml::node& whole_;
  std::string side_;
  bool side_in_list_;
  std::string what_;
  std::optional<std::array<std::string, 2>> neighbors_;
};

}  // namespace

std::optional<std::array<std::string, 2>> neighbors_of(const JobFile& file,
                                                       const std::string& side) {
  if (!file.sides) return std::nullopt;
  const std::vector<std::string>& sides = *file.sides;
  const auto found = std::ranges::find(sides, side);
  if (found == sides.end()) return std::nullopt;
  const auto at = static_cast<std::size_t>(found - sides.begin());
  return std::array{sides[(at + sides.size() - 1) % sides.size()], sides[(at + 1) % sides.size()]};
}

std::optional<SidePlace> read_side_place(TableReader& in, std::string_view key,
                                         const toml::node& node, const std::string& side) {
  PlaceReader place(in, key, node, side, false);
  if (is_share(node)) return place.share(node);
  if (is_distance(in, node, in.file().units)) return place.bare(node);
  const toml::array* list = node.as_array();
  if (list && list->size() == 2)
    return place.distance((*list)[0], (*list)[1], in.held<OfSidePlace>(key).range);
  if (list && list->size() == 1 && is_distance(in, (*list)[0], in.file().units))
    return place.bare((*list)[0]);
  return place.none(node, fmt::format("a share of the side like \"50%\", or a distance and the "
                                      "neighboring side at whose corner it begins: {}",
                                      place.both("\"9 in\"")));
}

std::optional<RunEnd> read_run_end(TableReader& in, std::string_view key, const toml::node& node) {
  const std::string what = in.name_of(key);
  const toml::array* list = node.as_array();
  if (!list || list->size() < 2) {
    in.wrong(Why::WrongType, node, what, in.needed(key));
    return std::nullopt;
  }
  const auto side = in.read_side((*list)[0], what);
  if (!side) return std::nullopt;
  const OfEnd& of = in.held<OfEnd>(key);
  const toml::node& along = (*list)[1];
  PlaceReader place(in, key, node, *side, true);
  const auto at_place = [&](std::optional<SidePlace> at) -> std::optional<RunEnd> {
    if (!at) return std::nullopt;
    RunEnd end{*side, SideShare()};
    std::visit([&](auto& one) { end.at = std::move(one); }, *at);
    return end;
  };
  const std::string_view word = in.word_in(along, of.words);
  if (list->size() == 2) {
    if (word == "corner") return RunEnd{*side, RunEnd::Corner{}};
    if (word == "opening") return RunEnd{*side, RunEnd::Opening{}};
    if (is_share(along)) return at_place(place.share(along));
    if (is_distance(in, along, in.file().units)) return at_place(place.bare(along));
  } else if (word == "opening") {
    return at_place(place.none(
        along, fmt::format("the opening or a distance, not both: {} = [\"{}\", \"opening\"] ends "
                           "at the opening's edge",
                           key, clip(*side))));
  } else if (list->size() == 3 && word.empty() && !is_share(along)) {
    return at_place(place.distance(along, (*list)[2], of.range));
  }
  return at_place(place.none(
      along, fmt::format("a share like \"50%\", \"corner\" or \"opening\" alone, or a distance and "
                         "the neighboring side at whose corner it begins: {}",
                         place.both("\"9 in\""))));
}

}  // namespace swathe
