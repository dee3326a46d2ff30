#include "sheet/same_words.hpp"

#include <fmt/format.h>

#include <vector>

namespace swathe {
namespace {

const char* laid(Sameness::How how) {
  switch (how) {
    case Sameness::How::Same:
      break;
    case Sameness::How::Turned:
      return ", turn, do not flip";
    case Sameness::How::Mirrored:
      return ", flip left for right";
  }
  return "";
}

/// "B", "B and C", "B, C and D".
std::string listed(const std::vector<std::string>& names) {
  std::string list;
  for (std::size_t k = 0; k < names.size(); ++k)
    list += (k == 0 ? "" : k + 1 == names.size() ? " and " : ", ") + names[k];
  return list;
}

std::string repeats(const Made& made, const Sameness& same) {
  const std::string& other = made.patterns[static_cast<std::size_t>(same.other)].bumper;
  if (!same.but_for.empty())
    return fmt::format("Same as bumper {} but for {}{}", other, listed(same.but_for),
                       laid(same.how));
  return fmt::format("Same as bumper {}: print {} once and cut {} more{}", other, other,
                     made.job.cloth.colors.size(), laid(same.how));
}

std::string repeated_by(const Made& made, std::size_t bumper) {
  std::vector<std::string> names;
  for (std::size_t k = 0; k < made.same.size(); ++k)
    if (is_cut_from_another(made, k) && made.same[k]->other == static_cast<int>(bumper))
      names.push_back(made.patterns[k].bumper + laid(made.same[k]->how));
  if (names.empty()) return "";
  return fmt::format("Cut the same again for bumper{} {}", names.size() == 1 ? "" : "s",
                     listed(names));
}

}  // namespace

bool is_cut_from_another(const Made& made, std::size_t bumper) {
  return bumper < made.same.size() && made.same[bumper] && made.same[bumper]->but_for.empty();
}

std::string same_words(const Made& made, std::size_t bumper) {
  if (bumper >= made.same.size()) return "";
  const std::string ours = made.same[bumper] ? repeats(made, *made.same[bumper]) : "";
  const std::string theirs = repeated_by(made, bumper);
  return ours.empty() || theirs.empty() ? ours + theirs : ours + ". " + theirs;
}

}  // namespace swathe
