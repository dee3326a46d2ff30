#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <optional>

#include "job/key_path.hpp"
#include "job/keys.hpp"
#include "swathe/job.hpp"

namespace swathe {
namespace {

using Keys = std::vector<std::string>;

/// Every key of a table, and of none below it; of a list of tables those of one.
Keys all_in(std::string_view table, std::size_t number = 0) {
  Keys keys;
  for (const Key& key : job_keys())
    if (key.path.substr(0, key.path.rfind('.')) == table)
      keys.push_back(with_number(key.path, number));
  return keys;
}

/// Some of one of a list of tables; `at` counts from 0.
Keys some_in(std::string_view table, std::size_t at, std::initializer_list<const char*> names) {
  Keys keys;
  for (const char* name : names) keys.push_back(fmt::format("{}.{}.{}", table, at + 1, name));
  return keys;
}

/// Where a name stands in a list.
template <class List, class Name>
std::optional<std::size_t> find_in(const List& list, Name name) {
  const auto found = std::ranges::find_if(list, name);
  if (found == list.end()) return std::nullopt;
  return static_cast<std::size_t>(found - list.begin());
}

std::optional<std::size_t> side_of(const Job& job, const std::string& name) {
  return find_in(job.frame.sides, [&](const std::string& side) { return side == name; });
}

/// Whether the job tells its frame as a rectangle, by width and depth.
bool is_rectangle(const Job& job) {
  if (job.places.has("frame.corners")) return false;
  if (job.places.has("frame.width")) return true;
  return job.frame.sides == std::vector<std::string>{"front", "left", "back", "right"};
}

Keys corner_keys(const Job& job, std::size_t corner) {
  if (is_rectangle(job)) return {"frame.width", "frame.depth"};
  return {fmt::format("frame.corners.{}", corner % job.frame.corners.size() + 1)};
}

Keys side_keys(const Job& job, std::size_t side) {
  // Front and back are as long as the frame is wide.
  if (is_rectangle(job)) return {side % 2 == 0 ? "frame.width" : "frame.depth"};
  Keys keys = corner_keys(job, side);
  keys.push_back(corner_keys(job, side + 1).front());
  keys.push_back(fmt::format("frame.sides.{}", side + 1));
  return keys;
}

Keys bumper_keys(const Subject& subject, std::size_t at) {
  switch (subject.kind) {
    case Subject::Kind::Start:
      return some_in("bumper", at, {"from", "end_clearance"});
    case Subject::Kind::End:
      return some_in("bumper", at, {"to", "end_clearance"});
    case Subject::Kind::BumperCorner:
      return {"boards.joint", "boards.lapping", "padding.corner",  "padding.lapping",
              "cloth.relief", "cloth.setback",  "cloth.cut_clear", "cloth.seam"};
    case Subject::Kind::Board: {
      Keys keys = some_in("bumper", at, {"from", "to", "end_clearance"});
      std::ranges::copy(all_in("boards"), std::back_inserter(keys));
      return keys;
    }
    case Subject::Kind::PaddingPiece: {
      Keys keys = some_in("bumper", at, {"from", "to", "end_clearance"});
      std::ranges::copy(all_in("padding"), std::back_inserter(keys));
      return keys;
    }
    default:
      return some_in("bumper", at, {"name", "from", "to", "end_clearance"});
  }
}

Keys numeral_keys(const NumeralKeys& numerals, std::size_t at) {
  if (numerals.places.empty() && numerals.sides) {
    if (at >= numerals.sides->size()) return {};
    return {fmt::format("numerals.sides.{}", at + 1)};
  }
  if (!numerals.places.empty() && at >= numerals.places.size()) return {};
  return all_in("numerals.place", at + 1);
}

bool is_there(int number, std::size_t count) {
  return number >= 1 && static_cast<std::size_t>(number) <= count;
}

}  // namespace

std::vector<std::string> keys_of(const Subject& subject, const Job& job) {
  const auto at = static_cast<std::size_t>(std::max(1, subject.number) - 1);
  switch (subject.kind) {
    case Subject::Kind::Frame: {
      Keys keys = is_rectangle(job) ? Keys{"frame.width", "frame.depth"}
                                    : Keys{"frame.corners", "frame.sides"};
      for (const char* key : {"frame.fit", "frame.floor_gap", "frame.backed"})
        keys.emplace_back(key);
      return keys;
    }
    case Subject::Kind::Side: {
      const auto side = side_of(job, subject.names[0]);
      return side ? side_keys(job, *side) : Keys();
    }
    case Subject::Kind::Corner: {
      const auto side = side_of(job, subject.names[0]);
      return side && side_of(job, subject.names[1]) ? corner_keys(job, *side + 1) : Keys();
    }
    case Subject::Kind::Bumpers: {
      Keys keys;
      for (std::size_t k = 0; k < job.bumpers.size(); ++k)
        std::ranges::copy(some_in("bumper", k, {"from", "to"}), std::back_inserter(keys));
      return keys;
    }
    case Subject::Kind::Bumper:
    case Subject::Kind::Start:
    case Subject::Kind::End:
    case Subject::Kind::BumperCorner:
    case Subject::Kind::Board:
    case Subject::Kind::PaddingPiece: {
      const auto bumper = find_in(
          job.bumpers, [&](const BumperKeys& keys) { return keys.name == subject.names[0]; });
      return bumper ? bumper_keys(subject, *bumper) : Keys();
    }
    case Subject::Kind::Boards:
      return all_in("boards");
    case Subject::Kind::Padding:
      return all_in("padding");
    case Subject::Kind::Cloth:
      return all_in("cloth");
    case Subject::Kind::ClothOfColor:
      return {"cloth.colors." + key_part(subject.names[0])};
    case Subject::Kind::Bracket:
      return is_there(subject.number, job.brackets.size()) ? all_in("bracket", at + 1) : Keys();
    case Subject::Kind::Numerals:
    case Subject::Kind::Digit: {
      Keys keys = {"job.number"};
      std::ranges::copy(all_in("numerals"), std::back_inserter(keys));
      return keys;
    }
    case Subject::Kind::Numeral:
      return numeral_keys(job.numerals, at);
    case Subject::Kind::Blind:
      return is_there(subject.number, job.sight.blind.size()) ? all_in("sight.blind", at + 1)
                                                              : Keys();
    case Subject::Kind::Rule:
      return {"job.season"};
  }
  return {};
}

}  // namespace swathe
