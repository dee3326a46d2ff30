#include "page/core/asks.hpp"

namespace swathe::page {
namespace {

Json json_of(const Finding& finding, const Places& places) {
  Json subjects = Json::array(), keys = Json::array();
  for (const Subject& subject : finding.subjects) subjects.push_back(to_text(subject));
  for (const std::string& key : finding.keys) {
    const Place place = places.of(key);
    keys.push_back({{"key", key}, {"line", place.line}, {"column", place.column}});
  }
  return {{"id", finding.id},
          {"rule", finding.rule},
          {"subject", finding.subject},
          {"required", finding.required},
          {"measured", finding.measured},
          {"verdict", to_text(finding.verdict)},
          {"attested", to_text(finding.attested)},
          {"advice", finding.advice},
          {"subjects", std::move(subjects)},
          {"keys", std::move(keys)},
          {"mend", page::json_of(finding.mend)}};
}

}  // namespace

Outcome<Answer> findings(Session& session, const Json&) {
  const Made& made = session.made();
  Json list = Json::array();
  for (const Finding& finding : made.findings) list.push_back(json_of(finding, made.job.places));
  return said(
      {{"season", made.season ? Json(made.season->name) : Json()}, {"findings", std::move(list)}});
}

Outcome<Answer> report(Session& session, const Json&) {
  return Answer{"", report_json(session.made(), told_sheets(session.made(), session.labels()))};
}

}  // namespace swathe::page
