// Loaded before the C library (LD_PRELOAD): makes allocations fail. Linux, glibc.
//
//   SWATHE_TEST_MEMORY=one:N       the Nth allocation fails
//   SWATHE_TEST_MEMORY=all:N       the Nth and every later one
//   SWATHE_TEST_MEMORY=each:N:S    a child is split off at the Nth, and at each S-th after it, in
//                                  which that one fails; the program itself runs on unharmed. None
//                                  while files are under way: parent and child share them.
//   SWATHE_TEST_MEMORY=each-all:N:S  the same, every later one failing in the child too
//   SWATHE_TEST_MEMORY_LOG=FILE    "stage FIRST LAST": the allocations while files are under way;
//                                  "child N STATUS TALK": one that did not end with status 3 and
//                                  the one line "swathe: out of memory"; at the end "count N" and
//                                  "children N"
#include <dlfcn.h>
#include <fcntl.h>
#include <malloc.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <atomic>
#include <cerrno>
#include <cstdarg>
#include <cstdio>
#include <cstdlib>
#include <cstring>

extern "C" {
void* __libc_malloc(size_t);
void* __libc_calloc(size_t, size_t);
void* __libc_realloc(void*, size_t);
void* __libc_memalign(size_t, size_t);
}

namespace {

enum class Fault { None, One, All, Each, EachAll };
Fault fault = Fault::None;
long first = 0, step = 1, children = 0, stage_from = 0;
std::atomic<long> calls = 0;
int log_file = -1;
bool under_way = false;

constexpr char kExpected[] = "swathe: out of memory\n";

__attribute__((format(printf, 1, 2))) void log_line(const char* format, ...) {
  char line[700];
  va_list rest;
  va_start(rest, format);
  const int length = std::vsnprintf(line, sizeof line, format, rest);
  va_end(rest);
  if (log_file >= 0 && ::write(log_file, line, static_cast<std::size_t>(length)) < 0) std::abort();
}

/// True in the child, in which the allocation is to fail.
bool split_off(long call) {
  int ends[2];
  if (::pipe2(ends, O_CLOEXEC) != 0) std::abort();
  ++children;
  const pid_t child = ::fork();
  if (child == 0) {
    ::dup2(ends[1], STDERR_FILENO);
    ::close(ends[0]);
    ::close(ends[1]);
    ::close(log_file);
    log_file = -1;
    fault = fault == Fault::Each ? Fault::One : Fault::All;
    first = call;
    return true;
  }
  ::close(ends[1]);
  char talk[512] = {};
  std::size_t length = 0;
  while (length + 1 < sizeof talk) {
    const ssize_t got = ::read(ends[0], talk + length, sizeof talk - 1 - length);
    if (got <= 0) break;
    length += static_cast<std::size_t>(got);
  }
  ::close(ends[0]);
  int status = 0;
  ::waitpid(child, &status, 0);
  if (WIFEXITED(status) && WEXITSTATUS(status) == 3 && std::strcmp(talk, kExpected) == 0)
    return false;
  for (char& c : talk)
    if (c == '\n') c = '|';
  log_line("child %ld %d %s\n", call, WIFEXITED(status) ? WEXITSTATUS(status) : -WTERMSIG(status),
           talk);
  return false;
}

/// Counts an allocation. True where it is to fail, errno set.
bool fails() {
  const long call = ++calls;
  bool failing = false;
  switch (fault) {
    case Fault::None:
      break;
    case Fault::One:
      failing = call == first;
      break;
    case Fault::All:
      failing = call >= first;
      break;
    case Fault::Each:
    case Fault::EachAll:
      failing = !under_way && call >= first && (call - first) % step == 0 && split_off(call);
  }
  if (failing) errno = ENOMEM;
  return failing;
}

__attribute__((constructor)) void read_environment() {
  if (const char* path = std::getenv("SWATHE_TEST_MEMORY_LOG"))
    log_file = ::open(path, O_WRONLY | O_CREAT | O_TRUNC | O_APPEND | O_CLOEXEC, 0666);
  calls = 0;
  const char* text = std::getenv("SWATHE_TEST_MEMORY");
  if (text == nullptr) return;
  const char* colon = std::strchr(text, ':');
  if (colon == nullptr) std::abort();
  char* end = nullptr;
  first = std::strtol(colon + 1, &end, 10);
  if (*end == ':') step = std::strtol(end + 1, nullptr, 10);
  const auto is = [&](const char* word) {
    return std::strncmp(text, word, static_cast<std::size_t>(colon - text)) == 0 &&
           word[colon - text] == '\0';
  };
  fault = is("one")        ? Fault::One
          : is("all")      ? Fault::All
          : is("each")     ? Fault::Each
          : is("each-all") ? Fault::EachAll
                           : (std::abort(), Fault::None);
}

__attribute__((destructor)) void write_count() {
  log_line("count %ld\nchildren %ld\n", calls.load(), children);
  fault = Fault::None;
}

template <class F>
F real(const char* name) {
  return reinterpret_cast<F>(dlsym(RTLD_NEXT, name));
}

}  // namespace

extern "C" {

void* malloc(size_t size) { return fails() ? nullptr : __libc_malloc(size); }
void* calloc(size_t count, size_t size) { return fails() ? nullptr : __libc_calloc(count, size); }
void* realloc(void* block, size_t size) { return fails() ? nullptr : __libc_realloc(block, size); }
void* memalign(size_t align, size_t size) {
  return fails() ? nullptr : __libc_memalign(align, size);
}
void* aligned_alloc(size_t align, size_t size) { return memalign(align, size); }
int posix_memalign(void** block, size_t align, size_t size) {
  *block = memalign(align, size);
  return *block == nullptr ? ENOMEM : 0;
}

int mkdirat(int folder, const char* name, mode_t mode) {
  under_way = true;
  stage_from = calls;
  return real<int (*)(int, const char*, mode_t)>("mkdirat")(folder, name, mode);
}

int unlinkat(int folder, const char* name, int flags) {
  if ((flags & AT_REMOVEDIR) != 0 && under_way) {
    under_way = false;
    log_line("stage %ld %ld\n", stage_from + 1, calls.load());
  }
  return real<int (*)(int, const char*, int)>("unlinkat")(folder, name, flags);
}

}  // extern "C"
