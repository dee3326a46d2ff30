#include <fmt/format.h>
#include <sys/stat.h>

#include <algorithm>

#include "ask.hpp"
#include "commands.hpp"
#include "swathe/job.hpp"
#include "swathe/make.hpp"
#include "text.hpp"
#include "write_new.hpp"

namespace swathe::app {
namespace {

bool is_there(const std::string& path) {
  struct stat info {};
  return path != "-" && ::lstat(path.c_str(), &info) == 0;
}

/// Asked for before it is written, so that nobody finds out at the print shop.
void say_what_fails(Terminal& terminal, const std::string& text, const std::string& path) {
  const auto made = make(text, path);
  if (!made) return terminal.complain(made.error());
  const auto failed = std::ranges::count(made->findings, Verdict::Fail, &Finding::verdict);
  if (failed == 0) return;
  const Finding& worst = made->findings.front();
  terminal.say(paragraph(
      "",
      fmt::format("{} not met yet, first of all: {}: {}; asked {}, found {}. \"swathe check {}\" "
                  "says what would mend it.",
                  failed == 1 ? "One rule is" : fmt::format("{} rules are", failed), worst.id,
                  worst.subject, worst.required, worst.measured, named(path))));
}

Exit write_job(Terminal& terminal, const std::string& path, const std::string& text,
               const char* first) {
  const Exit exit =
      write_new(terminal, path, text, fmt::format("{}: swathe make {} -o out", first, named(path)));
  if (exit == Exit::Done && path != "-") say_what_fails(terminal, text, path);
  return exit;
}

}  // namespace

Exit new_job(Terminal& terminal, const std::string& path) {
  constexpr const char* kWithSizes = "Put your own sizes in, then run";
  // Where a file is in the way, nobody is asked in vain.
  if (!can_ask(terminal) || is_there(path))
    return write_job(terminal, path, std::string(new_job_text()), kWithSizes);
  const auto text = ask_new_job(terminal);
  return text ? write_job(terminal, path, *text, "Then run") : text.error();
}

Exit new_job_like(Terminal& terminal, const std::string& kind, const std::string& path) {
  const auto text = swathe::new_job_like(kind);
  if (text) return write_job(terminal, path, *text, "Put your own sizes in, then run");
  terminal.complain("swathe: " + text.error().front().sentence);
  return Exit::WrongInput;
}

}  // namespace swathe::app
