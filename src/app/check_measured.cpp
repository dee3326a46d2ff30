#include <fmt/format.h>

#include <algorithm>

#include "check/check.hpp"
#include "commands.hpp"
#include "input.hpp"
#include "load.hpp"
#include "make/checked_set.hpp"
#include "swathe/check.hpp"
#include "table.hpp"
#include "verdicts.hpp"

namespace swathe::app {
namespace {

constexpr const char* kStandardInput = "-";
constexpr std::size_t kWhat = 1;  // the column under which notes stand

Table rows_table(const std::vector<MeasuredRow>& rows, const Terminal& terminal) {
  Table table({{"verdict"},
               {"what", Column::Align::Left, true},
               {"asked", Column::Align::Left, true},
               {"plan", Column::Align::Left, true},
               {"measured", Column::Align::Left, true},
               {"rule", Column::Align::Left, true}});
  for (const MeasuredRow& row : rows) {
    table.add({painted_verdict(row.verdict, terminal), printable(row.row.what),
               printable(row.row.finding.required), printable(row.row.finding.measured),
               row.measured, row.row.rule});
    if (!row.advice.empty()) table.add_note(printable(row.advice), kWhat);
  }
  return table;
}

/// What is still to be measured, and with what.
std::string still_to_measure(const std::vector<MeasuredRow>& rows) {
  Table table({{"not measured yet", Column::Align::Left, true},
               {"asked", Column::Align::Left, true},
               {"with", Column::Align::Left}});
  for (const MeasuredRow& row : rows)
    table.add({printable(row.row.what), printable(row.row.finding.required), row.row.with});
  return table.to_text();
}

std::size_t count(const std::vector<MeasuredRow>& rows, Verdict verdict) {
  return static_cast<std::size_t>(std::ranges::count(rows, verdict, &MeasuredRow::verdict));
}

}  // namespace

Exit check_measured(Terminal& terminal, const std::string& job, const std::string& file) {
  if (job == kStandardInput && file == kStandardInput) {
    terminal.complain(
        "swathe: JOB and FILE are both -, expected one of them in a file: standard input is read "
        "once");
    return Exit::WrongInput;
  }
  const auto made = load(terminal, job);
  if (!made) return made.error();
  const std::string title = job_words(made->job);
  if (!made->season) {
    terminal.answer(fmt::format("{}: the job names no season, so no rule is checked.\n", title));
    return Exit::Done;
  }
  const auto text = read_job_text(file);
  if (!text) {
    terminal.complain(text.error());
    return Exit::WrongInput;
  }
  auto rows = swathe::check_measured(card_rows(check_to_measure(checked_set(*made)), *made->season),
                                     text->text, text->name, made->job.units);
  if (!rows) {
    terminal.complain(rows.error());
    return Exit::WrongInput;
  }
  const auto measured = [](const MeasuredRow& row) { return !row.measured.empty(); };
  const auto first_open = std::stable_partition(rows->begin(), rows->end(), measured);
  const std::vector<MeasuredRow> open(first_open, rows->end());
  rows->erase(first_open, rows->end());
  std::ranges::stable_sort(*rows, {}, &MeasuredRow::verdict);  // worst first

  std::string answer = paragraph(
      "",
      fmt::format("{}, as measured, checked against the rules of {}.", title, made->season->name));
  if (!rows->empty()) answer += '\n' + rows_table(*rows, terminal).to_text();
  if (!open.empty()) answer += '\n' + still_to_measure(open);
  const std::size_t failed = count(*rows, Verdict::Fail);
  answer +=
      fmt::format("\n{} failed, {} with a warning, {} unknown, {} passed, {} not measured yet\n",
                  failed, count(*rows, Verdict::Warn), count(*rows, Verdict::Unknown),
                  count(*rows, Verdict::Pass), open.size());
  answer += kManualDecides;
  terminal.answer(answer);
  return failed > 0 ? Exit::RuleNotMet : Exit::Done;
}

}  // namespace swathe::app
