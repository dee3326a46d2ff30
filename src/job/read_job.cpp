#include "swathe/job/read_job.hpp"

#include <algorithm>
#include <tuple>

#include "job/read_tables.hpp"

namespace swathe {
namespace {

JobReading malformed(Why why, std::string sentence, Place place) {
  JobReading reading;
  reading.job.places = Places(place.file);
  reading.faults.push_back({why, std::move(sentence), std::move(place)});
  return reading;
}

std::string_view without_byte_order_mark(std::string_view text) {
  constexpr std::string_view kMark = "\xef\xbb\xbf";
  if (text.starts_with(kMark)) text.remove_prefix(kMark.size());
  return text;
}

std::string without_folder(const std::string& file) {
  const auto slash = file.find_last_of("/\\");
  return slash == std::string::npos ? file : file.substr(slash + 1);
}

/// The line that would nest tables too deep for the parser's recursion; 0 where none does. Every
/// step of a.b.c is a table in a table, and the parser bounds only the depth of values.
int line_too_deep(std::string_view text) {
  for (int line = 1; !text.empty(); ++line) {
    const auto end = text.find('\n');
    const std::string_view one = text.substr(0, end);
    const auto first = one.find_first_not_of(" \t");
    const bool comment = first != std::string_view::npos && one[first] == '#';
    if (!comment && std::ranges::count(one, '.') > kMostDotsInLine) return line;
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
  }
  return 0;
}

JobReading job_from(const toml::table& root, PlaceFinder finder) {
  JobFile file(std::move(finder));
  Job& job = file.job();
  job.places = Places(file.places.file());
  job.source = without_folder(file.places.file());
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
  read_backing(root);
  read_padding(root);
  read_cloth(root);
  read_bumpers(root);
  read_brackets(root);
  read_numerals(root);
  read_sight(root);
  read_paper(root);
  root.finish();
}

JobReading read_job(std::string_view text, const std::string& file) {
  text = without_byte_order_mark(text);
  if (text.size() > kMostJobBytes)
    return malformed(
        Why::TooLarge,
        fmt::format("the job is {} bytes long, expected at most {}", text.size(), kMostJobBytes),
        {file, 1, 1});
  if (const int line = line_too_deep(text))
    return malformed(
        Why::TooLarge,
        fmt::format("more than {} dots in one line, expected tables less deep", kMostDotsInLine),
        {file, line, 1});
  PlaceFinder finder(text, file);
  try {
    return job_from(toml::parse(text, file), finder);
  } catch (const toml::parse_error& error) {  // toml++ throws here and nowhere else
    return malformed(Why::Malformed, std::string(error.description()), finder.at(error.source()));
  }
}

}  // namespace swathe
