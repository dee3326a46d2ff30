#pragma once

#include <cstddef>
#include <functional>

namespace swathe::app {

/// What a crew does with each of its tasks, 0, 1, 2 ...
struct Tasks {
  std::size_t count;
  std::function<void(std::size_t)> work;  ///< on any thread; throws nothing
  std::function<void(std::size_t)>
      tell;  ///< on the calling thread, in order, when the work is done
  std::function<void(std::size_t)> counted;  ///< on the calling thread: how many are done so far
};

/// Does all tasks, with a thread for each core, and tells each as soon as it and all before it are
/// done. If no thread can be started, the calling thread does the work.
void work_in_order(const Tasks& tasks);

}  // namespace swathe::app
