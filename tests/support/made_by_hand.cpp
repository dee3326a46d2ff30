#include "support/made_by_hand.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cstddef>
#include <utility>

#include "numeral/size.hpp"
#include "numeral/stencil.hpp"
#include "support/fonts.hpp"
#include "support/jobs.hpp"
#include "swathe/type.hpp"

namespace swathe::test {
namespace {

/// The number in the middle of every clear stretch that holds it.
Numerals numerals_by_hand(const Job& job, const std::vector<std::vector<ClearStretch>>& clear,
                          double height_mm) {
  const Font font = opened(bundled_fonts().front());
  const auto number = set_number(font, job.number, mm(height_mm), {});
  REQUIRE(number.has_value());
  Numerals numerals;
  numerals.font = font.name();
  numerals.size = number->em;
  numerals.height = height_mm;
  numerals.width = number->ink.width();
  for (std::size_t b = 0; b < clear.size(); ++b)
    for (const ClearStretch& stretch : clear[b]) {
      if (stretch.to_s - stretch.from_s < numerals.width) continue;
      PlacedNumeral placed;
      placed.text = job.number;
      placed.bumper = static_cast<int>(b);
      placed.side = stretch.side;
      placed.center_s = 0.5 * (stretch.from_s + stretch.to_s);
      placed.width = numerals.width;
      placed.height = height_mm;
      const FlatPoint move = FlatPoint{placed.center_s, 0} - number->ink.middle();
      for (const PlacedDigit& digit : number->digits)
        placed.digits.push_back({digit.digit, digit.origin + move});
      numerals.placed.push_back(std::move(placed));
    }
  const int sets = static_cast<int>(numerals.placed.size() * job.cloth.colors.size());
  for (const DigitOutline& shape : number->shapes) {
    const auto stencil = make_stencil(shape.outline, job.numerals.bridge.mm());
    REQUIRE(stencil.has_value());
    Digit digit;
    digit.digit = shape.digit;
    digit.count = sets * static_cast<int>(std::ranges::count(job.number, shape.digit));
    digit.height = shape.ink.height();
    digit.width = shape.ink.width();
    digit.advance = shape.advance;
    digit.outline = shape.outline;
    digit.counters = stencil->counters;
    digit.bridges = stencil->bridges;
    digit.stencil = stencil->cut;
    numerals.digits.push_back(std::move(digit));
  }
  return numerals;
}

}  // namespace

Job demo_job() {
  Job job = c_halves(28 * 25.4, 30 * 25.4);
  job.title = "Tin Heron, spring covers";
  job.number = "20486";
  job.source = "tin-heron.toml";
  BracketKeys under;
  under.bumper = "A";
  under.side = "left";
  under.at = from_start("left", inches(11));
  under.width = inches(2);
  under.height = inches(3);
  under.holes = {{25.4, 25.4}};
  BracketKeys window = under;
  window.side = "back";
  window.at = from_start("back", inches(5));
  window.cloth = BracketCloth::Window;
  window.holes.clear();
  job.brackets = {under, window};
  return job;
}

Made made_by_hand(Job job) {
  const auto frame = Frame::make(job.frame, job.places);
  REQUIRE(frame.has_value());
  Made made{.job = job,
            .season = {},
            .frame = *frame,
            .section = section_of(job),
            .wraps = wraps_of(job),
            .patterns = {},
            .joins = {},
            .mark_names = {},
            .bare_gaps = {},
            .covered_gaps = {},
            .clear = {},
            .boards = {},
            .padding = {},
            .numerals = {},
            .sight = {},
            .same = {},
            .stock = {},
            .findings = {},
            .notices = {}};
  constexpr double kHeight = 104.775;  // 4 1/8 in
  for (const Wrap& wrap : made.wraps) {
    const auto pattern = make_pattern(wrap, job);
    REQUIRE(pattern.has_value());
    made.patterns.push_back(*pattern);
    made.clear.push_back(clear_stretches(wrap, 0.5 * kHeight));
    const auto boards = board_pieces(*frame, made.section, wrap.run(), job.boards, job.places);
    const auto padding = padding_pieces(*frame, made.section, wrap.run(), job.padding, job.places);
    REQUIRE(boards.has_value());
    REQUIRE(padding.has_value());
    made.boards.insert(made.boards.end(), boards->begin(), boards->end());
    made.padding.insert(made.padding.end(), padding->begin(), padding->end());
  }
  made.stock = plan_stock(job, made.boards, made.padding, made.patterns, {});
  if (!job.number.empty()) made.numerals = numerals_by_hand(job, made.clear, kHeight);
  made.joins.resize(made.patterns.size());
  made.same = same_patterns(made.patterns, made.joins, made.numerals_on_patterns());
  made.mark_names = shared_mark_names(made.patterns, made.same);
  return made;
}

}  // namespace swathe::test
