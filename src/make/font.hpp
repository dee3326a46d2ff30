#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "make/faults.hpp"
#include "numeral/size.hpp"
#include "swathe/job.hpp"
#include "swathe/make.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// The font of a job's numerals, by the name it is told by.
struct OpenFont {
  std::string name;
  std::map<std::string, double> axes;
  std::optional<OpenedFont> font;
};

/// The font that a job names, from the fonts that are open already if it is among them; none in it
/// where it cannot be opened. `fonts` may be null.
Staged<OpenFont> open_font(const Job& job, const NamedFiles& files, OpenFonts* fonts);

/// The number in each bundled font, for advice where the chosen one is too wide.
std::vector<FontCandidate> candidates_for(const Job& job, OpenFonts* fonts);

}  // namespace swathe
