// Loaded before the C library (LD_PRELOAD): makes the tool's Nth call to the disk go wrong, or
// stops the tool dead at it. Linux, glibc.
//
//   SWATHE_TEST_FAULT=kill:N      SIGKILL at the Nth call, before it is done
//   SWATHE_TEST_FAULT=half:N      at the Nth call, if it writes: half of it is written, then
//   SIGKILL SWATHE_TEST_FAULT=full:N      the Nth call and every later one that needs room: ENOSPC
//   SWATHE_TEST_FAULT=bad:N       the Nth call: EIO
//   SWATHE_TEST_FAULT=many:N      the Nth file or folder to be opened or made: EMFILE
//   SWATHE_TEST_FAULT=denied:N    the same: EACCES
//   SWATHE_TEST_CALLS=FILE        the numbers of calls and of openings are written there at the end
//   SWATHE_TEST_LOCALE=1          C and C++ locales are set from the environment, as a program
//                                 that links the library may have done
#include <dlfcn.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <sys/types.h>
#include <unistd.h>

#include <atomic>
#include <cerrno>
#include <csignal>
#include <cstdarg>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <locale>

namespace {

enum class Fault { None, Kill, Half, Full, Bad, Many, Denied };
Fault fault = Fault::None;
long at = 0;
std::atomic<long> calls = 0, openings = 0;

template <class F>
F real(const char* name) {
  return reinterpret_cast<F>(dlsym(RTLD_NEXT, name));
}

/// Counts a call. True where it is to fail, errno set.
bool goes_wrong(bool needs_room) {
  const long call = ++calls;
  if (fault == Fault::Kill && call == at) raise(SIGKILL);
  if (fault == Fault::Full && call >= at && needs_room) {
    errno = ENOSPC;
    return true;
  }
  if (fault == Fault::Bad && call == at) {
    errno = EIO;
    return true;
  }
  return false;
}

/// Counts an opening. True where it is to fail, errno set.
bool stays_shut() {
  const long opening = ++openings;
  if ((fault != Fault::Many && fault != Fault::Denied) || opening != at) return false;
  errno = fault == Fault::Many ? EMFILE : EACCES;
  return true;
}

__attribute__((constructor)) void read_environment() {
  if (std::getenv("SWATHE_TEST_LOCALE") != nullptr) std::locale::global(std::locale(""));
  const char* text = std::getenv("SWATHE_TEST_FAULT");
  if (text == nullptr) return;
  const char* colon = std::strchr(text, ':');
  if (colon == nullptr) std::abort();
  at = std::atol(colon + 1);
  switch (text[0]) {
    case 'k':
      fault = Fault::Kill;
      break;
    case 'h':
      fault = Fault::Half;
      break;
    case 'f':
      fault = Fault::Full;
      break;
    case 'b':
      fault = Fault::Bad;
      break;
    case 'm':
      fault = Fault::Many;
      break;
    case 'd':
      fault = Fault::Denied;
      break;
    default:
      std::abort();
  }
}

__attribute__((destructor)) void write_count() {
  const char* path = std::getenv("SWATHE_TEST_CALLS");
  if (path == nullptr) return;
  if (std::FILE* file = std::fopen(path, "w")) {
    std::fprintf(file, "%ld %ld\n", calls.load(), openings.load());
    std::fclose(file);
  }
}

}  // namespace

extern "C" {

ssize_t write(int file, const void* bytes, size_t count) {
  const auto next = real<ssize_t (*)(int, const void*, size_t)>("write");
  if (file <= STDERR_FILENO) return next(file, bytes, count);  // the answer and the talk
  if (goes_wrong(true)) return -1;
  if (fault == Fault::Half && calls == at) {
    next(file, bytes, count / 2);
    raise(SIGKILL);
  }
  return next(file, bytes, count);
}

int openat(int folder, const char* name, int flags, ...) {
  va_list rest;
  va_start(rest, flags);
  const mode_t mode = (flags & O_CREAT) != 0 ? va_arg(rest, mode_t) : 0;
  va_end(rest);
  if (stays_shut() || ((flags & O_CREAT) != 0 && goes_wrong(true))) return -1;
  return real<int (*)(int, const char*, int, ...)>("openat")(folder, name, flags, mode);
}

int open(const char* name, int flags, ...) {
  va_list rest;
  va_start(rest, flags);
  const mode_t mode = (flags & O_CREAT) != 0 ? va_arg(rest, mode_t) : 0;
  va_end(rest);
  if (stays_shut()) return -1;
  return real<int (*)(const char*, int, ...)>("open")(name, flags, mode);
}

int mkdir(const char* name, mode_t mode) {
  if (stays_shut()) return -1;
  return real<int (*)(const char*, mode_t)>("mkdir")(name, mode);
}

int mkdirat(int folder, const char* name, mode_t mode) {
  if (stays_shut() || goes_wrong(true)) return -1;
  return real<int (*)(int, const char*, mode_t)>("mkdirat")(folder, name, mode);
}

int fsync(int file) {
  if (goes_wrong(true)) return -1;
  return real<int (*)(int)>("fsync")(file);
}

int renameat(int from_folder, const char* from, int to_folder, const char* to) {
  if (goes_wrong(false)) return -1;
  return real<int (*)(int, const char*, int, const char*)>("renameat")(from_folder, from, to_folder,
                                                                       to);
}

int linkat(int from_folder, const char* from, int to_folder, const char* to, int flags) {
  if (goes_wrong(true)) return -1;
  return real<int (*)(int, const char*, int, const char*, int)>("linkat")(from_folder, from,
                                                                          to_folder, to, flags);
}

int unlinkat(int folder, const char* name, int flags) {
  if (fault != Fault::Bad && goes_wrong(false)) return -1;
  return real<int (*)(int, const char*, int)>("unlinkat")(folder, name, flags);
}

}  // extern "C"
