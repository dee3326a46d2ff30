#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "check/check.hpp"

namespace swathe::test {

/// A job made far enough to be checked, and how to check it.
struct Checked {
  Job job;
  Frame frame;
  Section section;
  std::vector<Wrap> wraps;
  std::vector<Pattern> patterns;
  std::vector<double> bare_gaps, covered_gaps;
  std::vector<bumper::Piece> boards, padding;
  std::optional<Numerals> numerals;
  std::optional<Stock> stock;
  std::optional<Sight> sight;

  std::vector<Finding> by(const Season* season) const;
  std::vector<Finding> by(std::string_view season) const;
};

Checked made(const Job& job);

/// A digit whose stroke is `wide` for `share` of its length, and half as wide for the rest.
Digit digit(char name, double wide_mm, double share = 1.0);

/// The number on the middles of sides; ink 250 mm wide, 98 mm high, strokes of 15 mm.
Numerals numerals_on(const Checked& c, const std::vector<std::string>& sides);

std::vector<Finding> of(const std::vector<Finding>& findings, std::string_view id);

/// The worst of an id; a check that is missing fails the test.
Finding worst(const std::vector<Finding>& findings, std::string_view id);

}  // namespace swathe::test
