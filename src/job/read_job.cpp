#include <algorithm>
#include <tuple>

#include "base/print.hpp"
#include "job/read_tables.hpp"
#include "job/spelling.hpp"
#include "swathe/job.hpp"

namespace swathe {
namespace {

std::string without_folder(const std::string& file) {
  const auto slash = file.find_last_of("/\\");
  return slash == std::string::npos ? file : file.substr(slash + 1);
}

JobReading job_from(const toml::table& root, PlaceFinder finder) {
  JobFile file(std::move(finder));
  Job& job = file.job();
  job.places = Places(file.places.file());
  job.source = escaped(without_folder(file.places.file()));
  note_places(root, file.places, job.places);

  TableReader top(file, &root, "", "");
  read_tables(top);

  std::ranges::stable_sort(file.reading.faults, {}, [](const Refusal& fault) {
    return std::tuple(fault.place.line, fault.place.column);
  });
  return std::move(file.reading);
}

}  // namespace

void read_tables(TableReader& root) {
  read_heading(root);
  read_frame(root);
  read_boards(root);
  read_padding(root);
  read_cloth(root);
  read_openings(root);
  read_bumpers(root);
  read_brackets(root);
  read_numerals(root);
  read_sight(root);
  read_paper(root);
  root.finish();
  Job& job = root.file().job();
  if (job.cloth.fixing == Fixing::HookAndLoop && !job.places.has("frame.fit"))
    job.frame.fit = kHookAndLoopFit;
}

JobReading read_job(std::string_view text, const std::string& file) {
  text = without_byte_order_mark(text);
  PlaceFinder finder(text, file);
  auto root = parse_toml(text, finder, "the job", kMostJobBytes, lists_of_tables());
  if (root) {
    spell_as_in_america(*root);
    return job_from(*root, std::move(finder));
  }
  JobReading reading;
  reading.job.places = Places(file);
  reading.faults = std::move(root.error());
  reading.unsound = {"job",    "frame",   "boards",   "padding", "cloth", "opening",
                     "bumper", "bracket", "numerals", "sight",   "paper"};
  return reading;
}

}  // namespace swathe
