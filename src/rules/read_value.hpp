#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "swathe/rules.hpp"

// Values of a rule file read from text, and written as text.
namespace swathe {

/// Each returns nothing where the text is no such value, or is out of any sensible range.
std::optional<Length> rule_length(std::string_view text);     ///< with its unit, up to 1000 ft
std::optional<Angle> rule_angle(std::string_view text);       ///< 0 to 180 deg
std::optional<rules::Mass> rule_mass(std::string_view text);  ///< "135 lb", "6.8 kg"
std::optional<Viewpoints> rule_viewpoints(std::string_view text);
std::optional<Attested> rule_attested(std::string_view text);

std::string in_words(Length value);
std::string in_words(Angle value);
std::string in_words(rules::Mass value);
std::string in_words(rules::Zone value);
std::string in_words(Viewpoints value);
std::string in_words(int value);
std::string in_words(bool value);
std::string in_words(const std::vector<std::string>& value);

}  // namespace swathe
