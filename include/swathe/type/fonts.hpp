#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "swathe/base/outcome.hpp"
#include "swathe/type/font.hpp"

namespace swathe {

/// A font for numerals that comes with the tool.
struct BundledFont {
  std::string name;                    ///< what a job calls it
  std::string file;                    ///< its bytes are embedded(file)
  std::map<std::string, double> axes;  ///< as it is set unless a job says otherwise
  std::string note;                    ///< "stencil" where it is drawn with bridges; else empty
};

/// In the order in which they are listed: the default first.
std::vector<BundledFont> bundled_fonts();

/// One by its name, capitals or not. Refuses: UnknownName, naming the nearest.
Outcome<BundledFont> bundled_font(std::string_view name);

/// Opened as it stands in the list, with `axes` set over its own, axis by axis.
/// Refuses: as Font::open.
Outcome<Font> open_bundled(const BundledFont& font, const std::map<std::string, double>& axes = {});

/// The bytes of the font in which labels are set: Cantarell Regular.
std::string_view label_font();

}  // namespace swathe
