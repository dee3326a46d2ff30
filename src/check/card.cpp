#include <fmt/format.h>

#include <algorithm>
#include <cassert>

#include "base/embedded.hpp"
#include "base/texts.hpp"
#include "swathe/check.hpp"

// The inspector's card: what of the findings somebody looks at, in which order and with what.
namespace swathe {
namespace {

/// A line of the card's text.
struct Look {
  std::string check, what, with;
};

std::vector<Look> looks() {
  std::vector<Look> list;
  std::string_view text = embedded(fmt::format("check/{}/inspection.txt", kLanguage));
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (line.empty() || line.front() == '#') continue;
    const std::size_t first = line.find(": "), last = line.rfind(": ");
    assert(first < last && "a check, what it is called, what it is measured with");
    list.push_back({std::string(line.substr(0, first)),
                    std::string(line.substr(first + 2, last - first - 2)),
                    std::string(line.substr(last + 2))});
  }
  return list;
}

/// "2026 R412" less the season, which the card's head names.
std::string rule_words(const Finding& finding, const Season& season) {
  std::string rule = finding.rule;
  if (rule.starts_with(season.name + " ")) rule.erase(0, season.name.size() + 1);
  if (finding.attested == Attested::Official) return rule;
  return fmt::format("{} ({})", rule, to_text(finding.attested));
}

/// "8 places" for a subject that names so many.
std::string subject_words(const std::string& subject) {
  const auto commas = std::ranges::count(subject, ',');
  return commas > 2 ? fmt::format("each of {} places", commas + 1) : subject;
}

}  // namespace

std::vector<CardRow> card_rows(const std::vector<Measurable>& findings, const Season& season) {
  std::vector<CardRow> rows;
  for (const auto& [check, what, with] : looks())
    for (const auto& [finding, limit] : findings)
      if (finding.id == check && !finding.rule.empty())
        rows.push_back({rule_words(finding, season), what + ": " + subject_words(finding.subject),
                        with, finding, limit});
  return rows;
}

std::vector<CardRow> card_rows(const std::vector<Finding>& findings, const Season& season) {
  std::vector<Measurable> all;
  for (const Finding& finding : findings) all.push_back({finding, {}});
  return card_rows(all, season);
}

}  // namespace swathe
