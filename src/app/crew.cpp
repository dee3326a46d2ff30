#include "crew.hpp"

#include <algorithm>
#include <condition_variable>
#include <mutex>
#include <stop_token>
#include <system_error>
#include <thread>
#include <vector>

namespace swathe::app {
namespace {

class Crew {
 public:
  explicit Crew(const Tasks& tasks) : tasks_(tasks), worked_(tasks.count) {}

  void start() {
    const std::size_t cores = std::max(1u, std::thread::hardware_concurrency());
    try {
      for (std::size_t k = 0; k < std::min(cores, tasks_.count); ++k)
        hands_.emplace_back([this](const std::stop_token& stop) { labour(stop); });
    } catch (const std::system_error&) {
      if (hands_.empty()) labour({});
    }
  }

  void tell() {
    std::size_t told = 0, counted = 0;
    std::unique_lock lock(mutex_);
    while (told < tasks_.count) {
      changed_.wait(lock, [&] { return done_ > counted || worked_[told]; });
      const bool next = worked_[told];
      counted = done_;
      lock.unlock();
      tasks_.counted(counted);
      if (next) tasks_.tell(told++);
      lock.lock();
    }
  }

 private:
  void labour(const std::stop_token& stop) {
    while (!stop.stop_requested()) {
      std::size_t task = 0;
      {
        const std::lock_guard lock(mutex_);
        if (begun_ == tasks_.count) return;
        task = begun_++;
      }
      tasks_.work(task);
      {
        const std::lock_guard lock(mutex_);
        worked_[task] = true;
        ++done_;
      }
      changed_.notify_one();
    }
  }

  const Tasks& tasks_;
  std::mutex mutex_;
  std::condition_variable changed_;
  std::vector<bool> worked_;
  std::size_t begun_ = 0, done_ = 0;
  std::vector<std::jthread> hands_;  // last: they are done before the rest goes
};

}  // namespace

void work_in_order(const Tasks& tasks) {
  Crew crew(tasks);
  crew.start();
  crew.tell();
}

}  // namespace swathe::app
