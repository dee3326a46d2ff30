#include "make_job.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "entries.hpp"
#include "load.hpp"
#include "models.hpp"
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
  return fmt::format("{}; see: swathe check {}\n", line, job);
}

tl::expected<void, Trouble> put(const std::string& folder, const std::vector<Entry>& entries,
                                const Many* among) {
  std::vector<OutputFile> files;
  for (const Entry& entry : entries) files.push_back(entry.file);
  if (among != nullptr) return put_files(folder, files, among->interrupts);
  const HeldInterrupts held;
  return put_files(folder, files, held);
}

}  // namespace

Exit make_job(Terminal& terminal, const std::string& job, const std::string& folder,
              const Making& making, const Many* among) {
  const auto made = load(terminal, job);
  if (!made) return made.error();
  auto sheets = sheets_of(terminal, *made);
  if (!sheets) return sheets.error();
  if (making.scale && !add_models(terminal, *made, *sheets, *making.scale)) return Exit::WrongInput;
  const std::vector<Entry> entries = entries_of(*made, *sheets, making.wanted);
  if (entries.empty()) {
    terminal.complain(
        fmt::format("{}:1:1: the job has no number, so there are no {}", job,
                    making.wanted == Wanted::Views ? "views of it" : "numeral sheets"));
    return Exit::WrongInput;
  }
  if (const auto done = put(folder, entries, among); !done) {
    terminal.complain("swathe: " + done.error().sentence);
    return Exit::MachineFailed;
  }
  terminal.answer(files_text(folder, entries));
  if (making.wanted == Wanted::Views) terminal.answer("\n" + sight_text(*made));
  std::string talk = left_out_text(*sheets, making.wanted);
  if (making.scale) talk += smaller_model_text(*made, *sheets, *making.scale);
  if (wants(making.wanted, SheetKind::Tiles)) talk += ways_text(*made, *sheets);
  if (wants(making.wanted, SheetKind::Book)) talk += shopping_text(*made) + "\n";
  if (among == nullptr) talk += kPrintWords;
  talk += verdict_line(*made, job);
  if (among != nullptr && !talk.empty()) talk = fmt::format("{}:\n{}", job, talk);
  if (!talk.empty()) terminal.say(talk);
  return Exit::Done;
}

}  // namespace swathe::app
