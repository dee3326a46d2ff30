#include <fmt/format.h>

#include "commands.hpp"
#include "load.hpp"
#include "table.hpp"
#include "verdicts.hpp"

namespace swathe::app {
namespace {

constexpr std::size_t kWhat = 1;  // the column under which notes stand

Table findings_table(const std::vector<Finding>& findings, const Terminal& terminal) {
  Table table({{"verdict"},
               {"what", Column::Align::Left, true},
               {"asked", Column::Align::Left, true},
               {"found", Column::Align::Left, true},
               {"rule"}});
  for (const Finding& finding : findings) {
    table.add({painted_verdict(finding.verdict, terminal),
               fmt::format("{}: {}", finding.id, printable(finding.subject)),
               printable(finding.required), printable(finding.measured), finding.rule});
    if (!finding.advice.empty()) table.add_note(printable(finding.advice), kWhat);
    if (finding.attested != Attested::Official)
      table.add_note(fmt::format("How sure: {}, we have not read it in the manual.",
                                 to_text(finding.attested)),
                     kWhat);
  }
  return table;
}

std::size_t count(const std::vector<Finding>& findings, Verdict verdict) {
  std::size_t n = 0;
  for (const Finding& finding : findings) n += finding.verdict == verdict;
  return n;
}

}  // namespace

Exit check(Terminal& terminal, const std::string& job) {
  const auto made = load(terminal, job);
  if (!made) return made.error();
  const std::vector<Finding>& findings = made->findings;
  const std::string title = job_words(made->job);
  if (!made->season) {
    terminal.answer(fmt::format("{}: the job names no season, so no rule is checked.\n", title));
    return Exit::Done;
  }
  std::string text =
      paragraph("", fmt::format("{}, checked against the rules of {}.", title, made->season->name));
  text += '\n' + findings_table(findings, terminal).to_text() + '\n';
  const std::size_t failed = count(findings, Verdict::Fail);
  text += fmt::format("{} failed, {} with a warning, {} unknown, {} passed\n", failed,
                      count(findings, Verdict::Warn), count(findings, Verdict::Unknown),
                      count(findings, Verdict::Pass));
  text += kManualDecides;
  terminal.answer(text);
  return failed > 0 ? Exit::RuleNotMet : Exit::Done;
}

}  // namespace swathe::app
