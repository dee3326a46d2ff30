#pragma once

#include <cstddef>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "swathe/base/outcome.hpp"
#include "swathe/type/font.hpp"

namespace swathe {

/// A font and the bytes it reads from, which stay where they are while anyone has this.
struct OpenedFont {
  std::shared_ptr<const std::string> bytes;
  Font font;
};

/// Fonts that were opened, to be asked again: the same bytes with the same axes are not opened a
/// second time, and what a font has worked out is not worked out again.
///
/// It has a copy of their bytes, and lets go of the font that was not asked for the longest where
/// there are more than kMost. It and its fonts belong to one thread at a time.
class OpenFonts {
 public:
  static constexpr std::size_t kMost = 32;

  /// Refuses: as Font::open; such a font is opened each time it is asked for.
  Outcome<OpenedFont> open(std::string_view bytes, const std::map<std::string, double>& axes = {});

  std::size_t size() const { return kept_.size(); }
  std::size_t opened() const { return opened_; }  ///< so often a font was opened, not found

 private:
  struct Kept {
    std::map<std::string, double> axes;
    OpenedFont font;
  };
  std::vector<Kept> kept_;  ///< the one asked for last first
  std::size_t opened_ = 0;
};

}  // namespace swathe
