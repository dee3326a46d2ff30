#pragma once

#include <optional>
#include <string_view>

#include "check/check.hpp"
#include "support/jobs.hpp"

namespace swathe::test {

/// A job made far enough to be checked, and how to check it.
struct Checked {
  Job job;
  Frame frame;
  Section section;
  std::vector<Wrap> wraps;
  std::vector<Pattern> patterns;
  std::vector<double> bare_gaps, covered_gaps;
  std::vector<bumper::Piece> boards, padding;
  std::optional<Numerals> numerals;
  std::optional<Stock> stock;
  std::optional<Sight> sight;

  std::vector<Finding> by(const Season* season) const {
    return check({job, season, frame, section, wraps, patterns, bare_gaps, covered_gaps, boards,
                  padding, numerals ? &*numerals : nullptr, stock ? &*stock : nullptr,
                  sight ? &*sight : nullptr});
  }
  std::vector<Finding> by(std::string_view season) const {
    const auto read = bundled_season(season);
    REQUIRE(read.has_value());
    return by(&*read);
  }
};

template <class T>
T standing(Outcome<T> outcome) {
  REQUIRE_MESSAGE(outcome.has_value(), to_text(outcome.error().front()));
  return std::move(*outcome);
}

inline Checked made(const Job& job) {
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

/// A digit whose stroke is `wide` for `share` of its length, and half as wide for the rest.
inline Digit digit(char name, double wide_mm, double share = 1.0) {
  Digit d;
  d.digit = name;
  d.stroke =
      type::Stroke({{{0, 0}, 100 * share, wide_mm}, {{0, 0}, 100 * (1 - share), wide_mm / 2}});
  return d;
}

/// The number on the middles of sides; ink 250 mm wide, 98 mm high, strokes of 15 mm.
inline Numerals numerals_on(const Checked& c, const std::vector<std::string>& sides) {
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

inline std::vector<Finding> of(const std::vector<Finding>& findings, std::string_view id) {
  std::vector<Finding> some;
  for (const Finding& finding : findings) {
    if (finding.id == id) some.push_back(finding);
  }
  return some;
}

/// The worst of an id; a check that is missing fails the test.
inline Finding worst(const std::vector<Finding>& findings, std::string_view id) {
  const auto some = of(findings, id);
  REQUIRE_MESSAGE(!some.empty(), id);
  return some.front();
}

}  // namespace swathe::test
