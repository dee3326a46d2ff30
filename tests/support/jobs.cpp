#include "support/jobs.hpp"

#include <doctest/doctest.h>

#include <algorithm>

namespace swathe::test {

FrameKeys rectangle_frame(double width_mm, double depth_mm) {
  FrameKeys frame;
  frame.corners = {{width_mm, depth_mm}, {0, depth_mm}, {0, 0}, {width_mm, 0}};
  frame.sides = {"front", "left", "back", "right"};
  return frame;
}

FromCorner from_start(const std::string& side, Length distance) {
  static const std::vector<std::string> kSides = {"front", "left", "back", "right"};
  const auto at = std::ranges::find(kSides, side) - kSides.begin();
  return {distance, kSides[static_cast<std::size_t>(at + 3) % 4]};
}

FromCorner from_end(const std::string& side, Length distance) {
  static const std::vector<std::string> kSides = {"front", "left", "back", "right"};
  const auto at = std::ranges::find(kSides, side) - kSides.begin();
  return {distance, kSides[static_cast<std::size_t>(at + 1) % 4]};
}

BumperKeys half(const char* name, const char* from, const char* to) {
  BumperKeys keys;
  keys.name = name;
  keys.from = {from, RunEnd::Share{0.5}};
  keys.to = {to, RunEnd::Share{0.5}};
  return keys;
}

Job c_halves(double width_mm, double depth_mm) {
  Job job;
  job.frame = rectangle_frame(width_mm, depth_mm);
  job.bumpers = {half("A", "front", "back"), half("B", "back", "front")};
  return job;
}

Job worked_job(double noodle_inches, double board_height_inches) {
  Job job = c_halves(28 * 25.4, 30 * 25.4);
  job.frame.fit = mm(0);
  job.boards.thickness = inches(0.75);
  job.boards.height = inches(board_height_inches);
  job.padding.diameter = inches(noodle_inches);
  job.cloth.thickness = mm(0);
  return job;
}

Section section_of(const Job& job) {
  const auto section = Section::make(job.boards, job.padding, job.cloth, job.places);
  REQUIRE(section.has_value());
  return *section;
}

std::vector<Wrap> wraps_of(const Job& job) {
  const auto frame = Frame::make(job.frame, job.places);
  REQUIRE(frame.has_value());
  const Section section = section_of(job);
  std::vector<Wrap> wraps;
  for (std::size_t k = 0; k < job.bumpers.size(); ++k) {
    const auto run = make_run(*frame, section, job.padding, job.bumpers[k], static_cast<int>(k),
                              job.places, job.units, job.openings);
    REQUIRE(run.has_value());
    wraps.emplace_back(*frame, section, *run);
  }
  return wraps;
}

}  // namespace swathe::test
