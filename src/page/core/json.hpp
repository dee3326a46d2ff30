#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "swathe/base.hpp"

// What goes out as JSON: keys are ours, and stay as they are.
namespace swathe::page {

using Json = nlohmann::ordered_json;

/// What a call gives: words as JSON, and bytes where it is asked for a file.
struct Answer {
  std::string said;
  std::string bytes = {};
};

/// Bytes that are no UTF-8, which a job's text may have, are said as U+FFFD.
Answer said(const Json& json);

/// {"line", "column", "key"}; no key where it has none.
Json json_of(const Place& place);
/// [{"text", "sentence", "file", "line", "column", "key", "mend"}], text as the command prints it.
Json json_of(const Refusals& faults);
/// [{"key", "value"}], as set_value() takes them.
Json json_of(const std::vector<KeyChange>& changes);

}  // namespace swathe::page
