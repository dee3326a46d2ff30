#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <string>

#include "sheet/cover_ends.hpp"
#include "support/examples.hpp"
#include "support/label_font.hpp"
#include "support/made_examples.hpp"
#include "support/overlaps.hpp"
#include "swathe/write.hpp"

// Inches as they are printed, read off the sheets again and held against the model. The reader is
// this file's own: whole inches, a blank, a fraction.
namespace swathe {
namespace {

constexpr double kInch = 25.4;  // exact by definition of the inch

std::optional<double> whole_number(const std::string& text) {
  if (text.empty() || text.size() > 6 || text.find_first_not_of("0123456789") != std::string::npos)
    return std::nullopt;
  return std::stod(text);
}

/// "3/16" as a share, reduced and less than one.
std::optional<double> fraction(const std::string& text) {
  const std::size_t bar = text.find('/');
  if (bar == std::string::npos) return std::nullopt;
  const auto above = whole_number(text.substr(0, bar)), below = whole_number(text.substr(bar + 1));
  if (!above || !below || *below == 0) return std::nullopt;
  CHECK_MESSAGE(*above < *below, text);
  CHECK_MESSAGE(std::fmod(*above, 2) == 1,
                text);  // halves, quarters ... are reduced where it is odd
  return *above / *below;
}

/// "32 1/4", "32" or "1/4", in inches.
std::optional<double> read_inches(const std::string& text) {
  const std::size_t blank = text.find(' ');
  if (blank == std::string::npos) {
    const auto whole = whole_number(text);
    return whole ? whole : fraction(text);
  }
  const auto whole = whole_number(text.substr(0, blank));
  const auto part = fraction(text.substr(blank + 1));
  if (!whole || !part) return std::nullopt;
  return *whole + *part;
}

/// A row of a measuring sheet's table.
struct Row {
  double figure = 0;  ///< inches
  std::string what;
};

/// The rows of all its pages: a figure, words on one line or more.
std::vector<Row> rows_of(const Sheet& sheet) {
  std::vector<Row> rows;
  for (const Page& page : sheet.pages) {
    bool in_table = false;
    for (const TextMark& text : test::texts_of(page.drawing)) {
      if (text.text == "what") in_table = true;
      if (!in_table) continue;
      if (const auto figure = read_inches(text.text))
        rows.push_back({*figure, ""});
      else if (!rows.empty() && text.text != "along" && text.text != "across" &&
               text.text != "what")
        rows.back().what += (rows.back().what.empty() ? "" : " ") + text.text;
    }
  }
  return rows;
}

/// Where named places of a cover are, in mm from the left and the lower edge of its cloth.
std::multimap<std::string, double> places_of(const Made& made, std::size_t bumper) {
  const Pattern& pattern = made.patterns[bumper];
  const bool inside = made.job.paper.face == PaperFace::Inside;
  const plane::Box cloth = bounds(pattern.outline);
  const auto x = [&](double s) { return inside ? cloth.hi.x - s : s - cloth.lo.x; };
  const auto y = [&](double u) { return u - cloth.lo.y; };
  std::multimap<std::string, double> places;
  places.emplace("bottom cloth edge", 0);
  places.emplace("top cloth edge", cloth.height());
  for (const PatternCorner& corner : pattern.corners) {
    const std::string name = corner.side_before + " / " + corner.side_after;
    places.emplace("corner " + name + ", notch deepest", x(corner.s));
    // A dart's point is where it is no wider than nothing, farthest from the middle.
    const char* darts = corner.sewn ? " sewn corner points" : " corner fold points";
    double top = -1e9, bottom = 1e9;
    for (const DartPoint& p : corner.dart) {
      if (p.half_width > 1e-9) continue;
      top = std::max(top, p.u);
      bottom = std::min(bottom, p.u);
    }
    places.emplace(std::string("top") + darts, y(top));
    places.emplace(std::string("bottom") + darts, y(bottom));
  }
  for (const bool start : {true, false})
    places.emplace(cover_end_words(made, bumper, start) +
                       (pattern.ends[start ? 0 : 1].flaps > 0 ? ": bumper" : ": bumper, flaps"),
                   x(start ? 0 : pattern.length));
  for (std::size_t k = 0; k < pattern.marks.size(); ++k)
    places.emplace("match mark " + made.mark_names[bumper][k], x(pattern.marks[k].at.x));
  for (const PlacedNumeral& number : made.numerals_on_patterns())
    if (number.bumper == static_cast<int>(bumper))
      places.emplace(number.side + " numeral, center line", x(number.center_s));
  for (const BracketOnPattern& bracket : pattern.brackets) {
    const bool window = bracket.cloth == BracketCloth::Window;
    for (const Punch& hole : bracket.holes)
      places.emplace((window ? "window of bracket " : "bracket ") +
                         std::to_string(bracket.keys + 1) + ", " + bracket.side + ", hole to punch",
                     y(hole.at.y));
  }
  return places;
}

bool names(const Row& row, const std::string& place) {
  const std::size_t at = row.what.find(place);
  if (at == std::string::npos) return false;
  // Not the beginning of another name: "match mark M1" of "match mark M11".
  const std::size_t end = at + place.size();
  return end == row.what.size() || row.what[end] == ';' || row.what[end] == ',';
}

TEST_CASE(
    "fractions: every place of the measuring sheets, read again, is within 1/32 in of the model") {
  std::size_t read = 0;
  for (const auto& path : test::example_jobs()) {
    const Made made = test::made_example(path);
    if (made.job.units != Units::Inches) continue;
    CAPTURE(path.filename().string());
    const std::vector<Sheet> sheets = all_sheets(made, test::label_font());
    for (std::size_t b = 0; b < made.patterns.size(); ++b) {
      const auto sheet =
          std::ranges::find(sheets, made.patterns[b].bumper + "-measures", &Sheet::stem);
      REQUIRE(sheet != sheets.end());
      const std::vector<Row> rows = rows_of(*sheet);
      for (const auto& named : places_of(made, b)) {
        const std::string place = named.first;
        const double mm = named.second;
        // All figures run from one edge: the last is as near as the first.
        double off = 1e9;
        for (const Row& row : rows) {
          if (!names(row, place)) continue;
          if (std::abs(row.figure - mm / kInch) > std::abs(off)) continue;
          off = row.figure - mm / kInch;
        }
        CAPTURE(place);
        CAPTURE(mm);
        CHECK(std::abs(off) <= 1.0 / 32 + 1e-9);
        ++read;
      }
    }
  }
  CHECK(read > 300);
}

TEST_CASE("fractions: the size of each cover, its boards and its padding, read again") {
  for (const auto& path : test::example_jobs()) {
    const Made made = test::made_example(path);
    if (made.job.units != Units::Inches) continue;
    CAPTURE(path.filename().string());
    std::vector<double> listed;  // lengths of the lists, inches
    for (const Sheet& sheet : all_sheets(made, test::label_font())) {
      for (const Page& page : sheet.pages)
        for (const TextMark& text : test::texts_of(page.drawing)) {
          if (sheet.kind == SheetKind::Book) {
            CHECK_MESSAGE(text.text.find(" (+") == std::string::npos, text.text);
            CHECK_MESSAGE(text.text.find(" (-") == std::string::npos, text.text);
            if (const auto figure = read_inches(text.text)) listed.push_back(*figure);
          }
          if (sheet.kind != SheetKind::Pattern || !text.text.ends_with(" in")) continue;
          const auto size = read_inches(text.text.substr(0, text.text.size() - 3));
          if (!size || sheet.stem.size() != 9) continue;  // "A-pattern"
          const auto pattern =
              std::ranges::find(made.patterns, sheet.stem.substr(0, 1), &Pattern::bumper);
          const double cloth = text.turn == 0 ? pattern->cloth_length : pattern->cloth_width;
          if (text.text != "4 in") CHECK(std::abs(*size - cloth / kInch) <= 1.0 / 32 + 1e-9);
        }
    }
    for (const auto* pieces : {&made.boards, &made.padding})
      for (const bumper::Piece& piece : *pieces) {
        const double inches = piece.length_mm / kInch;
        // Padding to the nearest 1/16 in, boards down to it; 0.01 mm is rounding, not wood.
        const bool board = pieces == &made.boards;
        const bool there = std::ranges::any_of(listed, [&](double told) {
          return board ? told <= inches + 4e-4 && inches - told < 1.0 / 16
                       : std::abs(told - inches) <= 1.0 / 32 + 1e-6;
        });
        CHECK_MESSAGE(there, (piece.side + ", inches: " + std::to_string(inches)));
      }
  }
}

}  // namespace
}  // namespace swathe
