#include "swathe/job.hpp"

namespace swathe {

Job::Job() = default;
Job::Job(const Job&) = default;
Job::Job(Job&&) noexcept = default;
Job& Job::operator=(const Job&) = default;
Job& Job::operator=(Job&&) noexcept = default;
Job::~Job() = default;

std::optional<SidePlace> place_on_side(const RunEnd& end) {
  if (const auto* share = std::get_if<SideShare>(&end.at)) return *share;
  if (const auto* from = std::get_if<FromCorner>(&end.at)) return *from;
  return std::nullopt;
}

const std::string& measured_from(const BracketKeys& bracket) {
  const auto* from = std::get_if<FromCorner>(&bracket.at);
  return from ? from->neighbor : bracket.holes_from;
}

std::vector<std::string> every_other(const std::vector<std::string>& sides) {
  std::vector<std::string> chosen;
  for (std::size_t i = 0; i + 1 < sides.size(); i += 2) chosen.push_back(sides[i]);
  return chosen;
}

}  // namespace swathe
