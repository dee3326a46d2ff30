#pragma once

#include <unistd.h>

#include <utility>

namespace swathe::app {

/// An open file, closed by the destructor.
class Handle {
 public:
  Handle() = default;
  explicit Handle(int file) : file_(file) {}
  Handle(Handle&& other) noexcept : file_(std::exchange(other.file_, -1)) {}
  Handle& operator=(Handle&& other) noexcept {
    std::swap(file_, other.file_);
    return *this;
  }
  ~Handle() {
    if (file_ >= 0) ::close(file_);
  }

  explicit operator bool() const { return file_ >= 0; }
  int get() const { return file_; }
  int release() { return std::exchange(file_, -1); }

 private:
  int file_ = -1;
};

}  // namespace swathe::app
