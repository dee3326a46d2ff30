#include "cairo_floor.hpp"
#include "least_seconds.hpp"
#include "main_job.hpp"
#include "ratios.hpp"

namespace swathe::bench {

std::vector<Ratio> main_job_ratios() {
  constexpr int kRuns = 10;
  const CairoLoad load = load_of_example();
  std::size_t bytes = 0;
  const double ours = least_seconds(kRuns, [&] { bytes += main_job(); });
  const double floor = least_seconds(kRuns, [&] { bytes += cairo_floor(load); });
  return {{"the main job", ours, "as many marks by bare Cairo", bytes > 0 ? floor : 0}};
}

}  // namespace swathe::bench
