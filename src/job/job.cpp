#include "swathe/job.hpp"

namespace swathe {

std::vector<std::string> every_other(const std::vector<std::string>& sides) {
  std::vector<std::string> chosen;
  for (std::size_t i = 0; i + 1 < sides.size(); i += 2) chosen.push_back(sides[i]);
  return chosen;
}

}  // namespace swathe
