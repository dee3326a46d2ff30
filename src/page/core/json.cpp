#include "page/core/json.hpp"

namespace swathe::page {

Answer said(const Json& json) {
  return {json.dump(-1, ' ', false, Json::error_handler_t::replace)};
}

Json json_of(const Place& place) {
  Json json = {{"line", place.line}, {"column", place.column}};
  if (!place.key.empty()) json["key"] = place.key;
  return json;
}

Json json_of(const Refusals& faults) {
  Json list = Json::array();
  for (const Refusal& fault : faults) {
    Json one = {{"text", to_text(fault)}, {"sentence", fault.sentence}, {"file", fault.place.file}};
    one.update(json_of(fault.place));
    one["mend"] = json_of(fault.mend);
    list.push_back(std::move(one));
  }
  return list;
}

Json json_of(const std::vector<KeyChange>& changes) {
  Json list = Json::array();
  for (const KeyChange& change : changes)
    list.push_back({{"key", change.key}, {"value", change.value}});
  return list;
}

}  // namespace swathe::page
