#include "support/drawn_number.hpp"

#include <string>
#include <vector>

#include "swathe/type.hpp"

namespace swathe::test {

Job drawn_number(std::mt19937_64& rng) {
  static const std::vector<std::string> kNumbers = {"7", "11", "404", "1138", "20486"};
  static const std::vector<std::string> kSeasons = {"none", "2026", "2025", "2024", "2023", "2020"};
  static const std::vector<BundledFont> kFaces = bundled_fonts();
  Job job = drawn_job(rng);
  job.boards.lapping.clear();
  job.padding.lapping.clear();
  job.number = kNumbers[rng() % kNumbers.size()];
  job.season = kSeasons[rng() % kSeasons.size()];
  job.numerals.font = kFaces[rng() % kFaces.size()].name;
  job.numerals.method = static_cast<NumeralMethod>(rng() % 4);
  if (rng() % 2 == 0) job.numerals.height = inches(drawn(rng, 2, 6));
  if (rng() % 4 == 0) {
    job.numerals.outline = mm(drawn(rng, 1, 4));
    job.numerals.spacing.extra = mm(10);
  }
  if (rng() % 4 == 0) job.numerals.sides = {{job.frame.sides[rng() % job.frame.sides.size()]}};
  if (rng() % 3 == 0) {
    BracketKeys bracket;
    bracket.bumper = "A";
    bracket.side = job.frame.sides[0];
    bracket.at = SideShare{drawn(rng, 0.4, 0.9)};  // A is there, or goes on from there
    bracket.width = mm(drawn(rng, 20, 90));
    bracket.height = mm(drawn(rng, 20, 90));
    bracket.cloth = BracketCloth::Window;
    job.brackets.push_back(bracket);
  }
  return job;
}

}  // namespace swathe::test
