#include "write_new.hpp"

#include <fmt/format.h>

#include "output.hpp"
#include "text.hpp"

namespace swathe::app {

Exit write_new(Terminal& terminal, const std::string& path, const std::string& text,
               const std::string& next) {
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
  terminal.say(fmt::format("Written: {}\n{}", named(path), next));
  return Exit::Done;
}

}  // namespace swathe::app
