#include "page/core/session.hpp"

#include <algorithm>
#include <stdexcept>

namespace swathe::page {

const Made& Session::made() const {
  if (!made_) throw std::runtime_error("no job is open");
  return *made_;
}

const Made& Session::last_made() const {
  if (made_) return *made_;
  if (!last_) throw std::runtime_error("no job was open");
  return *last_;
}

void Session::close() {
  making.reset();
  sheets_.reset();
  ways_.reset();
  sheet_.reset();
  if (made_) last_ = std::move(made_);
}

void Session::open(Made made) {
  close();
  last_.reset();
  kept = kept_digits(made);
  made_ = std::make_unique<const Made>(std::move(made));
}

const Font& Session::labels() {
  if (!labels_) labels_ = Font::open(label_font()).value();
  return *labels_;
}

const std::vector<ListedSheet>& Session::sheets() {
  if (!sheets_) sheets_ = list_sheets(made(), labels());
  return *sheets_;
}

const PrintWays& Session::ways() {
  if (!ways_) ways_ = print_ways(made(), labels());
  return *ways_;
}

const Sheet& Session::sheet(const std::string& stem) {
  if (sheet_ && sheet_->stem == stem) return *sheet_;
  const auto listed = std::ranges::find(sheets(), stem, &ListedSheet::stem);
  if (listed == sheets().end()) throw std::runtime_error("the job has no sheet \"" + stem + "\"");
  const bool tells_ways = listed->kind == SheetKind::Start || listed->kind == SheetKind::Book;
  sheet_.reset();
  sheet_ = make_sheet(made(), *listed, labels(), tells_ways ? ways() : PrintWays());
  return *sheet_;
}

NamedFiles files_for(const Session& session, std::string_view text) {
  NamedFiles named;
  for (const std::string& name : files_named(text)) {
    const auto found = session.files.find(name);
    if (found != session.files.end()) named.emplace(name, found->second);
  }
  return named;
}

Outcome<Answer> open_job(Session& session, std::string_view text, const Json& request) {
  session.close();
  MakeOptions options;
  options.advice = request.value("advice", true);
  options.kept = &session.kept;
  options.fonts = &session.fonts;
  auto made = make(text, request.value("file", "job.toml"), files_for(session, text), options);
  if (!made) return tl::unexpected(std::move(made.error()));
  Json bumpers = Json::array(), notices = Json::array();
  for (const BumperKeys& bumper : made->job.bumpers) bumpers.push_back(bumper.name);
  for (const Notice& notice : made->notices) {
    Json one = {{"text", to_text(notice)}, {"sentence", notice.sentence}};
    one.update(json_of(notice.place));
    notices.push_back(std::move(one));
  }
  Answer answer = said({{"title", made->job.title},
                        {"number", made->job.number},
                        {"season", made->season ? Json(made->season->name) : Json()},
                        {"units", made->job.units == Units::Inches ? "in" : "mm"},
                        {"bumpers", std::move(bumpers)},
                        {"notices", std::move(notices)}});
  session.open(*std::move(made));
  return answer;
}

}  // namespace swathe::page
