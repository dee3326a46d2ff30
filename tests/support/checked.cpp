#include "support/checked.hpp"

#include <doctest/doctest.h>

#include <cstddef>
#include <utility>

#include "support/jobs.hpp"

namespace swathe::test {
namespace {

template <class T>
T standing(Outcome<T> outcome) {
  REQUIRE_MESSAGE(outcome.has_value(), to_text(outcome.error().front()));
  return std::move(*outcome);
}

}  // namespace

std::vector<Finding> Checked::by(const Season* season) const {
  return check({job, season, frame, section, wraps, patterns, bare_gaps, covered_gaps, boards,
                padding, numerals ? &*numerals : nullptr, stock ? &*stock : nullptr,
                sight ? &*sight : nullptr});
}

std::vector<Finding> Checked::by(std::string_view season) const {
  const auto read = bundled_season(season);
  REQUIRE(read.has_value());
  return by(&*read);
}

Checked made(const Job& job) {
  Checked c{job,
            standing(Frame::make(job.frame, job.places)),
            section_of(job),
            {},
            {},
            {},
            {},
            {},
            {},
            {},
            {},
            {}};
  std::vector<Run> runs;
  for (std::size_t k = 0; k < job.bumpers.size(); ++k) {
    const Run run = standing(make_run(c.frame, c.section, job.padding, job.bumpers[k],
                                      static_cast<int>(k), job.places, job.units, job.openings));
    runs.push_back(run);
    c.wraps.emplace_back(c.frame, c.section, run);
    c.patterns.push_back(standing(make_pattern(c.wraps.back(), job)));
    for (const bumper::Piece& piece :
         standing(board_pieces(c.frame, c.section, run, job.boards, job.places))) {
      c.boards.push_back(piece);
    }
    for (const bumper::Piece& piece :
         standing(padding_pieces(c.frame, c.section, run, job.padding, job.places))) {
      c.padding.push_back(piece);
    }
  }
  c.bare_gaps = standing(gaps_between(c.frame, c.section, runs, job.places));
  for (const double gap : c.bare_gaps) {
    c.covered_gaps.push_back(gap - 6 * job.cloth.thickness.mm());  // three layers on each end
  }
  return c;
}

Digit digit(char name, double wide_mm, double share) {
  Digit d;
  d.digit = name;
  d.stroke =
      type::Stroke({{{0, 0}, 100 * share, wide_mm}, {{0, 0}, 100 * (1 - share), wide_mm / 2}});
  return d;
}

Numerals numerals_on(const Checked& c, const std::vector<std::string>& sides) {
  Numerals numerals;
  numerals.height = 98;
  numerals.digits = {digit('2', 15), digit('0', 15)};
  for (const std::string& side : sides) {
    for (std::size_t k = 0; k < c.wraps.size(); ++k) {
      for (const RunSide& leg : c.wraps[k].run().sides) {
        if (c.frame.sides()[static_cast<std::size_t>(leg.side)].name != side) continue;
        PlacedNumeral placed;
        placed.text = "20486";
        placed.bumper = static_cast<int>(k);
        placed.side = side;
        placed.center_s = 0.5 * (leg.from_x + leg.to_x) + leg.s_minus_x;
        placed.width = 250;
        placed.height = 98;
        placed.largest_space = placed.least_space = 14;
        numerals.placed.push_back(placed);
      }
    }
  }
  return numerals;
}

std::vector<Finding> of(const std::vector<Finding>& findings, std::string_view id) {
  std::vector<Finding> some;
  for (const Finding& finding : findings) {
    if (finding.id == id) some.push_back(finding);
  }
  return some;
}

Finding worst(const std::vector<Finding>& findings, std::string_view id) {
  const auto some = of(findings, id);
  REQUIRE_MESSAGE(!some.empty(), id);
  return some.front();
}

}  // namespace swathe::test
