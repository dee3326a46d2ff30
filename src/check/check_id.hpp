#pragma once

#include <algorithm>
#include <string>
#include <string_view>

namespace swathe {

/// Every id that a check may write into a finding. Each has its words in data/checks.toml.
inline constexpr std::string_view kCheckIds[] = {
    "numeral-height",
    "numeral-stroke",
    "numeral-color",
    "numeral-outline",
    "numeral-corner",
    "numeral-places",
    "numeral-spacing",
    "sight",
    "contrast",
    "cover-gap",
    "corner-reach",
    "cover-cloth",
    "cloth-color",
    "corner-fill",
    "padding-depth",
    "padding-height",
    "padding-core",
    "padding-form",
    "backing-height",
    "backing-thickness",
    "extension",
    "hard-parts",
    "zone",
    "fastening",
    "markings",
    "support",
    "weight",
    "bracket",
    "play",
};

/// One of kCheckIds: any other text does not compile.
class CheckId {
 public:
  consteval CheckId(const char* text) : text_(text) {
    if (std::ranges::find(kCheckIds, text_) == std::end(kCheckIds)) throw "not in kCheckIds";
  }
  std::string text() const { return std::string(text_); }

 private:
  std::string_view text_;
};

}  // namespace swathe
