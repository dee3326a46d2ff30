#include <fmt/format.h>

#include "commands.hpp"
#include "swathe/job.hpp"
#include "text.hpp"
#include "write_new.hpp"

namespace swathe::app {

Exit new_job(Terminal& terminal, const std::string& path) {
  return write_new(
      terminal, path, std::string(new_job_text()),
      fmt::format("Put your own sizes in, then run: swathe make {} -o out", named(path)));
}

}  // namespace swathe::app
