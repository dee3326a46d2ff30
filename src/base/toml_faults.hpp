#pragma once

#include <span>
#include <string_view>

#include "base/toml_text.hpp"

namespace swathe {

/// What is wrong with a text that is not TOML, in the words of people who do not know TOML: each
/// slip at its value, with what to type instead.
///
/// `error` is what the parser stopped at. `lists` are the tables that stand in [[ ]]. The first of
/// the slips that nobody recognizes keeps the parser's words. By place in the text; at most
/// kMostTextFaults.
///
/// Holds (toml_faults_test.cpp): each line typed as it says, the text has one fault less.
Refusals faults_of_text(std::string_view text, const PlaceFinder& places,
                        const toml::parse_error& error, std::span<const std::string_view> lists);

inline constexpr std::size_t kMostTextFaults = 16;

}  // namespace swathe
