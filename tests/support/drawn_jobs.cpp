#include "support/drawn_jobs.hpp"

#include <cmath>
#include <cstddef>
#include <numbers>
#include <string>

namespace swathe::test {
namespace {

/// A frame of 3 to 8 sides, now and then up to 16, its corners on an ellipse at drawn bearings,
/// counter-clockwise. Mostly convex; one in six has a corner pushed in, past the line between its
/// neighbors.
FrameKeys drawn_frame(std::mt19937_64& rng) {
  const int most = rng() % 4 == 0 ? 16 : 8;
  const int sides = std::uniform_int_distribution<int>(3, most)(rng);
  const double a = drawn(rng, 350, 600), b = drawn(rng, 350, 600);
  FrameKeys frame;
  for (int k = 0; k < sides; ++k) {
    const double bearing = 2 * std::numbers::pi * (k + drawn(rng, -0.25, 0.25)) / sides;
    frame.corners.push_back({a * std::cos(bearing), b * std::sin(bearing)});
    frame.sides.push_back("side" + std::to_string(k));
  }
  if (sides > 4 && rng() % 6 == 0) {
    const FlatPoint between = 0.5 * (frame.corners[1] + frame.corners[3]);
    frame.corners[2] = test::drawn(rng, 0.6, 0.9) * between;
  }
  return frame;
}

void draw_parts(Job& job, std::mt19937_64& rng) {
  job.frame.fit = mm(drawn(rng, 0, 4));
  job.boards.thickness = mm(drawn(rng, 12, 22));
  job.boards.height = mm(drawn(rng, 110, 145));
  job.padding.diameter = mm(drawn(rng, 30, 72));
  job.padding.stack = std::uniform_int_distribution<int>(1, 3)(rng);
  job.cloth.thickness = mm(drawn(rng, 0, 2));
  job.padding.corner = rng() % 2 == 0 ? PaddingCorner::Mitred : PaddingCorner::Bent;
  job.boards.joint = Joint::Mitred;
  if (rng() % 3 == 0) job.cloth.relief = Relief::Sewn;
  if (rng() % 3 == 0) {
    job.padding.form = PaddingForm::Block;
    job.padding.depth = mm(drawn(rng, 30, 72));
    job.padding.height = mm(drawn(rng, 80, 150));
    job.padding.edge_radius = mm(drawn(rng, 0, 20));
    if (job.padding.edge_radius > mm(15))  // as round as can be
      job.padding.edge_radius = std::min(job.padding.depth, 0.5 * job.padding.height);
  }
}

}  // namespace

Job drawn_job(std::mt19937_64& rng) {
  Job job;
  job.frame = drawn_frame(rng);
  draw_parts(job, rng);
  const std::size_t n = job.frame.sides.size();
  const auto name = [&](std::size_t k) { return job.frame.sides[k % n]; };
  switch (rng() % 3) {
    case 0: {
      const std::size_t across = 1 + rng() % (n - 1);
      const double share = drawn(rng, 0.4, 0.6), other = drawn(rng, 0.4, 0.6);
      job.bumpers = {
          {"A", {name(0), RunEnd::Share{share}}, {name(across), RunEnd::Share{other}}, mm(6)},
          {"B", {name(across), RunEnd::Share{other}}, {name(0), RunEnd::Share{share}}, mm(6)}};
      break;
    }
    case 1:
      for (std::size_t k = 0; k < n; ++k)
        job.bumpers.push_back({std::string(1, static_cast<char>('A' + k)),
                               {name(k), RunEnd::Share{0.1}},
                               {name(k), RunEnd::Share{0.9}},
                               mm(3)});
      break;
    default:
      job.bumpers = {{"A", {name(0), RunEnd::Share{0.6}}, {name(0), RunEnd::Share{0.4}}, mm(5)}};
  }
  return job;
}

Job drawn_one_a_side(std::mt19937_64& rng) {
  Job job;
  const double wide = drawn(rng, 500, 900), deep = drawn(rng, 500, 900);
  const double lean = rng() % 2 == 0 ? 0.0 : drawn(rng, -60, 60);
  job.frame.corners = {{wide + lean, deep}, {lean, deep}, {0, 0}, {wide, 0}};
  job.frame.sides = {"front", "left", "back", "right"};
  draw_parts(job, rng);
  job.cloth.relief = Relief::Fold;
  for (const std::string& side : job.frame.sides)
    job.bumpers.push_back(
        {side, {side, RunEnd::Corner{}}, {side, RunEnd::Corner{}}, mm(drawn(rng, 0, 12))});
  return job;
}

std::optional<Stood> stand(const Job& job) {
  const auto frame = Frame::make(job.frame, job.places);
  const auto section = Section::make(job.boards, job.padding, job.cloth, job.places);
  if (!frame || !section) return std::nullopt;
  std::vector<Run> runs;
  Stood stood;
  for (std::size_t k = 0; k < job.bumpers.size(); ++k) {
    auto run = make_run(*frame, *section, job.padding, job.bumpers[k], static_cast<int>(k),
                        job.places, job.units, job.openings);
    if (!run) return std::nullopt;
    runs.push_back(*run);
    stood.wraps.emplace_back(*frame, *section, *run);
    auto pattern = make_pattern(stood.wraps.back(), job);
    if (!pattern) return std::nullopt;
    stood.patterns.push_back(*pattern);
  }
  auto gaps = gaps_between(*frame, *section, runs, job.places);
  if (!gaps) return std::nullopt;
  stood.gaps = *gaps;
  return stood;
}

}  // namespace swathe::test
