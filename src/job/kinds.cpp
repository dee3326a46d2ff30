#include <fmt/format.h>

#include <algorithm>

#include "base/embedded.hpp"
#include "base/nearest.hpp"
#include "base/print.hpp"
#include "job/new_job.hpp"
#include "swathe/job.hpp"

// Jobs of each kind to start from: the small examples themselves
// (examples/kinds), built in.
namespace swathe {
namespace {

constexpr std::string_view kFolder = "kinds/", kEnding = ".toml";

/// What stands in place of an example's title and number.
constexpr std::string_view kYourOwn =
    "# Your own:\n"
    "# title = \"Spring covers\"               # is printed on every sheet\n"
    "# number = \"123\"                        # your team's, 1 to 5 digits\n";

/// Above what is of use with a number alone.
constexpr std::string_view kWithNumber = "# For your number, once it stands above:\n";

constexpr std::string_view kMore =
    "\n# Every other key has a default. \"swathe explain\" lists them all.\n";

constexpr std::string_view kAboveDrawing =
    "# The frame seen from above; the machine drives up. Measure your own and "
    "change the sizes "
    "here.\n";

}  // namespace

std::vector<std::string> job_kinds() {
  std::vector<std::string> kinds;
  for (const Embedded& file : all_embedded()) {
    if (!file.name.starts_with(kFolder) || !file.name.ends_with(kEnding)) continue;
    const std::string_view name = file.name.substr(kFolder.size());
    kinds.emplace_back(name.substr(0, name.size() - kEnding.size()));
  }
  return kinds;
}

Outcome<std::string> new_job_like(std::string_view kind) {
  const std::vector<std::string> kinds = job_kinds();
  if (std::ranges::find(kinds, kind) == kinds.end()) {
    std::string names;
    for (const std::string& name : kinds) names += (names.empty() ? "" : ", ") + name;
    return refuse(Why::UnknownName,
                  fmt::format("\"{}\" is not a kind of job, the nearest is "
                              "\"{}\", expected one of "
                              "{}",
                              clip(kind), nearest_name(kind, {kinds.begin(), kinds.end()}), names));
  }
  const std::string_view example = embedded(fmt::format("{}{}{}", kFolder, kind, kEnding));
  const std::string drawing = drawing_comment(example);
  std::string text;
  bool of_number = false;  // is the line: there is none yet
  for (std::string_view rest = example; !rest.empty();) {
    const std::string_view line = rest.substr(0, rest.find('\n'));
    rest.remove_prefix(std::min(line.size() + 1, rest.size()));
    if (line.starts_with("title = ") || line.starts_with("number = ")) continue;
    if (line.starts_with("["))
      of_number = line.starts_with("[numerals]") || line.starts_with("[[numerals.");
    if (line == "[numerals]") text += kWithNumber;
    if (of_number && !line.empty()) text += "# ";
    if (line == "[frame]") text += fmt::format("{}{}", kAboveDrawing, drawing);
    text += fmt::format("{}\n", line);
    if (line == "[job]") text += kYourOwn;
  }
  text += kMore;
  return text;
}

}  // namespace swathe
