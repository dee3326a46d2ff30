#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "base/maths.hpp"
#include "check/checks.hpp"
#include "job/key_path.hpp"
#include "swathe/base.hpp"

namespace swathe {
namespace {

constexpr double kLeastContrast = 3.0;  // WCAG 2.2, success criterion 1.4.3: large text
constexpr double kWhite = 0.95;         // each channel of what anybody calls white ...
constexpr double kOffWhite = 0.85;      // ... and of what some do

double luminance(const Color& color) {
  const auto linear = [](double c) {
    return c <= 0.04045 ? c / 12.92 : maths::power((c + 0.055) / 1.055, 12, 5);
  };
  return 0.2126 * linear(color.red) + 0.7152 * linear(color.green) + 0.0722 * linear(color.blue);
}

double darkest_channel(const Color& c) { return std::min({c.red, c.green, c.blue}); }
bool is_white(const Color& c) { return darkest_channel(c) >= kWhite; }

struct Hue {
  double degrees = 0;     ///< 0 red, 120 green, 240 blue
  double saturation = 0;  ///< of the largest channel
};

Hue hue_of(const Color& c) {
  const double most = std::max({c.red, c.green, c.blue}), spread = most - darkest_channel(c);
  if (!(spread > 0)) return {};
  double sixth = 0;
  if (most == c.red) {
    sixth = (c.green - c.blue) / spread;
  } else if (most == c.green) {
    sixth = 2 + (c.blue - c.red) / spread;
  } else {
    sixth = 4 + (c.red - c.green) / spread;
  }
  return {std::fmod(60 * sixth + 360, 360), spread / most};
}

/// How far a color is from a set's, degrees of hue; nothing for a set we have no hue for.
std::optional<double> off_hue(const Color& color, const std::string& set) {
  const double wanted = set == "red" ? 0.0 : set == "blue" ? 230.0 : -1.0;
  if (wanted < 0) return std::nullopt;
  const double apart = std::abs(hue_of(color).degrees - wanted);
  return std::min(apart, 360 - apart);
}

std::string key_of(const std::string& cloth) { return "cloth.colors." + key_part(cloth); }

/// A cloth for a set that has none, where a job that names no cloth would have it.
std::vector<KeyChange> usual_cloth(const std::string& set) {
  for (const ClothColor& usual : ClothKeys().colors)
    if (usual.name == set) return {{key_of(set), quoted_text(to_text(usual.srgb))}};
  return {};
}

CheckResult judge_cloth(const ClothColor& color, const std::vector<std::string>& sets,
                        const std::string& required) {
  constexpr double kSurely = 25, kPerhaps = 40;  // deg of hue
  constexpr double kStrong = 0.5;                // saturation
  CheckResult j{"cloth-color",
                fmt::format("{} cloth", color.name),
                required,
                to_text(color.srgb),
                Verdict::Unknown,
                "hold the cloth beside the color that the rule asks for",
                {{Subject::cloth_of(color.name)}, {key_of(color.name)}}};
  double nearest = 360;
  for (const std::string& set : sets) {
    const auto off = off_hue(color.srgb, set);
    if (!off) return j;
    nearest = std::min(nearest, *off);
  }
  const double strong = hue_of(color.srgb).saturation;
  if (nearest <= kSurely && strong >= kStrong) {
    j.verdict = Verdict::Pass;
  } else if (nearest <= kPerhaps && strong >= 0.5 * kStrong) {
    j.verdict = Verdict::Warn;
    j.advice = "take a purer color: an inspector may call this another one";
  } else {
    j.verdict = Verdict::Fail;
    j.advice = "take " + required + " cloth";
  }
  return j;
}

}  // namespace

double contrast_ratio(const Color& a, const Color& b) {
  const double la = luminance(a), lb = luminance(b);
  return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

void check_numeral_color(const CheckedSet& s, const Season& season, Findings& findings) {
  if (!season.numerals_white || !season.numerals_white->value || s.job.number.empty()) return;
  const NumeralKeys& numerals = s.job.numerals;
  const bool outlined = season.numerals_white_outline && !is_white(numerals.color) &&
                        numerals.outline.mm() > kRounding;
  CheckResult j{"numeral-color",
                "numerals",
                "white",
                to_text(numerals.color),
                Verdict::Pass,
                "set numerals.color to \"#ffffff\"",
                {{Subject::numerals()},
                 {"numerals.color", "numerals.outline"},
                 {{"numerals.color", "\"#ffffff\""}}}};
  if (outlined) {
    j.required = "white, or outlined in white";
    j.measured += ", outlined in white";
  } else if (!is_white(numerals.color)) {
    const bool nearly = darkest_channel(numerals.color) >= kOffWhite;
    j.verdict = nearly ? Verdict::Warn : Verdict::Fail;
  }
  findings.add(*season.numerals_white, j);
  if (outlined) {
    findings.at_least(
        *season.numerals_white_outline,
        {"numeral-outline",
         "white outline of the numerals",
         numerals.outline.mm(),
         fmt::format("set numerals.outline to {}",
                     findings.exact_text(season.numerals_white_outline->value)),
         {{Subject::numerals()},
          {"numerals.outline"},
          {{"numerals.outline", findings.value(season.numerals_white_outline->value)}}}},
        Grace::None);
  }
}

void check_contrast(const CheckedSet& s, const Season&, Findings& findings) {
  if (s.job.number.empty()) return;
  const NumeralKeys& numerals = s.job.numerals;
  for (const ClothColor& cloth : s.job.cloth.colors) {
    double ratio = contrast_ratio(numerals.color, cloth.srgb);
    if (numerals.outline.mm() > kRounding) {  // the outline, always white, is what meets the cloth
      ratio = contrast_ratio({1, 1, 1}, cloth.srgb);
    }
    findings.advise({"contrast",
                     fmt::format("numerals on {}", cloth.name),
                     fmt::format("at least {}:1", plain_number(kLeastContrast, 1)),
                     fmt::format("{}:1", plain_number(ratio, 2)),
                     ratio >= kLeastContrast ? Verdict::Pass : Verdict::Warn,
                     "take darker cloth or lighter digits: these are hard to read from afar",
                     {{Subject::numerals(), Subject::cloth_of(cloth.name)},
                      {"numerals.color", key_of(cloth.name)},
                      contrast_ratio({1, 1, 1}, cloth.srgb) >= kLeastContrast
                          ? std::vector<KeyChange>{{"numerals.color", "\"#ffffff\""}}
                          : std::vector<KeyChange>()}});
  }
}

void check_cloth_color(const CheckedSet& s, const Season& season, Findings& findings) {
  if (!season.cloth_sets) return;
  const auto& sets = season.cloth_sets->value;
  std::string required;
  for (const std::string& set : sets) required += (required.empty() ? "" : " or ") + set;
  for (const ClothColor& color : s.job.cloth.colors) {
    findings.add(*season.cloth_sets, judge_cloth(color, sets, required));
  }
  for (const std::string& set : sets) {
    const bool there = std::ranges::any_of(s.job.cloth.colors, [&](const ClothColor& color) {
      const auto off = off_hue(color.srgb, set);
      return color.name == set || (off && *off <= 40);
    });
    if (there) continue;
    findings.add(*season.cloth_sets,
                 {"cloth-color",
                  fmt::format("{} set", set),
                  "a set in each color",
                  "no such cloth in cloth.colors",
                  Verdict::Unknown,
                  fmt::format("add {} to cloth.colors, or make sure that you have that set", set),
                  {{Subject::cloth()}, {"cloth.colors"}, usual_cloth(set)}});
  }
}

}  // namespace swathe
