#include <fmt/format.h>

#include <string_view>

#include "job/key_path.hpp"
#include "swathe/check.hpp"

// The card as a file to fill in.
namespace swathe {
namespace {

constexpr std::string_view kHead =
    R"(# The inspector's card as a file: finished bumpers, measured. Season {season}.
#
# Measure the finished bumper. Write what you find between the quotes of
# "measured".
# A length: "4 7/8 in", "124 mm". A number with no unit is in {units}.
# A weight: "52 lb", "23.5 kg".
# Where you only look: "yes" if it is as the rule asks, else "no".
# A line that stays empty counts as not measured yet.
# Keep "what" and "asks": they say which line of the card it is.
# Then run: swathe check JOB --measured FILE
)";

/// An empty value, and what goes into it.
std::string_view to_fill_in(Limit::Of of) {
  switch (of) {
    case Limit::Of::Seen:
      return "\"\"  # yes or no";
    case Limit::Of::Mass:
      return "\"\"  # a weight";
    case Limit::Of::Count:
      return "\"\"  # how many";
    case Limit::Of::Fills:
    case Limit::Of::Within:
      return "[\"\", \"\"]  # from the floor: to its bottom, to its top";
    case Limit::Of::Length:
      break;
  }
  return "\"\"  # a length";
}

}  // namespace

std::string measured_text(const std::vector<CardRow>& rows, const Season& season, Units units) {
  std::string text =
      fmt::format(kHead, fmt::arg("season", season.name),
                  fmt::arg("units", units == Units::Inches ? "inches" : "millimeters"));
  for (const CardRow& row : rows)
    text +=
        fmt::format("\n# {}, {}\n[[row]]\nwhat = {}\nasks = {}\nplan = {}\nmeasured = {}\n",
                    row.rule, row.with, quoted_text(row.what), quoted_text(row.finding.required),
                    quoted_text(row.finding.measured + (row.met() ? "" : " (NOT MET)")),
                    to_fill_in(row.limit.of));
  return text;
}

}  // namespace swathe
