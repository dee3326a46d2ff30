#include "worker_threads.hpp"

#include <algorithm>
#include <condition_variable>
#include <mutex>
#include <thread>
#include <vector>

#include "thread.hpp"

namespace swathe::app {
namespace {

class Crew {
 public:
  explicit Crew(const Tasks& tasks) : tasks_(tasks), worked_(tasks.count) {}
  ~Crew() {
    const std::lock_guard lock(mutex_);
    stopped_ = true;
  }

  void start() {
    const std::size_t cores = std::max(1u, std::thread::hardware_concurrency());
    const std::size_t wanted = std::min(cores, tasks_.count);
    hands_.reserve(wanted);  // reserve first: a thread is started only when it can be kept
    while (hands_.size() < wanted) {
      auto hand = Thread::start([this] { labour(); });
      if (!hand) break;
      hands_.push_back(std::move(*hand));
    }
    if (hands_.empty()) labour();
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
  void labour() {
    while (true) {
      std::size_t task = 0;
      {
        const std::lock_guard lock(mutex_);
        if (stopped_ || begun_ == tasks_.count) return;
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
  bool stopped_ = false;
  std::vector<Thread> hands_;  // last member: destroyed, and so joined, before the others
};

}  // namespace

void work_in_order(const Tasks& tasks) {
  Crew crew(tasks);
  crew.start();
  crew.tell();
}

}  // namespace swathe::app
