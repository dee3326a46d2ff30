#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/toml.hpp"
#include "swathe/base.hpp"

// TOML files that people write: the places of things in them, and limits to their size.
namespace swathe {

/// Turns the parser's positions, which count characters, into places, which count bytes.
class PlaceFinder {
 public:
  PlaceFinder(std::string_view text, std::string file);
  Place at(const toml::source_position& position) const;
  Place at(const toml::source_region& region) const { return at(region.begin); }
  /// Where a character first stands in the string that begins there, as itself or as an escape
  /// ("\u200b").
  Place of_character(const toml::source_region& text, char32_t code) const;
  /// A number, word or date as it is written there.
  std::string_view written(const toml::source_region& region) const;
  std::size_t byte_of(const Place& place) const;
  Place at_byte(std::size_t byte) const;
  const std::string& file() const { return file_; }

 private:
  std::string_view text_;
  std::string file_;
  std::vector<std::size_t> lines_;    ///< where each begins
  std::vector<std::size_t> counted_;  ///< characters that begin before each kBlock bytes
};

std::string_view without_byte_order_mark(std::string_view text);

/// "is" what, for a sentence: the value itself where it is short, else its kind.
std::string described(const toml::node& node);

/// The tables of a text; `what` names it in a sentence ("the job"), `lists` are the tables of it
/// that stand in [[ ]].
///
/// Requires: a finder of the same text.
/// Refuses, alone: TooLarge (more than `most_bytes`, or tables nested too deep for the parser),
///   Malformed (all that faults_of_text() finds).
Outcome<toml::table> parse_toml(std::string_view text, const PlaceFinder& places,
                                std::string_view what, std::size_t most_bytes,
                                std::span<const std::string_view> lists = {});

}  // namespace swathe
