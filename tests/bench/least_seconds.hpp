#pragma once

#include <algorithm>
#include <ctime>
#include <limits>

namespace swathe::bench {

/// Of CPU, the least of some runs: what else the machine does can only add.
template <class Work>
double least_seconds(int runs, Work work) {
  double least = std::numeric_limits<double>::infinity();
  for (int k = 0; k < runs; ++k) {
    const std::clock_t begin = std::clock();
    work();
    least = std::min(least, static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC);
  }
  return least;
}

}  // namespace swathe::bench
