#include "page/core/asks.hpp"
#include "swathe/check.hpp"
#include "swathe/version.hpp"

namespace swathe::page {
namespace {

const char* word(Given given) {
  switch (given) {
    case Given::Needed:
      return "needed";
    case Given::Optional:
      return "optional";
    case Given::Default:
      break;
  }
  return "default";
}

}  // namespace

Outcome<Answer> words(Session&, const Json&) {
  Json keys = Json::array(), checks = Json::array();
  const Json forms = key_forms_json();
  for (const KeyWords& key : key_words()) {
    Json one = {{"key", key.key},
                {"value", key.value},
                {"given", word(key.given)},
                {"meaning", key.meaning},
                {"why", key.why}};
    one.update(forms.at(key.key));
    keys.push_back(std::move(one));
  }
  for (const CheckWords& check : check_words())
    checks.push_back({{"id", check.id}, {"asks", check.asks}, {"why", check.why}});
  return said(
      {{"keys", std::move(keys)}, {"checks", std::move(checks)}, {"tables", table_forms_json()}});
}

Outcome<Answer> choices(Session&, const Json&) {
  Json fonts = Json::array(), sheets = Json::array();
  for (const BundledFont& font : bundled_fonts())
    fonts.push_back({{"name", font.name}, {"note", font.note}, {"axes", font.axes}});
  for (const Paper& paper : papers())
    sheets.push_back(
        {{"name", paper.name}, {"width_mm", paper.width.mm()}, {"height_mm", paper.height.mm()}});
  return said({{"version", kVersion},
               {"fonts", std::move(fonts)},
               {"papers", std::move(sheets)},
               {"seasons", season_names()}});
}

Outcome<Answer> new_text(Session&, const Json&) { return said({{"text", new_job_text()}}); }

}  // namespace swathe::page
