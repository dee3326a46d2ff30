#include "support/fonts.hpp"

#include <doctest/doctest.h>

#include <algorithm>

namespace swathe::test {

const std::vector<BundledFont>& numeral_fonts() {
  static const std::vector<BundledFont> fonts = [] {
    std::vector<BundledFont> all = bundled_fonts();
    auto saira = bundled_font("Saira");
    REQUIRE(saira.has_value());
    saira->name = "Saira 50 750";
    saira->axes = {{"wdth", 50}, {"wght", 750}};
    all.push_back(*saira);
    return all;
  }();
  return fonts;
}

const BundledFont& numeral_font(const std::string& name) {
  const auto& fonts = numeral_fonts();
  const auto found = std::find_if(fonts.begin(), fonts.end(),
                                  [&](const BundledFont& font) { return font.name == name; });
  REQUIRE(found != fonts.end());
  return *found;
}

Font opened(const BundledFont& bundled) {
  const auto font = open_bundled(bundled);
  REQUIRE(font.has_value());
  return *font;
}

}  // namespace swathe::test
