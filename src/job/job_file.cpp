#include "job/job_file.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace swathe {
namespace {

constexpr int kDeepestKey = 6;  // the deepest place of a job: bracket.0.holes.0.0

void note(const toml::node& node, const std::string& path, int depth, const PlaceFinder& finder,
          Places& places) {
  places.set(path, finder.at(node.source()));
  if (depth == kDeepestKey) return;
  if (const toml::table* table = node.as_table()) {
    for (const auto& [key, value] : *table)
      note(value, path + "." + std::string(key.str()), depth + 1, finder, places);
  } else if (const toml::array* list = node.as_array()) {
    for (std::size_t i = 0; i < list->size(); ++i)
      note((*list)[i], path + "." + std::to_string(i), depth + 1, finder, places);
  }
}

}  // namespace

void JobFile::fault(Why why, std::string sentence, Place place, const std::string& table) {
  if (place.key.empty()) place.key = key_at(place);
  reading.faults.push_back({why, std::move(sentence), std::move(place)});
  if (!table.empty()) reading.unsound.insert(table);
}

const std::string& JobFile::key_at(const Place& place) {
  static const std::string none;
  if (in_order_.empty()) in_order_ = reading.job.places.in_order();
  const auto after = std::ranges::upper_bound(
      in_order_, std::pair(place.line, place.column), {},
      [](const Place& other) { return std::pair(other.line, other.column); });
  return after == in_order_.begin() ? none : std::prev(after)->key;
}

void note_places(const toml::table& root, const PlaceFinder& finder, Places& places) {
  for (const auto& [key, value] : root) note(value, std::string(key.str()), 1, finder, places);
}

}  // namespace swathe
