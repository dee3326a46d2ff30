#include "page/core/key_places.hpp"

namespace swathe::page {

KeyPlaces::KeyPlaces(const Places& places) {
  for (const Place& place : places.in_order()) places_[place.key] = place;
}

const Place& KeyPlaces::of(std::string key) const {
  while (true) {
    if (const auto found = places_.find(key); found != places_.end()) return found->second;
    const auto dot = key.rfind('.');
    if (dot == std::string::npos) return start_;
    key.resize(dot);
  }
}

Json KeyPlaces::json_of(const std::vector<std::string>& keys) const {
  Json list = Json::array();
  for (const std::string& key : keys) {
    const Place& place = of(key);
    list.push_back({{"key", key}, {"line", place.line}, {"column", place.column}});
  }
  return list;
}

}  // namespace swathe::page
