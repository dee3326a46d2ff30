#include "support/setting.hpp"

#include <doctest/doctest.h>

#include <utility>

#include "support/fonts.hpp"
#include "support/jobs.hpp"

namespace swathe::test {

Setting setting(Job job, const std::string& number, Length height, const std::string& font) {
  Setting made;
  const auto set = set_number(opened(numeral_font(font)), number, height, job.numerals.spacing);
  REQUIRE(set.has_value());
  made.number = *set;
  made.wraps = wraps_of(job);
  for (const Wrap& wrap : made.wraps) {
    const auto boards =
        board_pieces(wrap.frame(), wrap.section(), wrap.run(), job.boards, job.places);
    REQUIRE(boards.has_value());
    made.boards.insert(made.boards.end(), boards->begin(), boards->end());
  }
  made.job = std::move(job);
  return made;
}

PlacedNumbers placed(const Setting& s) {
  auto placing = place_number(s.input());
  REQUIRE(placing.has_value());
  return *std::move(placing);
}

}  // namespace swathe::test
