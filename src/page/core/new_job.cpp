#include "page/core/asks.hpp"

namespace swathe::page {
namespace {

std::vector<std::string> answers_of(const Json& request) {
  return request.value("answers", std::vector<std::string>());
}

Outcome<Answer> text_of(const Outcome<std::string>& text) {
  if (!text) return tl::unexpected(text.error());
  return said({{"text", *text}});
}

}  // namespace

Outcome<Answer> questions(Session&, const Json& request) {
  Json list = Json::array();
  for (const NewJobQuestion& question : new_job_questions(answers_of(request)))
    list.push_back(
        {{"asks", question.asks}, {"example", question.example}, {"usual", question.usual}});
  return said(list);
}

Outcome<Answer> job_of_answers(Session&, const Json& request) {
  return text_of(new_job(answers_of(request)));
}

Outcome<Answer> kinds(Session&, const Json&) { return said(job_kinds()); }

Outcome<Answer> job_of_kind(Session&, const Json& request) {
  return text_of(new_job_like(request.at("kind").get<std::string>()));
}

}  // namespace swathe::page
