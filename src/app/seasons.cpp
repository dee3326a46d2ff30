#include <fmt/format.h>

#include <algorithm>

#include "commands.hpp"
#include "swathe/rules/season.hpp"
#include "table.hpp"

namespace swathe::app {
namespace {

std::string season_text(const Season& season) {
  const std::vector<SeasonEntry> list = entries(season);
  Table table({{"what", Column::Align::Left, true},
               {"value", Column::Align::Left, true},
               {"rule"},
               {"how sure"}});
  for (const SeasonEntry& entry : list)
    table.add({entry.what, entry.value, entry.rule,
               to_text(entry.attested) + (entry.guideline ? ", guideline" : "")});
  return fmt::format("Season {}{}\n{}\n", season.name,
                     season.section.empty() ? "" : ", manual section " + season.section,
                     table.to_text(2));
}

constexpr std::string_view kHowSure[] = {
    "official: read in the manual or an update of it",
    "inferred: read in the next season's, and no change of it is listed",
    "quoted: as third parties quote the rule",
    "unverified: from memory; a check on it warns at worst",
    "guideline: the rule says about, or should; a check on it warns at worst",
};

}  // namespace

Exit seasons(Terminal& terminal, const std::vector<std::string>& names) {
  std::string text;
  for (const std::string& name : names.empty() ? season_names() : names) {
    const auto season = bundled_season(name);
    if (!season) {
      for (const Refusal& refusal : season.error())
        terminal.complain(fmt::format("swathe: {}", refusal.sentence));
      return names.empty() ? Exit::MachineFailed : Exit::WrongInput;
    }
    text += season_text(*season);
  }
  text += "How sure:\n";
  for (const std::string_view line : kHowSure) text += paragraph("  ", line);
  text += "The manual of the season and its updates rule; the inspector's word is final.\n";
  terminal.answer(text);
  return Exit::Done;
}

}  // namespace swathe::app
