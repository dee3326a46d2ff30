#include "sheet/file_names.hpp"

#include <fmt/format.h>

#include <set>

namespace swathe {
namespace {

constexpr std::size_t kMostLetters = 64;

/// Some file systems take "a" and "A" for the same name.
std::string folded(std::string name) {
  for (char& c : name)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return name;
}

}  // namespace

std::string file_safe(std::string_view name) {
  std::string safe;
  for (const char c : name) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
                       c == '_' || (c == '-' && !safe.empty());
    safe += plain ? c : '_';
  }
  if (safe.size() > kMostLetters) safe.resize(kMostLetters);
  return safe.empty() ? "_" : safe;
}

std::string stem_of(const Made& made, std::size_t bumper, std::string_view what) {
  std::set<std::string> names;
  for (const Pattern& pattern : made.patterns) names.insert(folded(file_safe(pattern.bumper)));
  const std::string safe = file_safe(made.patterns[bumper].bumper);
  if (names.size() == made.patterns.size()) return fmt::format("{}-{}", safe, what);
  return fmt::format("{}-{}-{}", safe, bumper + 1, what);
}

}  // namespace swathe
