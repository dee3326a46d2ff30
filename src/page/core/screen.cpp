#include <algorithm>
#include <stdexcept>

#include "page/core/asks.hpp"

namespace swathe::page {
namespace {

ScreenOptions options_of(const Json& request) {
  ScreenOptions options;
  options.width_px = request.value("width", options.width_px);
  options.height_px = request.value("height", options.height_px);
  options.text_px = request.value("text", options.text_px);
  if (const auto window = request.find("window"); window != request.end()) {
    options.window.emplace();
    options.window->cover(FlatPoint{window->at(0), window->at(1)});
    options.window->cover(FlatPoint{window->at(2), window->at(3)});
  }
  return options;
}

Observer observer_of(const Made& made, const Json& request) {
  Observer observer = first_observer(made, degrees(request.value("bearing", 0.0)));
  observer.distance = mm(request.value("distance", observer.distance.mm()));
  observer.eye_height = mm(request.value("eye_height", observer.eye_height.mm()));
  observer.color = request.value("color", observer.color);
  return kept(made, observer);
}

std::size_t bumper_of(const Job& job, const std::string& name) {
  const auto found = std::ranges::find(job.bumpers, name, &BumperKeys::name);
  if (found == job.bumpers.end())
    throw std::runtime_error("the job has no bumper \"" + name + "\"");
  return static_cast<std::size_t>(found - job.bumpers.begin());
}

const char* word(Reads reads) {
  switch (reads) {
    case Reads::Number:
      return "number";
    case Reads::Another:
      return "another";
    case Reads::Nothing:
      break;
  }
  return "nothing";
}

Json json_of(const PlaceVerdict& verdict) {
  return {{"way", verdict.way},
          {"reads", word(verdict.reads)},
          {"text", verdict.text},
          {"out_to_mm", verdict.out_to ? Json(verdict.out_to->mm()) : Json()},
          {"words", verdict.words},
          {"subjects", to_text(verdict.shows)},
          {"bearing", verdict.from.bearing.degrees()},
          {"distance", verdict.from.distance.mm()},
          {"eye_height", verdict.from.eye_height.mm()},
          {"color", verdict.from.color}};
}

Outcome<Answer> svg(Session& session, const ScreenPicture& picture) {
  return Answer{"", to_svg(picture, session.labels())};
}

}  // namespace

Outcome<Answer> plan(Session& session, const Json& request) {
  return svg(session, screen_plan(session.last_made(), session.labels(), options_of(request)));
}

Outcome<Answer> cover(Session& session, const Json& request) {
  const std::size_t bumper = bumper_of(session.last_made().job, request.at("bumper"));
  const bool as_printed = request.value("as_printed", false);
  return svg(session,
             screen_cover(session.last_made(), bumper, session.labels(), options_of(request),
                          as_printed ? CoverShown::AsPrinted : CoverShown::OutsideUp));
}

Outcome<Answer> cut_through(Session& session, const Json& request) {
  return svg(session,
             screen_cut_through(session.last_made(), session.labels(), options_of(request)));
}

Outcome<Answer> view(Session& session, const Json& request) {
  const bool all_round = request.value("all_round", false);
  return svg(session, screen_view(session.last_made(), session.labels(),
                                  observer_of(session.last_made(), request), options_of(request),
                                  all_round ? ViewSize::AllRound : ViewSize::Largest));
}

Outcome<Answer> chart(Session& session, const Json& request) {
  return svg(session, screen_chart(session.last_made(), session.labels(),
                                   observer_of(session.last_made(), request), options_of(request)));
}

Outcome<Answer> verdict(Session& session, const Json& request) {
  return said(
      json_of(verdict_from(session.last_made(), observer_of(session.last_made(), request))));
}

Outcome<Answer> verdicts(Session& session, const Json&) {
  Json list = Json::array();
  for (const PlaceVerdict& one : side_verdicts(session.last_made())) list.push_back(json_of(one));
  return said(list);
}

}  // namespace swathe::page
