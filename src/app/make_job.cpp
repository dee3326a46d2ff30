#include "make_job.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>
#include <vector>

#include "entries.hpp"
#include "labels.hpp"
#include "load.hpp"
#include "models.hpp"
#include "output.hpp"
#include "shopping.hpp"
#include "sight.hpp"
#include "text.hpp"
#include "ways.hpp"

namespace swathe::app {
namespace {

/// What the rules say, in one line.
std::string verdict_line(const Made& made, const std::string& job) {
  const auto count = [&](Verdict verdict) {
    return static_cast<std::size_t>(std::ranges::count(made.findings, verdict, &Finding::verdict));
  };
  const std::size_t failed = count(Verdict::Fail), warned = count(Verdict::Warn);
  if (failed + warned == 0) return "";
  std::string line;
  if (failed > 0) line = count_of(failed, "rule is", "rules are") + " not met";
  if (warned > 0) line += (failed > 0 ? ", " : "") + count_of(warned, "warning", "warnings");
  return fmt::format("{}; see: swathe check {}\n", line, named(job));
}

/// Why there is nothing of the number to make, each reason at its key.
Refusals no_numerals(const Made& made, Wanted wanted) {
  const char* what = wanted == Wanted::Views ? "views of it" : "numeral sheets";
  if (!made.numerals)
    return {{Why::Missing,
             fmt::format("the job has no number, so there are no {}, expected job.number, like "
                         "\"20486\"",
                         what),
             made.job.places.of("job")}};
  Refusals reasons;
  for (const NumeralMisfit& misfit : made.numerals->misfits)
    reasons.push_back({Why::DoesNotFit,
                       fmt::format("the number does not fit on side \"{}\", so there are no {}: {}",
                                   misfit.side, what, misfit.advice),
                       made.job.places.of("job.number")});
  if (reasons.empty())
    return {{Why::Missing,
             fmt::format("the number stands nowhere, so there are no {}, expected numerals.sides "
                         "with a side in it, or \"auto\"",
                         what),
             made.job.places.of("numerals.sides")}};
  return reasons;
}

/// Every file into the folder; what is told of each. All are made before the first is written: a
/// fault in making one leaves the folder as it was.
tl::expected<std::vector<Entry>, Trouble> put(const std::string& folder, JobFiles& files,
                                              const Many* among) {
  std::vector<Entry> entries;
  std::vector<OutputFile> made;
  while (auto file = files.next()) {
    entries.push_back(entry_of(*file));
    made.push_back({std::move(file->name), std::move(file->bytes)});
  }
  const auto written = [&] {
    if (among != nullptr) return put_files(folder, made, among->interrupts);
    const HeldInterrupts held;
    return put_files(folder, made, held);
  }();
  if (!written) return tl::unexpected(written.error());
  return entries;
}

}  // namespace

Exit make_job(Terminal& terminal, const std::string& job, const std::string& folder,
              const Making& making, const Many* among) {
  const auto made = load(terminal, job);
  if (!made) return made.error();
  const auto labels = open_labels(terminal);
  if (!labels) return labels.error();
  FileOptions options{making.wanted, making.created, {}};
  if (making.scale) {
    auto models = models_of(terminal, *made, *labels, *making.scale);
    if (!models) return Exit::WrongInput;
    options.models = *std::move(models);
  }
  JobFiles files(*made, *labels, std::move(options));
  if (files.none()) {
    terminal.complain(no_numerals(*made, making.wanted));
    return Exit::WrongInput;
  }
  const auto entries = put(folder, files, among);
  if (!entries) {
    terminal.complain("swathe: " + entries.error().sentence);
    return Exit::MachineFailed;
  }
  terminal.answer(files_text(folder, *entries));
  if (making.wanted == Wanted::Views) terminal.answer("\n" + sight_text(*made));
  std::string talk = left_out_text(files.sheets());
  if (making.scale) talk += smaller_model_text(*made, *labels, *making.scale);
  if (wants(making.wanted, SheetKind::Tiles)) talk += ways_text(*made, files.sheets());
  if (wants(making.wanted, SheetKind::Book)) talk += shopping_text(*made) + "\n";
  if (among == nullptr && wants(making.wanted, SheetKind::TestPage)) talk += kPrintWords;
  talk += verdict_line(*made, job);
  if (among != nullptr && !talk.empty()) talk = fmt::format("{}:\n{}", named(job), talk);
  if (!talk.empty()) terminal.say(talk);
  return Exit::Done;
}

}  // namespace swathe::app
