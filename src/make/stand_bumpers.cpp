#include "make/stand_bumpers.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace swathe {
namespace {

std::optional<Frame> frame_of(const JobReading& reading, Refusals& faults) {
  if (!reading.sound("frame")) return std::nullopt;
  return take(Frame::make(reading.job.frame, reading.job.places, reading.job.units), faults);
}

std::optional<Section> section_of(const JobReading& reading, Refusals& faults) {
  const Job& job = reading.job;
  for (const char* table : {"boards", "padding", "cloth"})
    if (!reading.sound(table)) return std::nullopt;
  return take(Section::make(job.boards, job.padding, job.cloth, job.places, job.units), faults);
}

std::vector<OpeningKeys> sound_openings(const JobReading& reading) {
  std::vector<OpeningKeys> sound;
  for (std::size_t k = 0; k < reading.job.openings.size(); ++k)
    if (reading.sound(fmt::format("opening.{}", k))) sound.push_back(reading.job.openings[k]);
  return sound;
}

bool ends_at_opening(const BumperKeys& bumper) {
  return std::holds_alternative<RunEnd::Opening>(bumper.from.at) ||
         std::holds_alternative<RunEnd::Opening>(bumper.to.at);
}

std::vector<Run> runs_of(const JobReading& reading, const Frame& frame, const Section& section,
                         Refusals& faults) {
  const Job& job = reading.job;
  const std::vector<OpeningKeys> openings = sound_openings(reading);
  const bool all_sound = openings.size() == job.openings.size();
  std::vector<Run> runs;
  for (std::size_t k = 0; k < job.bumpers.size(); ++k) {
    if (!reading.sound(fmt::format("bumper.{}", k))) continue;
    if (!all_sound && ends_at_opening(job.bumpers[k])) continue;
    auto run = take(make_run(frame, section, job.padding, job.bumpers[k], static_cast<int>(k),
                             job.places, job.units, openings),
                    faults);
    if (run) runs.push_back(std::move(*run));
  }
  return runs;
}

void add(std::vector<bumper::Piece>& pieces, Outcome<std::vector<bumper::Piece>> more,
         Refusals& faults) {
  if (auto some = take(std::move(more), faults))
    pieces.insert(pieces.end(), some->begin(), some->end());
}

}  // namespace

Staged<Standing> stand_bumpers(const JobReading& reading) {
  const Job& job = reading.job;
  Standing stand;
  Refusals faults;
  stand.frame = frame_of(reading, faults);
  stand.section = section_of(reading, faults);
  if (!stand.frame || !stand.section) return {std::move(stand), std::move(faults)};
  const Frame& frame = *stand.frame;
  const Section& section = *stand.section;
  const std::vector<Run> runs = runs_of(reading, frame, section, faults);
  if (sound_openings(reading).size() == job.openings.size()) {
    const Refusals wrong = faults_of_openings(frame, runs, job.openings, job.places, job.units);
    faults.insert(faults.end(), wrong.begin(), wrong.end());
  }
  if (auto gaps = take(gaps_between(frame, section, runs, job.places, job.units), faults))
    stand.bare_gaps = std::move(*gaps);
  for (const Run& run : runs) {
    add(stand.boards, board_pieces(frame, section, run, job.boards, job.places), faults);
    add(stand.padding, padding_pieces(frame, section, run, job.padding, job.places), faults);
    stand.wraps.emplace_back(frame, section, run);
  }
  return {std::move(stand), std::move(faults)};
}

}  // namespace swathe
