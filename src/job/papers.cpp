#include <algorithm>
#include <cassert>

#include "base/embedded.hpp"
#include "base/toml.hpp"
#include "job/names.hpp"
#include "job/spelling.hpp"
#include "swathe/base.hpp"
#include "swathe/job.hpp"

namespace swathe {
namespace {

Length edge(const toml::node& sizes, std::size_t number) {
  const toml::node* text = sizes.as_array()->get(number);
  const auto length = parse_length(text->value_or(""), Units::Millimeters);
  assert(length && "papers.toml is our own file");
  return *length;
}

Paper office_paper_of(std::string_view units) {
  const toml::table all = toml::parse(embedded("job/papers.toml"));
  const auto paper = find_paper(all["office"][units].value_or(std::string_view()));
  assert(paper && "papers.toml names a paper of its own");
  return *paper;
}

}  // namespace

std::vector<Paper> papers() {
  std::vector<Paper> all;
  for (const auto& [name, sizes] : toml::parse(embedded("job/papers.toml")))
    if (sizes.is_array()) all.push_back({std::string(name.str()), edge(sizes, 0), edge(sizes, 1)});
  return all;
}

std::optional<Paper> find_paper(std::string_view name) {
  const std::vector<Paper> all = papers();
  const auto found = std::ranges::find_if(
      all, [&](const Paper& paper) { return same_but_for_case(paper.name, name); });
  return found == all.end() ? std::nullopt : std::optional(*found);
}

const Paper& office_paper(Units units) {
  static const Paper by_inches = office_paper_of(word_for(Units::Inches));
  static const Paper by_millimeters = office_paper_of(word_for(Units::Millimeters));
  return units == Units::Inches ? by_inches : by_millimeters;
}

}  // namespace swathe
