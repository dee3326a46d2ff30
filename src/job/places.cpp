#include <algorithm>
#include <tuple>

#include "job/key_path.hpp"
#include "swathe/job.hpp"

namespace swathe {
namespace {

/// A key as set_value() takes it, counted from 1: "bumper.1.from" of "bumper.0.from".
std::string counted_from_1(std::string_view key) {
  constexpr std::string_view kNames = "cloth.colors.";  // whatever stands behind it is a name
  if (key.starts_with(kNames)) return std::string(kNames) + key_part(key.substr(kNames.size()));
  std::string out;
  while (true) {
    const std::string_view part = key.substr(0, key.find('.'));
    const bool number = !part.empty() && part.size() < 9 &&
                        std::ranges::all_of(part, [](char c) { return c >= '0' && c <= '9'; });
    out += number ? std::to_string(std::stoi(std::string(part)) + 1) : std::string(part);
    if (part.size() == key.size()) return out;
    out += '.';
    key.remove_prefix(part.size() + 1);
  }
}

}  // namespace

Place Places::of(std::string_view key) const {
  const std::string asked = counted_from_1(key);
  while (true) {
    if (const auto found = places_.find(key); found != places_.end()) {
      Place place = found->second;
      place.key = asked;
      return place;
    }
    const auto dot = key.rfind('.');
    if (dot == std::string_view::npos) return {file_, 1, 1, asked};
    key = key.substr(0, dot);
  }
}

std::vector<Place> Places::in_order() const {
  std::vector<Place> all;
  for (const auto& [key, place] : places_) {
    all.push_back(place);
    all.back().key = counted_from_1(key);
  }
  std::ranges::stable_sort(all, {}, [](const Place& place) {
    return std::tuple(place.line, place.column, place.key.size());
  });
  return all;
}

}  // namespace swathe
