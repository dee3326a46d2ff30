#include "app/worker_threads.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <random>
#include <thread>
#include <vector>

using namespace swathe::app;

TEST_CASE(
    "worker threads: every task is worked once, and told once, in order, after it is worked") {
  for (const std::size_t count :
       {std::size_t{0}, std::size_t{1}, std::size_t{2}, std::size_t{300}}) {
    std::vector<std::atomic<int>> worked(count);
    std::vector<std::size_t> told, counts;
    const auto work = [&](std::size_t k) {
      std::mt19937 rng(static_cast<unsigned>(k));
      std::this_thread::sleep_for(std::chrono::microseconds(rng() % 500));
      ++worked[k];
    };
    bool after = true;
    work_in_order({count, work,
                   [&](std::size_t k) {
                     after = after && worked[k] == 1;
                     told.push_back(k);
                   },
                   [&](std::size_t done) { counts.push_back(done); }});
    CHECK(after);
    REQUIRE(told.size() == count);
    for (std::size_t k = 0; k < count; ++k) {
      CHECK(told[k] == k);
      CHECK(worked[k] == 1);
    }
    CHECK(std::ranges::is_sorted(counts));
    if (count > 0) CHECK(counts.back() == count);
  }
}
