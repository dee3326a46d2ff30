#include <fmt/format.h>

#include <algorithm>

#include "commands.hpp"
#include "swathe/rules.hpp"
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
                     season.section.empty() ? "" : ", section " + season.section + " of the manual",
                     table.to_text(2));
}

constexpr std::string_view kHowSure[] = {
    "official: we read it in the manual or in an update of it",
    "inferred: we read it in the next season's manual, which lists no change of it",
    "quoted: somebody else quotes the rule",
    "unverified: from memory; a check on it can only warn",
    "guideline: the rule says \"about\" or \"should\"; a check on it can only warn",
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
  text += kManualDecides;
  terminal.answer(text);
  return Exit::Done;
}

}  // namespace swathe::app
