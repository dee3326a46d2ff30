#pragma once

#include <string>
#include <string_view>

#include "base/toml.hpp"

namespace swathe {

/// Keys are spelled as in America; a job may spell them as in Britain: "colour" for "color".
std::string american(std::string_view name);
std::string british(std::string_view name);

/// Whether two parts of a path are one but for how a word is spelled in Britain and America.
bool same_name(std::string_view a, std::string_view b);

/// Whether two texts are one but for small and capital letters of the Latin alphabet.
bool same_but_for_case(std::string_view a, std::string_view b);

/// Keys in the British spelling get the American one, their places stay. Names that a job gives
/// (of a color) stay too, and so does a key that stands beside its American twin: it is one too
/// many, and reading says so.
void spell_as_in_america(toml::table& root);

}  // namespace swathe
