#include <cxxabi.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <csignal>
#include <cstdlib>
#include <exception>
#include <new>
#include <typeinfo>

#include "command_line.hpp"
#include "guard.hpp"
#include "thread.hpp"

namespace {

using swathe::app::Exit;
using swathe::app::Terminal;

/// If standard output or standard error is closed, the next file we open would get its number, and
/// our messages would be written into that file.
void hold_standard_files() {
  for (const int file : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO})
    if (::fcntl(file, F_GETFD) < 0 && ::open("/", O_RDONLY) != file) std::abort();
}

Exit run(int count, char** words, Terminal& terminal) {
  return swathe::app::guarded(terminal, [&] {
    const auto request = swathe::app::read_command_line(count, words);
    if (!request) {
      terminal.complain(
          fmt::format("swathe: {}\nRun \"swathe --help\" to see all commands.", request.error()));
      return Exit::WrongInput;
    }
    terminal.set_loudness(request->loudness);
    const Exit exit = request->action(terminal);
    if (terminal.trouble().empty()) return exit;
    terminal.complain(
        fmt::format("swathe: standard output cannot be written: {}", terminal.trouble()));
    return Exit::MachineFailed;
  });
}

/// If memory runs out in a destructor or before main(), no catch is reached.
[[noreturn]] void end_of_all() {
  const std::type_info* what = abi::__cxa_current_exception_type();
  if (what != nullptr && *what == typeid(std::bad_alloc)) {
    Terminal::say_out_of_memory();
    std::_Exit(static_cast<int>(Exit::MachineFailed));
  }
  std::abort();
}

// Before the first object of any header is made.
[[gnu::constructor(101)]] void set_end_of_all() { std::set_terminate(end_of_all); }

}  // namespace

int main(int count, char** words) {
  hold_standard_files();
  (void)std::signal(SIGXFSZ, SIG_IGN);  // a file size limit is then an error like a full disk
  Terminal terminal;
  auto exit = Exit::MachineFailed;
  if (!swathe::app::run_with_ample_stack([&] { exit = run(count, words, terminal); }))
    terminal.complain(
        "swathe: the stack limit is too small to start a thread, expected at least 8192 "
        "KiB: run \"ulimit -s 8192\" first");
  return static_cast<int>(exit);
}
