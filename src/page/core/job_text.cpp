#include "page/core/asks.hpp"
#include "page/core/key_places.hpp"

namespace swathe::page {
namespace {

std::string text_of(const Json& request) { return request.at("text"); }
std::string file_of(const Json& request) { return request.value("file", "job.toml"); }

Outcome<Answer> answer_of(const Outcome<ValueChange>& change) {
  if (!change) return tl::unexpected(change.error());
  return said({{"text", change->text},
               {"key", change->key},
               {"before", change->before},
               {"after", change->after}});
}

}  // namespace

Outcome<Answer> named_files(Session&, const Json& request) {
  return said(files_named(text_of(request)));
}

Outcome<Answer> read(Session&, const Json& request) {
  return said(json_of(read_job(text_of(request), file_of(request)).faults));
}

Outcome<Answer> set(Session&, const Json& request) {
  return answer_of(set_value(text_of(request), request.at("key").get<std::string>(),
                             request.at("value").get<std::string>(), file_of(request)));
}

Outcome<Answer> remove(Session&, const Json& request) {
  return answer_of(
      remove_value(text_of(request), request.at("key").get<std::string>(), file_of(request)));
}

Outcome<Answer> keys_of_subject(Session&, const Json& request) {
  const auto subject = parse_subject(request.at("subject").get<std::string>());
  if (!subject) return said(Json::array());
  const Job job = read_job(text_of(request), file_of(request)).job;
  return said(KeyPlaces(job.places).json_of(keys_of(*subject, job)));
}

}  // namespace swathe::page
