#include "book/steps.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <string_view>

#include "base/embedded.hpp"
#include "base/texts.hpp"
#include "book/staple_words.hpp"
#include "book/texts.hpp"
#include "rules/practice.hpp"
#include "swathe/bumper.hpp"

namespace swathe {
namespace {

using book_texts::say;

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

bool has_punched_holes(const Made& made) {
  return std::ranges::any_of(made.patterns, [](const Pattern& pattern) {
    return std::ranges::any_of(
        pattern.brackets, [](const BracketOnPattern& bracket) { return !bracket.holes.empty(); });
  });
}

bool stapled(const Made& made) { return made.job.cloth.fixing == Fixing::Staples; }

bool has_cloth(const Made& made, BracketCloth cloth) {
  return std::ranges::any_of(made.job.brackets,
                             [&](const BracketKeys& bracket) { return bracket.cloth == cloth; });
}

/// Whether a line marked so is for this job; in a step for each corner on the way, for the corner
/// of that number.
bool applies(const Made& made, std::string_view to, int corner = 1) {
  const ClothKeys& cloth = made.job.cloth;
  const bool fold = has_corners(made) && cloth.relief == Relief::Fold;
  if (to.empty()) return true;
  if (to == "numerals") return made.numerals.has_value();
  if (to == "paint")
    return has_numerals(made, NumeralMethod::Stencil) ||
           has_numerals(made, NumeralMethod::PaintMask);
  if (to == "iron-on") return has_numerals(made, NumeralMethod::IronOn);
  if (to == "sew-on") return has_numerals(made, NumeralMethod::SewOn);
  if (to == "staples") return stapled(made);
  if (to == "ears") return !staples_of(made, Staple::On::Ear).empty();
  if (to == "tongues") return !staples_of(made, Staple::On::Tongue).empty();
  if (to == "next") return !staples_of(made, Staple::On::Flap, corner).empty();
  if (to == "hook-and-loop") return !stapled(made);
  if (to == "fold") return fold;
  if (to == "fold-and-staple") return fold && stapled(made);
  if (to == "fold-by-hand") return fold && !stapled(made);
  if (to == "sewn") return has_corners(made) && cloth.relief == Relief::Sewn;
  if (to == "joined") return has_joins(made);
  if (to == "sewing")
    return applies(made, "sewn") || applies(made, "hook-and-loop") || applies(made, "joined") ||
           applies(made, "sew-on");
  if (to == "joints") return made.stock.screws.count > 0;
  if (to == "splices") return !made.stock.padding.splices.empty();
  if (to == "voids") return has_voids(made);
  if (to == "past-board")
    return std::ranges::any_of(made.patterns, [](const Pattern& pattern) {
      return std::ranges::any_of(pattern.ends,
                                 [](const EndOnPattern& end) { return end.past_board > 0; });
    });
  if (to == "holes") return has_punched_holes(made);
  if (to == "brackets") return !made.job.brackets.empty();
  if (to == "drilling") return applies(made, "joints") || applies(made, "brackets");
  if (to == "under") return has_cloth(made, BracketCloth::Under);
  if (to == "rules") return made.season.has_value();
  assert(to == "windows");
  return has_cloth(made, BracketCloth::Window);
}

/// A line of a text: what kind it is, what it hangs on, and its words.
struct Line {
  char mark = '@';  ///< the text itself tells what each means
  std::string hangs_on, words;
};

std::vector<Line> lines_of(std::string_view text) {
  std::vector<Line> lines;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (line.empty() || line.front() == '#') continue;
    if (std::string_view("@+>~<=!").find(line.front()) == std::string_view::npos) {
      lines.push_back({'@', "", std::string(line)});
      continue;
    }
    const std::size_t gap = line.find(' ');
    lines.push_back(
        {line.front(), std::string(line.substr(1, gap - 1)), std::string(line.substr(gap + 1))});
  }
  return lines;
}

std::string screw_words(const Made& made) {
  const Screws& screws = made.stock.screws;
  const std::string length = exact(screws.length, made.job.units);
  if (made.job.units == Units::Inches)
    return say("steps.screw-inches",
               {{"number", std::to_string(screws.number)}, {"length", length}});
  return say("steps.screw-millimeters",
             {{"across", plain_number(screws.across.mm(), 1)}, {"length", length}});
}

/// The job's value for a name in braces.
std::string value_of(const Made& made, std::string_view name, int corner) {
  const Units units = made.job.units;
  const bool folds = applies(made, "fold-and-staple");
  if (name == "screws") return std::to_string(made.stock.screws.a_joint);
  if (name == "screw") return screw_words(made);
  if (name == "pilot") return exact(made.stock.screws.pilot, units);
  if (name == "edge") return dimension_with_unit(practice::kScrewFromEdge, units);
  if (name == "first")  // sewn corners, or none: nothing is folded in between
    return folds ? staples_of(made, Staple::On::Flap, 0) : flap_staples(made);
  if (name == "next") return staples_of(made, Staple::On::Flap, corner);
  if (name == "ears") return staples_of(made, Staple::On::Ear);
  assert(name == "tongues");
  return staples_of(made, Staple::On::Tongue);
}

std::string with_values(const Made& made, std::string words, int corner) {
  for (std::size_t open = words.find('{'); open != std::string::npos; open = words.find('{')) {
    const std::size_t close = words.find('}', open);
    words.replace(open, close + 1 - open,
                  value_of(made, words.substr(open + 1, close - open - 1), corner));
  }
  return words;
}

/// A step of the text with all that belongs to it.
using StepLines = std::vector<Line>;

std::vector<StepLines> steps_in(const std::vector<Line>& lines) {
  std::vector<StepLines> steps;
  for (const Line& line : lines) {
    if (line.mark == '@') steps.emplace_back();
    steps.back().push_back(line);
  }
  return steps;
}

void add_names(std::vector<std::string>& to, std::string_view names) {
  while (!names.empty()) {
    const std::size_t end = std::min(names.find(", "), names.size());
    to.emplace_back(names.substr(0, end));
    names.remove_prefix(std::min(end + 2, names.size()));
  }
}

WorkStep step_of(const Made& made, const StepLines& lines, int corner) {
  WorkStep step;
  const auto append = [](std::string& to, const std::string& words, const char* between) {
    to += (to.empty() ? "" : between) + words;
  };
  for (const Line& line : lines) {
    if (!applies(made, line.hangs_on, corner)) continue;
    if (line.mark == '@' || line.mark == '+')
      append(step.what, with_values(made, line.words, corner), " ");
    if (line.mark == '!') append(step.name, line.words, " ");
    if (line.mark == '>') append(step.tools, line.words, ", ");
    if (line.mark == '~') append(step.waits, line.words, " ");
    if (line.mark == '<') add_names(step.needs, line.words);
    if (line.mark == '=') add_names(step.gives, line.words);
  }
  return step;
}

}  // namespace

std::vector<WorkStep> steps_of(const Made& made) {
  std::vector<WorkStep> steps;
  for (const StepLines& lines :
       steps_in(lines_of(embedded(fmt::format("book/{}/order_of_work.txt", kLanguage))))) {
    const std::string& hangs_on = lines.front().hangs_on;
    if (!applies(made, hangs_on)) continue;
    const int times = hangs_on == "fold-and-staple" ? corners_on_the_way(made) : 1;
    for (int corner = 1; corner <= times; ++corner) steps.push_back(step_of(made, lines, corner));
  }
  return steps;
}

std::vector<StepName> step_names(const Made& made) {
  std::vector<StepName> names;
  std::size_t number = 0;
  for (const WorkStep& step : steps_of(made)) {
    ++number;
    if (names.empty() || names.back().name != step.name)
      names.push_back({number, number, step.name});
    names.back().last = number;
  }
  return names;
}

std::vector<std::string> tool_lines(const Made& made) {
  std::vector<std::string> tools;
  for (const Line& line : lines_of(embedded(fmt::format("book/{}/tools.txt", kLanguage))))
    if (applies(made, line.hangs_on)) tools.push_back(line.words);
  return tools;
}

}  // namespace swathe
