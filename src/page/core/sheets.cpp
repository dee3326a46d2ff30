#include <stdexcept>

#include "page/core/asks.hpp"

namespace swathe::page {
namespace {

Json json_of(const std::optional<std::size_t>& bumper, const Job& job) {
  return bumper ? Json(job.bumpers[*bumper].name) : Json();
}

Json json_of(const std::vector<PrintFile>& files, const Job& job) {
  Json list = Json::array();
  for (const PrintFile& file : files)
    list.push_back({{"name", file.name},
                    {"pages", file.pages},
                    {"paper", file.paper},
                    {"bumper", json_of(file.bumper, job)}});
  return list;
}

const char* word(PrintWay::Kind kind) {
  switch (kind) {
    case PrintWay::Kind::Measures:
      return "measures";
    case PrintWay::Kind::Fold:
      return "fold";
    case PrintWay::Kind::Tiles:
      return "tiles";
    case PrintWay::Kind::PrintShop:
      break;
  }
  return "print-shop";
}

}  // namespace

Outcome<Answer> sheets(Session& session, const Json&) {
  Json list = Json::array();
  for (const ListedSheet& sheet : session.sheets())
    list.push_back({{"stem", sheet.stem},
                    {"title", sheet.title},
                    {"kind", to_text(sheet.kind)},
                    {"files", to_text(file_kind(sheet.kind))},
                    {"paper", sheet.paper},
                    {"bumper", json_of(sheet.bumper, session.made().job)}});
  return said(list);
}

Outcome<Answer> pages(Session& session, const Json& request) {
  Json list = Json::array();
  for (const Page& page : session.sheet(request.at("sheet").get<std::string>()).pages)
    list.push_back(
        {{"name", page.name}, {"width_mm", page.width_mm}, {"height_mm", page.height_mm}});
  return said(list);
}

Outcome<Answer> page_svg(Session& session, const Json& request) {
  const Sheet& sheet = session.sheet(request.at("sheet").get<std::string>());
  const auto page = request.value("page", std::size_t{0});
  if (page >= sheet.pages.size())
    throw std::runtime_error("the sheet \"" + sheet.stem + "\" has no such page");
  return Answer{"", to_svg(sheet.pages[page], sheet.title, session.labels())};
}

Outcome<Answer> sheet_pdf(Session& session, const Json& request) {
  const Sheet& sheet = session.sheet(request.at("sheet").get<std::string>());
  if (told(sheet).too_large_for_pdf)
    throw std::runtime_error("the sheet \"" + sheet.stem + "\" is too large for a PDF file");
  const PdfOptions options{request.value("created", PdfOptions{}.created)};
  return Answer{"", to_pdf(sheet, session.labels(), options)};
}

Outcome<Answer> ways(Session& session, const Json&) {
  const Made& made = session.made();
  const PrintWays& ways = session.ways();
  Json list = Json::array();
  for (const PrintWay& way : ways.ways) {
    const WayWords words = words_of(way, made);
    list.push_back({{"kind", word(way.kind)},
                    {"words", words.way},
                    {"sheets", words.sheets},
                    {"pages", way.pages()},
                    {"files", json_of(way.files, made.job)}});
  }
  Json book = json_of(ways.to_look_at, made.job);
  for (const ListedSheet& sheet : session.sheets())
    if (sheet.kind == SheetKind::Book)
      book.push_back({{"name", sheet.stem + ".pdf"},
                      {"pages", session.sheet(sheet.stem).pages.size()},
                      {"paper", sheet.paper},
                      {"bumper", nullptr}});
  return said({{"first", json_of(ways.first, made.job)},
               {"ways", std::move(list)},
               {"numerals", json_of(ways.numerals, made.job)},
               {"book", std::move(book)},
               {"notes", notes_of(ways, made)}});
}

}  // namespace swathe::page
