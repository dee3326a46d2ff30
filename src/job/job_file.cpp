#include "job/job_file.hpp"

#include <algorithm>

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

PlaceFinder::PlaceFinder(std::string_view text, std::string file) : file_(std::move(file)) {
  while (true) {
    const auto end = text.find('\n');
    lines_.push_back(text.substr(0, end));
    if (end == std::string_view::npos) return;
    text.remove_prefix(end + 1);
  }
}

Place PlaceFinder::at(const toml::source_position& position) const {
  const auto line = std::clamp<std::size_t>(position.line, 1, lines_.size());
  const std::string_view text = lines_[line - 1];
  const auto starts_character = [](char c) {
    return (static_cast<unsigned char>(c) & 0xc0) != 0x80;
  };
  std::size_t byte = 0;
  for (std::size_t character = 1; character < position.column && byte < text.size(); ++character) do
      ++byte;
    while (byte < text.size() && !starts_character(text[byte]));
  return {file_, static_cast<int>(line), static_cast<int>(byte) + 1};
}

void JobFile::fault(Why why, std::string sentence, Place place, const std::string& table) {
  reading.faults.push_back({why, std::move(sentence), std::move(place)});
  if (!table.empty()) reading.unsound.insert(table);
}

void note_places(const toml::table& root, const PlaceFinder& finder, Places& places) {
  for (const auto& [key, value] : root) note(value, std::string(key.str()), 1, finder, places);
}

}  // namespace swathe
