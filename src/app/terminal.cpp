#include "terminal.hpp"

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <utility>

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

void say_memory_gave_out(std::string_view subject) {
  for (const std::string_view part :
       {std::string_view("swathe: "), subject, std::string_view("out of memory\n")})
    write_all(STDERR_FILENO, part);
}

}  // namespace

Terminal::Terminal() {
  const char* no_color = std::getenv("NO_COLOR");
  color_ = ::isatty(STDOUT_FILENO) == 1 && (no_color == nullptr || *no_color == '\0');
  watched_ = ::isatty(STDERR_FILENO) == 1;
}

Terminal Terminal::keeping(std::string_view subject) const {
  Terminal other = *this;
  other.subject_ = named(subject) + ": ";
  other.keeps_ = true;
  return other;
}

void Terminal::pass_on(Terminal& kept) {
  for (Words& words : std::exchange(kept.kept_, {})) put(words.to, std::move(words.text));
  if (kept.memory_gave_out_) say_memory_gave_out(kept.subject_);
}

void Terminal::say_out_of_memory() noexcept { say_memory_gave_out(""); }

void Terminal::out_of_memory() noexcept {
  if (keeps_)
    memory_gave_out_ = true;
  else
    say_memory_gave_out(subject_);
}

void Terminal::put(To to, std::string text) {
  if (keeps_) {
    kept_.push_back({to, std::move(text)});
    return;
  }
  wipe_progress();
  if (to == To::Talk) {
    write_all(STDERR_FILENO, text);  // if standard error cannot be written, there is nobody to tell
  } else if (trouble_.empty()) {
    if (const int error = write_all(STDOUT_FILENO, text)) trouble_ = std::strerror(error);
  }
}

void Terminal::talk(std::string_view text) {
  std::string line = printable(text);
  if (line.empty() || line.back() != '\n') line += '\n';
  put(To::Talk, std::move(line));
}

void Terminal::answer(std::string_view text) { put(To::Answer, std::string(text)); }

void Terminal::say(std::string_view text) {
  if (loudness_ != Loudness::Quiet) talk(text);
}

void Terminal::detail(std::string_view text) {
  if (loudness_ == Loudness::Verbose) talk(text);
}

void Terminal::complain(std::string_view text) { talk(text); }

void Terminal::complain(const Refusals& refusals) {
  std::string lines;
  const std::size_t told = std::min(refusals.size(), kMostTold);
  for (std::size_t k = 0; k < told; ++k) lines += to_text(refusals[k]) + '\n';
  if (told < refusals.size())
    lines += fmt::format("{}: and {}; correct these first\n", named(refusals[told].place.file),
                         count_of(refusals.size() - told, "more fault", "more faults"));
  talk(lines);
}

void Terminal::prompt(std::string_view text) { put(To::Talk, printable(text)); }

void Terminal::progress(std::string_view line) {
  if (!watched()) return;
  wipe_progress();
  write_all(STDERR_FILENO, line);
  progress_ = columns_of(line);
}

void Terminal::wipe_progress() {
  if (progress_ == 0) return;
  write_all(STDERR_FILENO, '\r' + std::string(progress_, ' ') + '\r');
  progress_ = 0;
}

std::string Terminal::painted(std::string_view text, Paint paint) const {
  if (!color_ || paint == Paint::Plain) return std::string(text);
  const char* start = paint == Paint::Good  ? "\x1b[32m"
                      : paint == Paint::Bad ? "\x1b[1;31m"
                                            : "\x1b[33m";
  return start + std::string(text) + "\x1b[0m";
}

}  // namespace swathe::app
