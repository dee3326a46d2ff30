#include "commands.hpp"

namespace swathe::app {

Exit make_files(Terminal& terminal, const std::string&, const std::string&, Wanted) {
  terminal.complain("swathe: sheets are not supported yet");
  return Exit::WrongInput;
}

}  // namespace swathe::app
