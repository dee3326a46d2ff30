// The report of the example, from the text of the job on, and beside it what stays of it however
// fast the rest is: the Voronoi diagrams of its digits' outlines, by bare Boost.
#include <boost/polygon/voronoi_builder.hpp>
#include <boost/polygon/voronoi_diagram.hpp>
#include <cmath>
#include <cstdint>
#include <cstdlib>

#include "example.hpp"
#include "least_seconds.hpp"
#include "plane/clip.hpp"
#include "ratios.hpp"
#include "swathe/write.hpp"

namespace swathe::bench {
namespace {

std::size_t report() {
  const Font font = labels();
  const Made made = made_example();
  return report_json(made, told_sheets(made, font)).size();
}

std::size_t junctions(const plane::Region& outline) {
  boost::polygon::voronoi_builder<std::int32_t> builder;
  const auto grids = [](double mm) {
    return static_cast<std::int32_t>(std::lround(mm / plane::kClipGrid));
  };
  for (const plane::Polygon& contour : outline) {
    FlatPoint from = contour.back();
    for (const FlatPoint to : contour) {
      builder.insert_segment(grids(from.x), grids(from.y), grids(to.x), grids(to.y));
      from = to;
    }
  }
  boost::polygon::voronoi_diagram<double> diagram;
  builder.construct(&diagram);
  return diagram.num_vertices();
}

std::vector<plane::Region> outlines_of_digits() {
  const Made made = made_example();
  if (!made.numerals || made.numerals->digits.empty()) std::abort();
  std::vector<plane::Region> outlines;
  for (const Digit& digit : made.numerals->digits) outlines.push_back(unite(digit.outline));
  return outlines;
}

}  // namespace

std::vector<Ratio> report_ratios() {
  constexpr int kRuns = 20;
  const std::vector<plane::Region> outlines = outlines_of_digits();
  std::size_t made = 0, met = 0;
  const double ours = least_seconds(kRuns, [&] { made += report(); });
  const double floor = least_seconds(kRuns, [&] {
    for (const plane::Region& outline : outlines) met += junctions(outline);
  });
  if (made == 0 || met == 0) std::abort();
  return {{"the report", ours, "the Voronoi diagrams of its digits by bare Boost", floor}};
}

}  // namespace swathe::bench
