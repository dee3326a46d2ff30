#include "swathe/job/job.hpp"

namespace swathe {

Place Places::of(std::string_view key) const {
  while (true) {
    if (const auto found = places_.find(key); found != places_.end()) return found->second;
    const auto dot = key.rfind('.');
    if (dot == std::string_view::npos) return {file_, 1, 1};
    key = key.substr(0, dot);
  }
}

}  // namespace swathe
