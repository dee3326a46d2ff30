#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "base/toml_text.hpp"
#include "swathe/job.hpp"

namespace swathe {

/// What the readers of the tables share while one file is read.
struct JobFile {
  explicit JobFile(PlaceFinder finder) : places(std::move(finder)) {}

  PlaceFinder places;
  JobReading reading;
  Units units = Units::Inches;  ///< of bare numbers
  /// What the file has named, for others to refer to; unset where the names themselves are at
  /// fault.
  std::optional<std::vector<std::string>> sides, bumpers;
  std::set<std::string> keys;  ///< every key that the readers know: "cloth.flap", "bumper.from"

  /// Keeps a fault; its table is unsound from now on.
  void fault(Why why, std::string sentence, Place place, const std::string& table);
  Job& job() { return reading.job; }
  /// The key whose value stands there, or the innermost part of it; empty where there is none.
  const std::string& key_at(const Place& place);

 private:
  std::vector<Place> in_order_;  ///< once a fault has asked for them
};

/// Notes the place of every table and key, as "bumper.0.from".
void note_places(const toml::table& root, const PlaceFinder& finder, Places& places);

}  // namespace swathe
