#include <fmt/format.h>

#include "commands.hpp"
#include "input.hpp"
#include "swathe/job/read_job.hpp"

namespace swathe::app {

Exit check(Terminal& terminal, const std::string& job) {
  const auto text = read_job_text(job);
  if (!text) {
    terminal.complain(text.error());
    return Exit::WrongInput;
  }
  const JobReading reading = read_job(text->text, text->name);
  if (!reading.faults.empty()) {
    terminal.complain(reading.faults);
    return Exit::WrongInput;
  }
  terminal.complain(
      fmt::format("{}: no fault in the file; rules are not supported yet", text->name));
  return Exit::WrongInput;
}

}  // namespace swathe::app
