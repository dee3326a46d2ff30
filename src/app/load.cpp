#include "load.hpp"

#include <fmt/format.h>

#include <optional>

#include "input.hpp"
#include "swathe/make.hpp"
#include "swathe/type.hpp"
#include "text.hpp"

namespace swathe::app {
namespace {

/// A bundled font that cannot be opened: that is not the job's fault.
std::optional<std::string> damaged_font() {
  for (const BundledFont& font : bundled_fonts())
    if (!open_bundled(font)) return font.name;
  return std::nullopt;
}

}  // namespace

std::string job_words(const Job& job) {
  return printable(job.title.empty() ? job.source : job.title);
}

tl::expected<Made, Exit> load(Terminal& terminal, const std::string& job) {
  const auto text = read_job_text(job);
  if (!text) {
    terminal.complain(text.error());
    return tl::unexpected(Exit::WrongInput);
  }
  auto made = make(text->text, text->name, read_files_beside(job, files_named(text->text)));
  if (!made) {
    if (const auto font = damaged_font()) {
      terminal.complain(fmt::format("swathe: the bundled font {} is damaged; build anew", *font));
      return tl::unexpected(Exit::MachineFailed);
    }
    terminal.complain(made.error());
    return tl::unexpected(Exit::WrongInput);
  }
  for (const Notice& notice : made->notices) terminal.say(to_text(notice));
  terminal.detail(fmt::format("{}: {} bumpers, season {}", named(text->name), made->patterns.size(),
                              made->season ? made->season->name : "none"));
  return std::move(*made);
}

}  // namespace swathe::app
