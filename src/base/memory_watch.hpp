#pragma once

#include <cerrno>
#include <new>

namespace swathe {

/// Notices when memory ran out inside another library, which may go on silently and leave letters
/// or outlines out. The only trace is the error number that malloc sets.
class MemoryWatch {
 public:
  MemoryWatch() : before_(errno) { errno = 0; }
  MemoryWatch(const MemoryWatch&) = delete;
  MemoryWatch& operator=(const MemoryWatch&) = delete;
  ~MemoryWatch() {  // a watch around this one is to know of it, too
    if (errno != ENOMEM) errno = before_;
  }

  /// Throws std::bad_alloc where memory gave out since this was made.
  void require() const {
    if (errno == ENOMEM) throw std::bad_alloc();
  }

 private:
  int before_;
};

}  // namespace swathe
