#include <algorithm>
#include <stdexcept>
#include <string_view>

#include "page/core/asks.hpp"

namespace swathe::page {
namespace {

constexpr std::string_view kReport = "report.json", kPdf = ".pdf";

std::string created_of(const Json& request) {
  return request.value("created", PdfOptions{}.created);
}

/// The kind of a file by its name: a sheet's files begin with its stem.
FileKind kind_of(Session& session, std::string_view name) {
  if (name.ends_with(".obj")) return FileKind::Mesh;
  const ListedSheet* longest = nullptr;
  for (const ListedSheet& sheet : session.sheets())
    if (name.starts_with(sheet.stem) && (!longest || longest->stem.size() < sheet.stem.size()))
      longest = &sheet;
  return longest ? file_kind(longest->kind) : FileKind::Report;
}

/// With the test page, since views that are asked for alone would bring pictures as dots as well.
Wanted only(FileKind kind) { return {kind, FileKind::TestPage}; }

Wanted wanted_of(const Json& request) {
  const auto kinds = request.find("kinds");
  if (kinds == request.end()) return Wanted::Everything;
  Wanted wanted;
  for (const std::string word : *kinds) {
    const auto more = Wanted::of_word(word);
    if (!more) throw std::runtime_error("there is no kind of file \"" + word + "\"");
    wanted = wanted | *more;
  }
  return wanted == Wanted::Views ? wanted | only(FileKind::Views) : wanted;
}

}  // namespace

Outcome<Answer> file(Session& session, const Json& request) {
  const std::string name = request.at("name");
  if (name == kReport) return report(session, request);
  if (name.ends_with(kPdf)) {
    const std::string stem = name.substr(0, name.size() - kPdf.size());
    return sheet_pdf(session, {{"sheet", stem}, {"created", created_of(request)}});
  }
  JobFiles files(session.made(), session.labels(),
                 {only(kind_of(session, name)), created_of(request), {}});
  while (auto made = files.next())
    if (made->name == name) return Answer{"", std::move(made->bytes)};
  throw std::runtime_error("the job has no file \"" + name + "\"");
}

Outcome<Answer> begin_files(Session& session, const Json& request) {
  session.making.reset();
  const std::string created = created_of(request);
  const Wanted wanted = wanted_of(request);
  session.making.emplace(
      Session::Making{JobFiles(session.made(), session.labels(), {wanted, created, {}}), created});
  return Answer{"null"};
}

Outcome<Answer> next_file(Session& session, const Json&) {
  if (!session.making) throw std::runtime_error("no files were begun");
  auto made = session.making->files.next();
  if (!made) return Answer{"null"};
  Answer answer = said({{"name", made->name},
                        {"kind", to_text(made->kind)},
                        {"pages", made->pages},
                        {"paper", made->paper},
                        {"what", made->what}});
  answer.bytes = made->bytes;
  session.making->made.push_back(*std::move(made));
  return answer;
}

Outcome<Answer> archive(Session& session, const Json& request) {
  if (!session.making) throw std::runtime_error("no files were begun");
  Session::Making& making = *session.making;
  while (auto made = making.files.next()) making.made.push_back(*std::move(made));
  std::vector<MadeFile> all = making.made;
  for (const std::string name : request.value("add", Json::array())) {
    const auto given = session.files.find(name);
    if (given == session.files.end())
      throw std::runtime_error("no file \"" + name + "\" was given");
    if (std::ranges::find(all, name, &MadeFile::name) == all.end())
      all.push_back({name, given->second, 0, "", "", FileKind::Report});
  }
  return Answer{"", to_zip(all, making.created)};
}

}  // namespace swathe::page
