#include "sheet/same_words.hpp"

#include <fmt/format.h>

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

}  // namespace

std::string same_words(const Made& made, std::size_t bumper) {
  if (bumper >= made.same.size() || !made.same[bumper]) return "";
  const Sameness& same = *made.same[bumper];
  const std::string& other = made.patterns[static_cast<std::size_t>(same.other)].bumper;
  std::string differs;
  for (const std::string& what : same.but_for) differs += (differs.empty() ? "" : " and ") + what;
  if (!differs.empty())
    return fmt::format("Same as bumper {} but for {}{}", other, differs, laid(same.how));
  return fmt::format("Same as bumper {}: print {} once and cut {} more{}", other, other,
                     made.job.cloth.colours.size(), laid(same.how));
}

}  // namespace swathe
