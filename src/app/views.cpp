#include "commands.hpp"

namespace swathe::app {

Exit views(Terminal& terminal, const std::string&) {
  terminal.complain(
      "swathe: views is not supported yet; swathe check holds the job against its rules");
  return Exit::WrongInput;
}

}  // namespace swathe::app
