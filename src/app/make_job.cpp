#include "make_job.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
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

std::size_t count(const Made& made, Verdict verdict) {
  return static_cast<std::size_t>(std::ranges::count(made.findings, verdict, &Finding::verdict));
}

/// How many rules are not met, and the worst of them.
std::string verdict_text(const Made& made, const std::string& job) {
  const std::size_t failed = count(made, Verdict::Fail), warned = count(made, Verdict::Warn);
  if (failed + warned == 0) return "";
  std::string line;
  if (failed > 0) line = count_of(failed, "rule is", "rules are") + " not met";
  if (warned > 0) line += (failed > 0 ? ", " : "") + count_of(warned, "warning", "warnings");
  line += fmt::format("; see: swathe check {}\n", named(job));
  if (failed == 0) return line;
  // Findings come worst first.
  const Finding& worst = made.findings.front();
  return line + paragraph("", printable(fmt::format(
                                  "{}{}, {}, {}: asked {}, found {}.",
                                  failed == 1 ? "It is " : "The worst: ", worst.rule, worst.id,
                                  worst.subject, worst.required, worst.measured)));
}

/// Sides whose number is left out, and why.
std::string dropped_text(const Made& made) {
  std::string text;
  if (!made.numerals) return text;
  for (const NumeralMisfit& misfit : made.numerals->misfits)
    text += paragraph(
        "", printable(fmt::format("The number does not fit on {}, so it is left out there: {}.",
                                  misfit.side, misfit.advice)));
  return text.empty() ? "" : text + "\n";
}

/// Why there is nothing to make, each reason at its key.
Refusals nothing_made(const Made& made, Wanted wanted) {
  if (!wanted.has(FileKind::Numerals) && !wanted.has(FileKind::Views))
    return {{Why::DoesNotFit,
             "this paper is too small for any of the sheets that are asked for, expected larger "
             "paper, like \"letter\"",
             made.job.places.of("paper.sheet")}};
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

/// What was made, and what became of a folder's old files.
struct Put {
  std::vector<Entry> entries;
  Deleted old;
};

/// The archive's own folder holds it, whole or not at all.
tl::expected<void, Trouble> put_archive(const std::string& path, std::string bytes,
                                        const HeldInterrupts& held) {
  const std::filesystem::path whole(path);
  return put_files(whole.parent_path().string(), {{whole.filename().string(), std::move(bytes)}},
                   held);
}

/// Every file into the archive and the folder. All are made before the first is written: a fault in
/// making one leaves all as it was.
tl::expected<Put, Trouble> put(const std::string& folder, const Job& job, JobFiles& files,
                               const Making& making, const HeldInterrupts& held) {
  Put result;
  std::vector<MadeFile> made;
  while (auto file = files.next()) {
    result.entries.push_back(entry_of(*file, job));
    made.push_back(*std::move(file));
  }
  if (!making.zip.empty())
    if (auto done = put_archive(making.zip, to_zip(made, making.created), held); !done)
      return tl::unexpected(done.error());
  if (folder.empty()) return result;
  std::vector<OutputFile> output;
  for (MadeFile& file : made)
    output.push_back({std::move(file.name), std::move(file.bytes), to_text(file.kind)});
  const auto makes = [&](const std::string& kind) {
    for (int k = 0; k < kFileKinds; ++k)
      if (const auto one = static_cast<FileKind>(k); to_text(one) == kind)
        return making.wanted.has(one);
    return false;
  };
  auto old = put_set(folder, output, makes, held);
  if (!old) return tl::unexpected(old.error());
  result.old = *std::move(old);
  return result;
}

tl::expected<Put, Trouble> put(const std::string& folder, const Job& job, JobFiles& files,
                               const Making& making, const Many* among) {
  if (among != nullptr) return put(folder, job, files, making, among->interrupts);
  const HeldInterrupts held;
  return put(folder, job, files, making, held);
}

/// What is said after the table of files.
std::string talk_of(const Made& made, const Font& labels, JobFiles& files, const Deleted& old,
                    const std::string& job, const Making& making, bool alone) {
  const Wanted wanted = making.wanted;
  std::string talk = deleted_text(old) + left_out_text(files.sheets(), made.job.units);
  if (making.scale) talk += smaller_model_text(made, labels, *making.scale);
  if (wanted.has(FileKind::Numerals)) talk += dropped_text(made);
  if (wants(wanted, SheetKind::Book)) talk += shopping_text(made) + "\n";
  if (wanted.has(FileKind::Tiles) && wanted.has(FileKind::Measures))
    talk += ways_text(made, files.ways());
  if (alone && wants(wanted, SheetKind::TestPage)) talk += kPrintWords;
  return talk + verdict_text(made, job);
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
    terminal.complain(nothing_made(*made, making.wanted));
    return Exit::WrongInput;
  }
  const auto done = put(folder, made->job, files, making, among);
  if (!done) {
    terminal.complain("swathe: " + done.error().sentence);
    return Exit::MachineFailed;
  }
  terminal.answer(files_text(folder.empty() ? making.zip : folder, done->entries));
  if (making.wanted == Wanted::Views) terminal.answer("\n" + sight_text(*made));
  std::string talk = talk_of(*made, *labels, files, done->old, job, making, among == nullptr);
  if (among != nullptr && !talk.empty()) talk = fmt::format("{}:\n{}", named(job), talk);
  if (!talk.empty()) terminal.say(talk);
  if (making.wanted.has(FileKind::Tiles)) terminal.detail(not_on_fold_text(*made, files.ways()));
  return making.strict && count(*made, Verdict::Fail) > 0 ? Exit::RuleNotMet : Exit::Done;
}

}  // namespace swathe::app
