#include "terminal.hpp"

#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>

#include "text.hpp"

namespace swathe::app {
namespace {

/// 0, or the error number.
int write_all(int file, std::string_view text) {
  while (!text.empty()) {
    const ssize_t wrote = ::write(file, text.data(), text.size());
    if (wrote < 0 && errno == EINTR) continue;
    if (wrote < 0) return errno;
    text.remove_prefix(static_cast<std::size_t>(wrote));
  }
  return 0;
}

void talk(std::string_view text) {
  std::string line = printable(text);
  if (line.empty() || line.back() != '\n') line += '\n';
  write_all(STDERR_FILENO, line);  // where the talk cannot be heard there is nobody to tell
}

}  // namespace

Terminal::Terminal() {
  const char* no_colour = std::getenv("NO_COLOR");
  colour_ = ::isatty(STDOUT_FILENO) == 1 && (no_colour == nullptr || *no_colour == '\0');
}

void Terminal::answer(std::string_view text) {
  if (!trouble_.empty()) return;
  if (const int error = write_all(STDOUT_FILENO, text)) trouble_ = std::strerror(error);
}

void Terminal::say(std::string_view text) const {
  if (loudness_ != Loudness::Quiet) talk(text);
}

void Terminal::detail(std::string_view text) const {
  if (loudness_ == Loudness::Verbose) talk(text);
}

void Terminal::complain(std::string_view text) const { talk(text); }

void Terminal::complain(const Refusals& refusals) const {
  std::string lines;
  for (const Refusal& refusal : refusals) lines += to_text(refusal) + '\n';
  talk(lines);
}

std::string Terminal::painted(std::string_view text, Paint paint) const {
  if (!colour_ || paint == Paint::Plain) return std::string(text);
  const char* start = paint == Paint::Good  ? "\x1b[32m"
                      : paint == Paint::Bad ? "\x1b[1;31m"
                                            : "\x1b[33m";
  return start + std::string(text) + "\x1b[0m";
}

}  // namespace swathe::app
