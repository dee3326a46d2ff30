#pragma once

#include <pthread.h>

#include <cstddef>
#include <functional>
#include <memory>
#include <optional>

namespace swathe::app {

/// The stack size that our work relies on: what common systems give a program.
inline constexpr std::size_t kAmpleStack = std::size_t{8} << 20;

/// A thread with an ample stack, whatever the limit on stacks is (std::thread's is that limit).
/// The destructor joins it.
class Thread {
 public:
  /// Nothing if no thread can be started. `work` throws nothing.
  static std::optional<Thread> start(std::function<void()> work);
  Thread(Thread&& other) noexcept = default;
  ~Thread();

 private:
  struct Work {
    std::function<void()> work;
    pthread_t thread{};
  };
  explicit Thread(std::unique_ptr<Work> work) : work_(std::move(work)) {}
  static void* run(void* work);

  std::unique_ptr<Work> work_;  ///< none where it was moved from
};

/// Runs `work` on the calling thread where the limit on its stack leaves it an ample one, else on a
/// thread that has one, with all signals going there. False, and nothing was run, where that cannot
/// be had.
bool run_with_ample_stack(const std::function<void()>& work);

}  // namespace swathe::app
