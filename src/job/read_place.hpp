#pragma once

#include <array>
#include <optional>
#include <string>

#include "job/table_reader.hpp"

// Where something is along a side of the frame, as bumpers' ends, openings, brackets and numerals
// tell it.
namespace swathe {

/// Reads a place along `side` as a table with a side of its own has it: "50%", or ["9 in", "left"].
std::optional<SidePlace> read_side_place(TableReader& in, std::string_view key,
                                         const toml::node& node, const std::string& side);

/// Reads a bumper's end: ["front", "50%"], ["front", "9 in", "left"], ["front", "corner"],
/// ["front", "opening"].
std::optional<RunEnd> read_run_end(TableReader& in, std::string_view key, const toml::node& node);

/// The sides that share a corner with this one, the one before it first; nothing where the file's
/// sides are at fault, or this is none of them.
std::optional<std::array<std::string, 2>> neighbors_of(const JobFile& file,
                                                       const std::string& side);

}  // namespace swathe
