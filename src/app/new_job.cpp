#include <fmt/format.h>

#include "commands.hpp"
#include "output.hpp"
#include "swathe/job.hpp"
#include "text.hpp"

namespace swathe::app {

Exit new_job(Terminal& terminal, const std::string& path) {
  const std::string text(new_job_text());
  if (path == "-") {
    terminal.answer(text);
    return Exit::Done;
  }
  const auto put = put_new_file(path, text);
  if (!put) {
    terminal.complain(
        fmt::format("swathe: {}{}", put.error().sentence,
                    put.error().exists ? "; choose another name: this file stays as it is" : ""));
    return put.error().exists ? Exit::WrongInput : Exit::MachineFailed;
  }
  terminal.say(fmt::format("Written: {}\nPut your own sizes in, then run: swathe make {} -o out",
                           named(path), named(path)));
  return Exit::Done;
}

}  // namespace swathe::app
