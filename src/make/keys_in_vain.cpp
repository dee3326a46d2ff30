#include "make/keys_in_vain.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <tuple>
#include <variant>

#include "numeral/method.hpp"
#include "swathe/job.hpp"

namespace swathe {
namespace {

/// Gathers notices at every place where the file gives a key.
class Vain {
 public:
  explicit Vain(const Places& places) : places_(places) {}

  /// For a table that a job has once.
  void key(const std::string& key, const std::string& why) { note(key, key, why); }
  void keys(std::initializer_list<const char*> keys, const std::string& why) {
    for (const char* one : keys) key(one, why);
  }
  /// For a table that a job may have many times: "bracket", 2, "holes".
  void key_of(const std::string& table, std::size_t number, const std::string& name,
              const std::string& why) {
    note(fmt::format("{}.{}.{}", table, number, name), table + "." + name, why);
  }
  /// Every key of a table and of those below it.
  void all_of(const std::string& table, const std::string& why) {
    for (const KeyWords& words : key_words()) {
      if (!words.key.starts_with(table + ".")) continue;
      key(words.key, why);
      const auto dot = words.key.rfind('.');
      const std::string list = words.key.substr(0, dot);
      for (std::size_t k = 0; places_.has(fmt::format("{}.{}", list, k)); ++k)
        key_of(list, k, words.key.substr(dot + 1), why);
    }
  }

  std::vector<Notice> by_place() {
    std::ranges::stable_sort(notices_, {}, [](const Notice& notice) {
      return std::tuple(notice.place.line, notice.place.column);
    });
    return std::move(notices_);
  }

 private:
  void note(const std::string& path, const std::string& key, const std::string& why) {
    if (places_.has(path))
      notices_.push_back({key, fmt::format("has no effect: {}, {}", key, why), places_.of(path)});
  }

  const Places& places_;
  std::vector<Notice> notices_;
};

bool ends_at_corner(const BumperKeys& bumper) {
  return std::holds_alternative<RunEnd::Corner>(bumper.from.at) ||
         std::holds_alternative<RunEnd::Corner>(bumper.to.at);
}

/// At an opening cloth and end_clearance are counted in.
void look_at_clearances(const Job& job, Vain& vain) {
  for (std::size_t k = 0; k < job.bumpers.size(); ++k)
    if (std::holds_alternative<RunEnd::Opening>(job.bumpers[k].from.at) &&
        std::holds_alternative<RunEnd::Opening>(job.bumpers[k].to.at))
      vain.key_of("bumper", k, "end_clearance", "because the opening says where both ends are");
}

/// Whether a bumper ends at the opening of that side.
bool ends_at_opening_of(const BumperKeys& bumper, const std::string& side) {
  return std::ranges::any_of(std::array{&bumper.from, &bumper.to}, [&](const RunEnd* end) {
    return end->side == side && std::holds_alternative<RunEnd::Opening>(end->at);
  });
}

void look_at_openings(const Job& job, Vain& vain) {
  for (std::size_t k = 0; k < job.openings.size(); ++k) {
    const std::string& side = job.openings[k].side;
    const auto ends = [&](const BumperKeys& bumper) { return ends_at_opening_of(bumper, side); };
    if (std::ranges::any_of(job.bumpers, ends)) continue;
    const std::string why =
        fmt::format("because no bumper ends there: give from = [\"{}\", \"opening\"]", side);
    for (const char* name : {"width", "center"}) vain.key_of("opening", k, name, why);
  }
}

void look_at_padding(const Job& job, Vain& vain) {
  if (job.padding.form == PaddingForm::Noodles)
    vain.keys({"padding.depth", "padding.height", "padding.edge_radius"},
              "which needs padding.form = \"block\"");
  else
    vain.keys({"padding.diameter", "padding.stack", "padding.core"},
              "which needs padding.form = \"noodles\"");
}

void look_at_corners(const Made& made, Vain& vain) {
  const Job& job = made.job;
  const bool turns =
      std::ranges::any_of(made.wraps, [](const Wrap& wrap) { return !wrap.run().corners.empty(); });
  const bool fills = std::ranges::any_of(job.bumpers, ends_at_corner);
  if (!turns) {
    const std::string none = "because no bumper turns a corner";
    vain.keys(
        {"boards.joint", "boards.lapping", "cloth.relief", "cloth.setback", "cloth.cut_clear"},
        none);
    vain.key("padding.filled", none);
    if (!fills) vain.key("padding.lapping", none + " or ends at one");
    return;
  }
  if (job.padding.form != PaddingForm::Noodles)
    vain.key("padding.filled", "which needs padding.form = \"noodles\"");
  else if (job.padding.corner != PaddingCorner::Butted)
    vain.key("padding.filled", "because padding.corner is not \"butted\"");
  if (job.boards.joint == Joint::Mitred)
    vain.key("boards.lapping", "because boards.joint is \"mitred\"");
  if (job.padding.corner != PaddingCorner::Butted && !fills)
    vain.key("padding.lapping", "because padding.corner is not \"butted\"");
}

void look_at_cloth(const Made& made, Vain& vain) {
  const ClothKeys& cloth = made.job.cloth;
  if (cloth.fixing == Fixing::Staples)
    vain.all_of("cloth.hook_and_loop", "which needs cloth.fixing = \"hook-and-loop\"");
  else
    vain.keys({"cloth.flap", "cloth.staple_line", "cloth.staple_spacing", "cloth.stretch_around",
               "cloth.staple_mass"},
              "which needs cloth.fixing = \"staples\"");
  const bool darts = cloth.relief == Relief::Sewn &&
                     std::ranges::any_of(made.patterns, [](const Pattern& pattern) {
                       return !pattern.corners.empty();
                     });
  const bool joined = std::ranges::any_of(
      made.joins, [](const std::vector<ClothJoin>& joins) { return !joins.empty(); });
  if (!darts && !joined) vain.key("cloth.seam", "because no cover has a sewn corner or a seam");
  if (!cloth.longest_piece) vain.key("cloth.may_join", "because cloth.longest_piece is not given");
}

void look_at_brackets(const Made& made, Vain& vain) {
  for (std::size_t b = 0; b < made.patterns.size(); ++b)
    for (const BracketOnPattern& laid : made.patterns[b].brackets) {
      const auto k = static_cast<std::size_t>(laid.keys);
      if (laid.cloth == BracketCloth::Under)
        vain.key_of("bracket", k, "corner_radius", "which needs cloth = \"window\"");
      else
        vain.key_of("bracket", k, "holes", "which need cloth = \"under\"");
    }
}

void look_at_numerals(const Made& made, Vain& vain) {
  if (!made.numerals) {
    for (const char* table : {"numerals", "sight"})
      vain.all_of(table, "because the job has no number");
    return;
  }
  const NumeralKeys& keys = made.job.numerals;
  const bool islands = std::ranges::any_of(made.numerals->digits,
                                           [](const Digit& digit) { return digit.counters > 0; });
  if (!needs_bridges(keys.method))
    vain.key("numerals.bridge", "because nothing falls out with this numerals.method");
  else if (!islands)
    vain.key("numerals.bridge",
             "because no digit of the number has an island (a middle that falls out)");
  if (keys.method != NumeralMethod::Stencil)
    vain.key("numerals.stencil_for", "which needs numerals.method = \"stencil\"");
  if (!made.season || !made.season->numerals_stroke)
    vain.key("numerals.make_legal", "because the season has no rule on the width of strokes");
}

/// Keys that matter only for rules of some seasons.
void look_at_season(const Made& made, Vain& vain) {
  const auto asks = [&](auto... rules) {
    return made.season && (((*made.season).*rules).has_value() || ...);
  };
  const std::string why = "because the season has no rule on it";
  if (!asks(&Season::support_end_backed, &Season::support_gap_depth)) vain.key("frame.backed", why);
  if (!asks(&Season::hard_parts_past_frame) && !asks(&Season::hard_parts_under_padding))
    vain.key("boards.hard_depth", why);
  if (made.job.padding.form == PaddingForm::Noodles && !asks(&Season::padding_hollow))
    vain.key("padding.core", why);
}

}  // namespace

std::vector<Notice> keys_in_vain(const Made& made) {
  Vain vain(made.job.places);
  look_at_openings(made.job, vain);
  look_at_clearances(made.job, vain);
  look_at_padding(made.job, vain);
  look_at_corners(made, vain);
  look_at_cloth(made, vain);
  look_at_brackets(made, vain);
  look_at_numerals(made, vain);
  look_at_season(made, vain);
  return vain.by_place();
}

}  // namespace swathe
