#include "page/core/asks.hpp"
#include "page/core/key_places.hpp"

namespace swathe::page {
namespace {

Json json_of(const Finding& finding, const KeyPlaces& places) {
  Json subjects = Json::array();
  for (const Subject& subject : finding.subjects) subjects.push_back(to_text(subject));
  return {{"id", finding.id},
          {"rule", finding.rule},
          {"subject", finding.subject},
          {"required", finding.required},
          {"measured", finding.measured},
          {"verdict", to_text(finding.verdict)},
          {"attested", to_text(finding.attested)},
          {"advice", finding.advice},
          {"subjects", std::move(subjects)},
          {"keys", places.json_of(finding.keys)},
          {"mend", page::json_of(finding.mend)}};
}

}  // namespace

Outcome<Answer> findings(Session& session, const Json&) {
  const Made& made = session.made();
  const KeyPlaces places(made.job.places);
  Json list = Json::array();
  for (const Finding& finding : made.findings) list.push_back(json_of(finding, places));
  return said(
      {{"season", made.season ? Json(made.season->name) : Json()}, {"findings", std::move(list)}});
}

Outcome<Answer> report(Session& session, const Json&) {
  return Answer{"", report_json(session.made(), told_sheets(session.made(), session.labels()))};
}

}  // namespace swathe::page
