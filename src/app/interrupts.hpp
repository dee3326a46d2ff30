#pragma once

#include <csignal>

namespace swathe::app {

/// Holds interrupts back while files are written, on the thread that makes it and on the threads
/// that it starts meanwhile. The destructor lets one that came take effect. Interrupts that the
/// program was started to ignore, by nohup or in the background, stay ignored.
class HeldInterrupts {
 public:
  HeldInterrupts() {
    sigemptyset(&held_);
    for (const int signal : {SIGINT, SIGTERM, SIGHUP, SIGQUIT})
      if (!is_ignored(signal)) sigaddset(&held_, signal);
    pthread_sigmask(SIG_BLOCK, &held_, &before_);
  }
  HeldInterrupts(const HeldInterrupts&) = delete;
  HeldInterrupts& operator=(const HeldInterrupts&) = delete;
  ~HeldInterrupts() { pthread_sigmask(SIG_SETMASK, &before_, nullptr); }

  /// Whether one waits; the same on each of these threads.
  bool any() const {
    sigset_t waiting;
    sigpending(&waiting);
    for (const int signal : {SIGINT, SIGTERM, SIGHUP, SIGQUIT})
      if (sigismember(&waiting, signal) == 1 && sigismember(&before_, signal) == 0) return true;
    return false;
  }

 private:
  static bool is_ignored(int signal) {
    struct sigaction action {};
    return sigaction(signal, nullptr, &action) == 0 && action.sa_handler == SIG_IGN;
  }

  sigset_t held_, before_;
};

}  // namespace swathe::app
