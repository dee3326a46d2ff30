#include "thread.hpp"

#include <sys/resource.h>

#include <csignal>
#include <utility>

namespace swathe::app {
namespace {

bool stack_is_ample() {
  struct rlimit limit {};
  return ::getrlimit(RLIMIT_STACK, &limit) == 0 &&
         (limit.rlim_cur == RLIM_INFINITY || limit.rlim_cur >= kAmpleStack);
}

}  // namespace

void* Thread::run(void* work) {
  static_cast<Work*>(work)->work();
  return nullptr;
}

std::optional<Thread> Thread::start(std::function<void()> work) {
  auto kept = std::make_unique<Work>(Work{std::move(work), {}});
  pthread_attr_t attributes;
  if (::pthread_attr_init(&attributes) != 0) return std::nullopt;
  const bool started = ::pthread_attr_setstacksize(&attributes, kAmpleStack) == 0 &&
                       ::pthread_create(&kept->thread, &attributes, &Thread::run, kept.get()) == 0;
  ::pthread_attr_destroy(&attributes);
  if (!started) return std::nullopt;
  return Thread(std::move(kept));
}

Thread::~Thread() {
  if (work_) ::pthread_join(work_->thread, nullptr);
}

bool run_with_ample_stack(const std::function<void()>& work) {
  if (stack_is_ample()) {
    work();
    return true;
  }
  // This thread only waits: a signal that it took would end the program while the other one holds
  // it back to tidy up.
  sigset_t all, before;
  sigfillset(&all);
  ::pthread_sigmask(SIG_SETMASK, &all, &before);
  bool started = false;
  {
    const auto thread = Thread::start([&] {
      ::pthread_sigmask(SIG_SETMASK, &before, nullptr);
      work();
    });
    started = thread.has_value();
  }
  ::pthread_sigmask(SIG_SETMASK, &before, nullptr);
  return started;
}

}  // namespace swathe::app
