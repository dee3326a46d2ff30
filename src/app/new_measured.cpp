#include <fmt/format.h>

#include <filesystem>

#include "check/check.hpp"
#include "commands.hpp"
#include "load.hpp"
#include "make/checked_set.hpp"
#include "swathe/check.hpp"
#include "text.hpp"
#include "write_new.hpp"

namespace swathe::app {
namespace {

/// "red-measured.toml" beside "red.toml".
std::string beside(const std::string& job) {
  if (job == "-") return "measured.toml";
  const std::filesystem::path path(job);
  return (path.parent_path() / (path.stem().string() + "-measured.toml")).string();
}

}  // namespace

Exit new_measured(Terminal& terminal, const std::string& job, const std::string& path) {
  const auto made = load(terminal, job);
  if (!made) return made.error();
  if (!made->season) {
    terminal.complain(
        fmt::format("swathe: {} names no season, so there is no card, expected a season",
                    job_words(made->job)));
    return Exit::WrongInput;
  }
  const std::string file = path.empty() ? beside(job) : path;
  const std::string text =
      measured_text(card_rows(check_to_measure(checked_set(*made)), *made->season), *made->season,
                    made->job.units);
  return write_new(terminal, file, text,
                   fmt::format("Measure, write it in, then run: swathe check {} --measured {}",
                               named(job), named(file)));
}

}  // namespace swathe::app
