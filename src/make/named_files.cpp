#include "make/named_files.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "make/faults.hpp"
#include "swathe/job.hpp"

namespace swathe {
namespace {

/// The way from where the job's file is named to a file that is named beside it.
std::string beside(const std::string& job_file, const std::string& path) {
  const auto slash = job_file.rfind('/');
  return path.starts_with('/') || slash == std::string::npos ? path
                                                             : job_file.substr(0, slash + 1) + path;
}

/// Whether a key's value is the path of a file and not one of our names; endings in any case.
bool is_path(std::string name, std::initializer_list<const char*> endings) {
  for (char& c : name)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return name.find('/') != std::string::npos ||
         std::ranges::any_of(endings, [&](const std::string& ending) {
           return name.size() > ending.size() && name.ends_with(ending);
         });
}

}  // namespace

bool is_rule_file(const std::string& season) { return is_path(season, {".toml"}); }
bool is_font_file(const std::string& font) { return is_path(font, {".ttf", ".otf", ".woff2"}); }

Outcome<std::string> bytes_of(const std::string& name, const NamedFiles& files) {
  const auto found = files.find(name);
  if (found == files.end())
    return refuse(Why::Missing,
                  fmt::format("the file \"{}\" cannot be found, expected it beside the job", name));
  return found->second;
}

Outcome<std::optional<Season>> season_of(const Job& job, const std::string& job_file,
                                         const NamedFiles& files) {
  const Place place = job.places.of("job.season");
  if (job.season == "none") return std::nullopt;
  if (!is_rule_file(job.season)) {
    auto season = at_key(bundled_season(job.season), place);
    if (!season) return tl::unexpected(std::move(season.error()));
    return std::optional<Season>(std::move(*season));
  }
  const auto text = at_key(bytes_of(job.season, files), place);
  if (!text) return tl::unexpected(text.error());
  // Its faults have places in its own file.
  auto season = read_season(*text, beside(job_file, job.season));
  if (!season) return tl::unexpected(std::move(season.error()));
  return std::optional<Season>(std::move(*season));
}

std::vector<std::string> files_named(std::string_view job_text) {
  const Job job = read_job(job_text, "").job;
  std::vector<std::string> names;
  if (is_rule_file(job.season)) names.push_back(job.season);
  if (is_font_file(job.numerals.font)) names.push_back(job.numerals.font);
  return names;
}

}  // namespace swathe
