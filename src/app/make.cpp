#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <utility>

#include "commands.hpp"
#include "creation_date.hpp"
#include "folder.hpp"
#include "folder_name.hpp"
#include "guard.hpp"
#include "make_job.hpp"
#include "text.hpp"
#include "worker_threads.hpp"

namespace swathe::app {
namespace {

/// A folder for each job, or a sentence that says why these jobs cannot be made together.
tl::expected<std::vector<std::string>, std::string> folders_of(const std::vector<std::string>& jobs,
                                                               const std::string& folder) {
  std::vector<std::string> folders;
  std::map<std::u32string, std::size_t> taken;
  for (const std::string& job : jobs) {
    if (job == "-")
      return tl::unexpected<std::string>(
          "- is standard input, which has no name for a folder: make it alone, or give a file");
    const std::string stem = std::filesystem::path(job).stem().string();
    if (const auto fault = folder_name_fault(stem))
      return tl::unexpected(
          fmt::format("{} would go into a folder called \"{}\", which not every disk takes: it "
                      "{}; expected a name like heron.toml: rename the job file, or make it alone",
                      named(job), named(stem), *fault));
    folders.push_back((std::filesystem::path(folder) / stem).string());
    const auto [other, fresh] = taken.emplace(folder_name_key(stem), folders.size() - 1);
    if (fresh) continue;
    const std::string& theirs = folders[other->second];
    return tl::unexpected(
        theirs == folders.back()
            ? fmt::format("{} and {} would both go into {}: rename one of them",
                          named(jobs[other->second]), named(job), named(theirs))
            : fmt::format("{} and {} would go into {} and {}, one folder on many disks: rename one "
                          "of them",
                          named(jobs[other->second]), named(job), named(theirs),
                          named(folders.back())));
  }
  return folders;
}

struct Slot {
  Terminal words;
  Exit exit = Exit::MachineFailed;
};

bool is_made(Exit exit) { return exit == Exit::Done || exit == Exit::RuleNotMet; }

std::string sum_of(const std::vector<Slot>& slots, Wanted wanted) {
  const auto made = static_cast<std::size_t>(std::ranges::count_if(slots, &is_made, &Slot::exit));
  const std::size_t failed = slots.size() - made;
  std::string text = count_of(made, "job is", "jobs are") + " made";
  if (failed > 0) text += fmt::format(", {} not", failed);
  return text + ".\n" + (made > 0 && wants(wanted, SheetKind::TestPage) ? kPrintWords : "");
}

Exit make_many(Terminal& terminal, const std::vector<std::string>& jobs, const std::string& path,
               const Making& making) {
  const auto folders = folders_of(jobs, path);
  if (!folders) {
    terminal.complain("swathe: " + folders.error());
    return Exit::WrongInput;
  }
  const HeldInterrupts held;
  const auto folder =
      Folder::make(path);  // made here, so that no two jobs make it at the same time
  if (!folder) {
    terminal.complain("swathe: " + folder.error());
    return Exit::MachineFailed;
  }
  std::vector<Slot> slots;
  for (const std::string& job : jobs) slots.push_back({terminal.keeping(job)});
  const Many many{held};
  bool answered = false;
  work_in_order({jobs.size(),
                 [&](std::size_t k) {
                   Terminal& words = slots[k].words;
                   if (held.any()) return;
                   slots[k].exit = guarded(words, [&] {
                     return make_job(words, jobs[k], (*folders)[k], making, &many);
                   });
                 },
                 [&](std::size_t k) {
                   if (held.any()) return;
                   if (is_made(slots[k].exit) && std::exchange(answered, true))
                     terminal.answer("\n");
                   terminal.pass_on(slots[k].words);
                 },
                 [&](std::size_t count) {
                   terminal.progress(fmt::format("{} of {} jobs", count, jobs.size()));
                 }});
  if (held.any()) return Exit::MachineFailed;
  terminal.say(sum_of(slots, making.wanted));
  return std::ranges::max(slots, {}, &Slot::exit).exit;
}

}  // namespace

Exit make_files(Terminal& terminal, const std::vector<std::string>& jobs, const std::string& folder,
                const Making& asked) {
  const auto created = creation_date_asked_for();
  if (!created) {
    terminal.complain("swathe: " + created.error());
    return Exit::WrongInput;
  }
  Making making = asked;
  making.created = *created;
  if (jobs.size() > 1 && !making.zip.empty()) {
    terminal.complain(
        fmt::format("swathe: --zip takes one job, {} are given: make each alone", jobs.size()));
    return Exit::WrongInput;
  }
  if (jobs.size() == 1) return make_job(terminal, jobs.front(), folder, making);
  return make_many(terminal, jobs, folder, making);
}

}  // namespace swathe::app
