// Any bytes as a length, an angle, a number or a color.

#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "fuzz/faults.hpp"
#include "swathe/base.hpp"

namespace swathe {
namespace {

using fuzz::must;

/// Decimal figures, sign and exponent only: there the C library's strtod (in its "C" locale) says
/// what number it is.
void check_number(const std::string& text) {
  const auto number = parse_number(text);
  if (text.find_first_not_of("0123456789.eE+-") != std::string::npos)
    return must(!number, "a number is figures");
  char* end = nullptr;
  const double by_c = std::strtod(text.c_str(), &end);
  const bool whole = *end == '\0' && std::isfinite(by_c);
  must(!number || whole, "what is read as a number is one to the C library");
  must(!number || *number == by_c, "and the same one");
}

/// A size printed and read again is within half its last place.
void check_printed(Length length) {
  constexpr double kMostPrinted = 1e9;  // mm; beyond it a double has no such places
  if (std::abs(length.mm()) > kMostPrinted) return;
  const auto off = [&](const std::string& text, Units units) {
    const auto again = parse_length(text, units);
    must(again.has_value(), "what is printed is a length");
    return std::abs((*again - length).mm());
  };
  constexpr double kSlack = 1e-6;
  for (const Units units : {Units::Inches, Units::Millimeters}) {
    const bool inch = units == Units::Inches;
    must(off(dimension_with_unit(length, units), units) <= (inch ? 25.4 / 32 : 0.5) + kSlack,
         "a dimension is near");
    must(off(measured(length, units), units) <= (inch ? 0.0005 * 25.4 : 0.05) + kSlack,
         "a measure is near");
    must(off(exact(length, units), units) <= (inch ? 0.0005 * 25.4 : 0.005) + kSlack,
         "an exact value is near");
  }
}

void check_length(const std::string& text) {
  const auto in = parse_length(text, Units::Inches), bare = parse_length(text, Units::Millimeters);
  must(in.has_value() == bare.has_value(), "a length is one in any units");
  if (!in) return;
  must(std::isfinite(in->mm()) && std::isfinite(bare->mm()), "a length is finite");
  constexpr double kTiny = 1e-290;  // mm; next to the smallest double a ratio has no digits
  if (std::abs(bare->mm()) > kTiny)
    must(*in == *bare || std::abs(in->mm() / bare->mm() - 25.4) < 1e-9, "a unit, or none");
  check_printed(*in);
  const auto turned = parse_length("-" + text, Units::Inches);
  if (text.front() >= '0' && text.front() <= '9')
    must(turned && *turned == -*in, "a minus makes it negative");
}

}  // namespace
}  // namespace swathe

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace swathe;
  const std::string text(reinterpret_cast<const char*>(data), size);
  check_number(text);
  check_length(text);
  if (const auto angle = parse_angle(text))
    must(std::isfinite(angle->radians()), "an angle is finite");
  if (const auto color = parse_color(text))
    must(parse_color(to_text(*color)) == color, "a color is written as it is read");
  return 0;
}
