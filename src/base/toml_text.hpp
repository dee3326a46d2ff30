#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/toml.hpp"
#include "swathe/base/outcome.hpp"

// TOML files that people write: where things stand in them, and what is too large to be read.
namespace swathe {

/// Turns the parser's positions, which count characters, into places, which count bytes.
class PlaceFinder {
 public:
  PlaceFinder(std::string_view text, std::string file);
  Place at(const toml::source_position& position) const;
  Place at(const toml::source_region& region) const { return at(region.begin); }
  const std::string& file() const { return file_; }

 private:
  std::string_view text_;
  std::string file_;
  std::vector<std::size_t> lines_;    ///< where each begins
  std::vector<std::size_t> counted_;  ///< characters that begin before each kBlock bytes
};

std::string_view without_byte_order_mark(std::string_view text);

/// The tables of a text; `what` names it in a sentence ("the job").
///
/// Requires: a finder of the same text.
/// Refuses, alone: TooLarge (more than `most_bytes`, or tables nested too deep for the parser),
///   Malformed.
Outcome<toml::table> parse_toml(std::string_view text, const PlaceFinder& places,
                                std::string_view what, std::size_t most_bytes);

}  // namespace swathe
