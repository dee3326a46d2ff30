#include "swathe/form.hpp"

#include "page/core/asks.hpp"

namespace swathe::page {
namespace {

template <class Pair>
Json json_of(const std::optional<Pair>& pair) {
  return pair ? Json{pair->first, pair->second} : Json();
}

Json json_of(const KeyForm& form) {
  return {{"kind", to_text(form.kind)},
          {"range", json_of(form.range)},
          {"unit", form.unit},
          {"words", form.words},
          {"counts", json_of(form.counts)}};
}

Outcome<Answer> told(const Outcome<Moved>& made) {
  if (!made) return tl::unexpected(made.error());
  return said({{"text", made->text},
               {"changes", page::json_of(made->changes)},
               {"mm", made->distance.mm()},
               {"words", made->words}});
}

}  // namespace

Json key_forms_json() {
  Json all = Json::object();
  for (const KeyForm& form : key_forms())
    all[form.key] = {{"label", form.label}, {"form", json_of(form)}};
  return all;
}

Json table_forms_json() {
  Json all = Json::array();
  for (const TableForm& table : table_forms())
    all.push_back({{"path", table.path}, {"counts", {table.least, table.most}}});
  return all;
}

Outcome<Answer> fields(Session&, const Json& request) {
  const auto all =
      fields_of(request.at("text").get<std::string>(), request.value("file", "job.toml"));
  if (!all) return tl::unexpected(all.error());
  Json list = Json::array();
  for (const Field& field : *all)
    list.push_back({{"key", field.key},
                    {"form", field.form},
                    {"given", field.given},
                    {"value", field.value},
                    {"shown", field.shown},
                    {"line", field.place.line},
                    {"column", field.place.column}});
  return said(list);
}

Outcome<Answer> typed(Session&, const Json& request) {
  const auto value =
      typed_value(request.at("text").get<std::string>(), request.at("key").get<std::string>(),
                  request.at("typed").get<std::string>(), request.value("steps", 0),
                  request.value("file", "job.toml"));
  if (!value) return tl::unexpected(value.error());
  return said({{"value", value->value}, {"reads", value->reads}});
}

Outcome<Answer> move(Session& session, const Json& request) {
  const Snap snap = request.value("snap", true) ? Snap::Coarse : Snap::Fine;
  return told(moved(session.last_made(), request.at("text").get<std::string>(),
                    request.at("subjects").get<std::string>(), mm(request.at("mm").get<double>()),
                    snap, request.value("file", "job.toml")));
}

Outcome<Answer> said_from_corner(Session& session, const Json& request) {
  return told(from_corner(session.last_made(), request.at("text").get<std::string>(),
                          request.at("key").get<std::string>(), request.value("file", "job.toml")));
}

}  // namespace swathe::page
