#include "load.hpp"

#include <fmt/format.h>

#include <optional>

#include "input.hpp"
#include "swathe/make/make.hpp"
#include "swathe/type/faces.hpp"
#include "text.hpp"

namespace swathe::app {
namespace {

/// A face that comes with the tool and cannot be opened: no job is to blame for it.
std::optional<std::string> damaged_face() {
  for (const BundledFace& face : bundled_faces())
    if (!open_bundled(face)) return face.name;
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
    if (const auto face = damaged_face()) {
      terminal.complain(fmt::format("swathe: the bundled face {} is damaged; build anew", *face));
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
