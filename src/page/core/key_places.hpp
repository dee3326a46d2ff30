#pragma once

#include <map>
#include <string>
#include <vector>

#include "page/core/json.hpp"
#include "swathe/job.hpp"

namespace swathe::page {

/// Where a job's keys stand, for keys as set_value() takes them, counted from 1.
class KeyPlaces {
 public:
  explicit KeyPlaces(const Places& places);

  /// [{"key", "line", "column"}]: its own place, else that of the nearest table above it that is
  /// there, else 1:1.
  Json json_of(const std::vector<std::string>& keys) const;

 private:
  const Place& of(std::string key) const;

  std::map<std::string, Place> places_;
  Place start_;
};

}  // namespace swathe::page
