#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "make/faults.hpp"
#include "swathe/job/job.hpp"
#include "swathe/make/make.hpp"
#include "swathe/numeral/size.hpp"
#include "swathe/type/font.hpp"

namespace swathe {

/// A font and the bytes it reads from, which stay where they are when it is handed on.
struct OpenFont {
  std::string name;
  std::map<std::string, double> axes;
  std::shared_ptr<const std::string> bytes;  ///< of a font file; none for a bundled font
  std::optional<Font> font;
};

/// The font that a job names; none in it where that cannot be opened.
Staged<OpenFont> open_font(const Job& job, const NamedFiles& files);

/// The number in each bundled font, for advice where the chosen one is too wide.
std::vector<FontCandidate> candidates_for(const Job& job);

}  // namespace swathe
