#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <csignal>
#include <cstdlib>

#include "command_line.hpp"
#include "guard.hpp"

namespace {

using swathe::app::Exit;
using swathe::app::Terminal;

/// A standard file that is closed would lend its number to the next file we open, and our talk
/// would end up in that file.
void hold_standard_files() {
  for (const int file : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO})
    if (::fcntl(file, F_GETFD) < 0 && ::open("/", O_RDONLY) != file) std::abort();
}

Exit run(int count, char** words, Terminal& terminal) {
  return swathe::app::guarded(terminal, [&] {
    const auto request = swathe::app::read_command_line(count, words);
    if (!request) {
      terminal.complain(
          fmt::format("swathe: {}\nRun \"swathe --help\" for what there is.", request.error()));
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

}  // namespace

int main(int count, char** words) {
  hold_standard_files();
  std::signal(SIGXFSZ, SIG_IGN);  // a file size limit is then an error like a full disk
  Terminal terminal;
  return static_cast<int>(run(count, words, terminal));
}
