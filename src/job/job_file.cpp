#include "job/job_file.hpp"

namespace swathe {
namespace {

constexpr int kDeepestKey = 6;  // bracket.0.holes.0.0 is the deepest that anyone asks for

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
  reading.faults.push_back({why, std::move(sentence), std::move(place)});
  if (!table.empty()) reading.unsound.insert(table);
}

void note_places(const toml::table& root, const PlaceFinder& finder, Places& places) {
  for (const auto& [key, value] : root) note(value, std::string(key.str()), 1, finder, places);
}

}  // namespace swathe
