#include "book/steps.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <string_view>

#include "base/embedded.hpp"
#include "base/texts.hpp"
#include "swathe/bumper.hpp"

namespace swathe {
namespace {

bool has_corners(const Made& made) {
  return std::ranges::any_of(made.patterns,
                             [](const Pattern& pattern) { return !pattern.corners.empty(); });
}

bool has_joins(const Made& made) {
  return std::ranges::any_of(made.joins,
                             [](const std::vector<ClothJoin>& joins) { return !joins.empty(); });
}

bool has_voids(const Made& made) {
  return std::ranges::any_of(made.wraps, [&](const Wrap& wrap) {
    return !corner_voids(made.frame, made.section, wrap.run(), made.job.padding).empty();
  });
}

bool has_numerals(const Made& made, NumeralMethod method) {
  return made.numerals && made.job.numerals.method == method;
}

bool has_bracket(const Made& made, bool (*is)(const BracketKeys&)) {
  return std::ranges::any_of(made.job.brackets, is);
}

bool has_punched_holes(const Made& made) {
  return std::ranges::any_of(made.patterns, [](const Pattern& pattern) {
    return std::ranges::any_of(
        pattern.brackets, [](const BracketOnPattern& bracket) { return !bracket.holes.empty(); });
  });
}

/// Whether a line marked so is for this job.
bool applies(const Made& made, std::string_view to) {
  const ClothKeys& cloth = made.job.cloth;
  if (to.empty()) return true;
  if (to == "numerals") return made.numerals.has_value();
  if (to == "paint")
    return has_numerals(made, NumeralMethod::Stencil) ||
           has_numerals(made, NumeralMethod::PaintMask);
  if (to == "iron-on") return has_numerals(made, NumeralMethod::IronOn);
  if (to == "sew-on") return has_numerals(made, NumeralMethod::SewOn);
  if (to == "staples") return cloth.fixing == Fixing::Staples;
  if (to == "hook-and-loop") return cloth.fixing == Fixing::HookAndLoop;
  if (to == "fold") return has_corners(made) && cloth.relief == Relief::Fold;
  if (to == "sewn") return has_corners(made) && cloth.relief == Relief::Sewn;
  if (to == "joined") return has_joins(made);
  if (to == "sewing")
    return applies(made, "sewn") || applies(made, "hook-and-loop") || applies(made, "joined") ||
           applies(made, "sew-on");
  if (to == "voids") return has_voids(made);
  if (to == "past-board")
    return std::ranges::any_of(made.patterns, [](const Pattern& pattern) {
      return std::ranges::any_of(pattern.ends,
                                 [](const EndOnPattern& end) { return end.past_board > 0; });
    });
  if (to == "holes") return has_punched_holes(made);
  if (to == "brackets") return !made.job.brackets.empty();
  assert(to == "windows");
  return has_bracket(
      made, [](const BracketKeys& bracket) { return bracket.cloth == BracketCloth::Window; });
}

/// A line of a text: what kind it is, and its words.
struct Line {
  char mark = ' ';  ///< '@' a line of its own, '+' goes on, '>' tools, '~' what waits
  std::string words;
};

/// The lines of a text that apply; the text itself tells how it is marked.
std::vector<Line> lines_of(const Made& made, std::string_view text) {
  std::vector<Line> lines;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (line.empty() || line.front() == '#') continue;
    if (std::string_view("@+>~").find(line.front()) == std::string_view::npos) {
      lines.push_back({'@', std::string(line)});
      continue;
    }
    const std::size_t gap = line.find(' ');
    if (applies(made, line.substr(1, gap - 1)))
      lines.push_back({line.front(), std::string(line.substr(gap + 1))});
  }
  return lines;
}

}  // namespace

std::vector<WorkStep> steps_of(const Made& made) {
  std::vector<WorkStep> steps;
  const auto append = [](std::string& to, const std::string& words, const char* between) {
    to += (to.empty() ? "" : between) + words;
  };
  for (const Line& line :
       lines_of(made, embedded(fmt::format("book/{}/order_of_work.txt", kLanguage)))) {
    if (line.mark == '@') steps.push_back({line.words, "", ""});
    if (line.mark == '+') append(steps.back().what, line.words, " ");
    if (line.mark == '>') append(steps.back().tools, line.words, ", ");
    if (line.mark == '~') append(steps.back().waits, line.words, " ");
  }
  return steps;
}

std::vector<std::string> tool_lines(const Made& made) {
  std::vector<std::string> tools;
  for (const Line& line : lines_of(made, embedded(fmt::format("book/{}/tools.txt", kLanguage))))
    tools.push_back(line.words);
  return tools;
}

}  // namespace swathe
