#include "swathe/make.hpp"

#include <fmt/format.h>

#include <utility>

#include "check/check.hpp"
#include "make/checked_set.hpp"
#include "make/faults.hpp"
#include "make/font.hpp"
#include "make/keys_in_vain.hpp"
#include "make/lay_patterns.hpp"
#include "make/named_files.hpp"
#include "make/set_number.hpp"
#include "make/stand_bumpers.hpp"
#include "stock/board_faults.hpp"
#include "swathe/job.hpp"

namespace swathe {
namespace {

/// A bracket with a fault is put nowhere: its other keys may be defaults.
JobReading less_faulty_brackets(JobReading reading) {
  for (std::size_t k = 0; k < reading.job.brackets.size(); ++k)
    if (!reading.sound(fmt::format("bracket.{}", k))) reading.job.brackets[k].side.clear();
  return reading;
}

Staged<OpenFont> face_of(const JobReading& reading, const NamedFiles& files, OpenFonts* fonts) {
  if (reading.job.number.empty() || !reading.sound("numerals") || !reading.sound("job")) return {};
  return open_font(reading.job, files, fonts);
}

std::vector<Finding> findings_on(const Made& made, const MakeOptions& options) {
  std::vector<Finding> findings = check(checked_set(made));
  if (!options.advice)
    for (Finding& finding : findings) {
      finding.advice.clear();
      finding.mend.clear();
    }
  return findings;
}

/// The stages of the pass, each made from earlier ones. A stage runs if everything that it needs is
/// without faults, so that one run reports as many of a job's faults as possible.
Outcome<Made> made_of(JobReading read, const std::string& job_file, const NamedFiles& files,
                      const MakeOptions& options) {
  JobReading reading = less_faulty_brackets(std::move(read));
  const Job& job = reading.job;
  Refusals faults = reading.faults;
  auto season = take(season_of(job, job_file, files), faults);
  Standing stand = take(stand_bumpers(reading), faults);
  std::vector<Pattern> patterns = take(lay_patterns(reading, stand.wraps), faults);
  const OpenFont font = take(face_of(reading, files, options.fonts), faults);
  if (!faults.empty()) return tl::unexpected(in_order(std::move(faults)));

  std::vector<double> covered = covered_gaps(stand.bare_gaps, stand.wraps, *stand.section);
  auto numbered = set_number_on(stand, job, *season, font, options);
  if (!numbered) return tl::unexpected(in_order(std::move(numbered.error())));
  // Seams keep clear of the numerals, so they come after them.
  const auto on_cloth = on_patterns(numbered->numerals, ClothMap(job.cloth));
  auto joins = take(join_covers(patterns, job, on_cloth), faults);
  if (!faults.empty()) return tl::unexpected(in_order(std::move(faults)));
  auto same = same_patterns(patterns, joins, on_cloth);
  auto mark_names = shared_mark_names(patterns, same);
  Stock stock = plan_stock(job, stand.boards, stand.padding, patterns, joins);
  Refusals short_of = stock_faults(job, stock, stand.padding, patterns, joins);
  for (Refusal& fault : board_faults(job, *stand.frame, stock, stand.boards))
    short_of.push_back(std::move(fault));
  if (!short_of.empty()) return tl::unexpected(in_order(std::move(short_of)));

  Made made{std::move(reading.job),
            std::move(*season),
            std::move(*stand.frame),
            std::move(*stand.section),
            std::move(stand.wraps),
            std::move(patterns),
            std::move(joins),
            std::move(mark_names),
            std::move(stand.bare_gaps),
            std::move(covered),
            std::move(numbered->clear),
            std::move(stand.boards),
            std::move(stand.padding),
            std::move(numbered->numerals),
            std::move(numbered->sight),
            std::move(same),
            std::move(stock),
            {},
            {}};
  made.findings = findings_on(made, options);
  made.notices = keys_in_vain(made);
  return made;
}

}  // namespace

Outcome<Made> make(std::string_view job_text, const std::string& job_file, const NamedFiles& files,
                   const MakeOptions& options) {
  return made_of(read_job(job_text, job_file), job_file, files, options);
}

Outcome<Made> make(const Job& job, const NamedFiles& files, const MakeOptions& options) {
  return made_of(read_again(job), job.source, files, options);
}

}  // namespace swathe
