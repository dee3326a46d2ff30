#pragma once

#include <cstddef>
#include <functional>

namespace swathe::app {

/// What a crew does with each of its tasks, 0, 1, 2 ...
struct Tasks {
  std::size_t count;
  std::function<void(std::size_t)> work;     ///< on any thread; throws nothing
  std::function<void(std::size_t)> tell;     ///< on the calling thread, in order, when worked
  std::function<void(std::size_t)> counted;  ///< on the calling thread: how many are worked so far
};

/// Works all tasks, a thread a core, and tells each as soon as it and all before it are worked.
/// Where no thread can be had the calling one works.
void work_in_order(const Tasks& tasks);

}  // namespace swathe::app
