#pragma once

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "base/toml.hpp"
#include "swathe/job/read_job.hpp"

namespace swathe {

/// Turns the parser's positions, which count characters, into places, which count bytes.
class PlaceFinder {
 public:
  PlaceFinder(std::string_view text, std::string file);
  Place at(const toml::source_position& position) const;
  Place at(const toml::source_region& region) const { return at(region.begin); }
  const std::string& file() const { return file_; }

 private:
  std::string file_;
  std::vector<std::string_view> lines_;
};

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
};

/// Notes the place of every table and key, as "bumper.0.from".
void note_places(const toml::table& root, const PlaceFinder& finder, Places& places);

}  // namespace swathe
