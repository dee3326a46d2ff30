#pragma once

#include <string>

namespace swathe {

/// A key of a job and the value to give it, as set_value() takes them.
struct KeyChange {
  std::string key;    ///< "bumper.2.from", counted from 1
  std::string value;  ///< TOML

  friend bool operator==(const KeyChange&, const KeyChange&) = default;
};

}  // namespace swathe
