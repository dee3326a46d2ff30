#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <set>

#include "support/label_font.hpp"
#include "support/made.hpp"
#include "support/made_by_hand.hpp"
#include "swathe/job.hpp"
#include "swathe/pattern.hpp"
#include "swathe/write.hpp"

namespace swathe {
namespace {

constexpr const char* kDate = "2001-02-03T04:05:06Z";

Made made_for_test() { return test::made(job_text(test::demo_job())); }

std::vector<MadeFile> all_of(JobFiles& files) {
  std::vector<MadeFile> all;
  while (auto file = files.next()) all.push_back(*std::move(file));
  CHECK_FALSE(files.next());  // nor after the last
  return all;
}

std::vector<MadeFile> files_of(const Made& made, const Font& labels, Wanted wanted) {
  JobFiles files(made, labels, {wanted, kDate, {}});
  CHECK_FALSE(files.none());
  return all_of(files);
}

std::vector<std::string> names_of(const std::vector<MadeFile>& files) {
  std::vector<std::string> names;
  for (const MadeFile& file : files) names.push_back(file.name);
  return names;
}

TEST_CASE("files (1): the bytes that the writers make of each sheet, in the order of work") {
  const Font labels = test::label_font();
  const Made made = made_for_test();
  const std::vector<Sheet> sheets = all_sheets(made, labels);
  JobFiles files(made, labels, {Wanted::Everything, kDate, {}});
  const auto expect = [&](const std::string& name, const std::string& bytes) {
    CAPTURE(name);
    const auto file = files.next();
    REQUIRE(file.has_value());
    CHECK(file->name == name);
    CHECK(file->bytes == bytes);
  };
  for (const Sheet& sheet : sheets) {
    expect(sheet.stem + ".pdf", to_pdf(sheet, labels, {kDate}));
    const bool cut = sheet.kind == SheetKind::Pattern || sheet.kind == SheetKind::Numerals;
    if (!cut && sheet.kind != SheetKind::Views) continue;
    for (std::size_t k = 0; k < sheet.pages.size(); ++k) {
      const std::string stem =
          sheet.stem + (sheet.pages.size() > 1 ? "-" + std::to_string(k + 1) : "");
      expect(stem + ".svg", to_svg(sheet.pages[k], sheet.title, labels));
      if (cut) expect(stem + ".dxf", to_dxf(sheet.pages[k], labels));
    }
  }
  for (std::size_t b = 0; b < made.wraps.size(); ++b)
    expect(made.patterns[b].bumper + "-cover.obj",
           to_obj(make_mesh(made.wraps[b], made.job.cloth)));
  expect("report.json", report_json(made, told(sheets)));
  CHECK_FALSE(files.next());
  CHECK(files.sheets().size() == sheets.size());
}

TEST_CASE("files (2): some kinds only are files of everything, and views come as dots beside") {
  const Font labels = test::label_font();
  const Made made = made_for_test();
  std::map<std::string, std::string> everything;
  for (MadeFile& file : files_of(made, labels, Wanted::Everything))
    CHECK(everything.emplace(file.name, std::move(file.bytes)).second);
  std::size_t dots = 0, count = 0;
  for (const Wanted wanted : {Wanted::Patterns, Wanted::Numerals, Wanted::Views})
    for (const MadeFile& file : files_of(made, labels, wanted)) {
      CAPTURE(file.name);
      ++count;
      if (file.name.ends_with(".png")) {
        ++dots;
        CHECK(file.name.starts_with("views"));
        CHECK(file.bytes.starts_with("\x89PNG"));
        continue;
      }
      REQUIRE(everything.contains(file.name));
      CHECK(everything[file.name] == file.bytes);
    }
  CHECK(dots > 0);
  // All but where to start, the book, the meshes and the report; the test page comes with both that
  // want it.
  CHECK(count - dots == everything.size() - 2 - made.wraps.size() - 1 + 1);
}

TEST_CASE("files: a sheet is drawn when its first file is asked for, and not before") {
  const Font labels = test::label_font();
  const Made made = made_for_test();
  JobFiles files(made, labels, {Wanted::Everything, kDate, {}});
  CHECK(files.sheets().empty());
  std::set<std::string> stems;
  while (const auto file = files.next()) {
    if (file->name.ends_with(".pdf")) stems.insert(file->name);
    CHECK(files.sheets().size() == stems.size());
  }
  CHECK(stems.size() == list_sheets(made, labels).size());
}

TEST_CASE("files: none where a job has nothing of what is wanted") {
  Job job = test::demo_job();
  job.number.clear();
  const Made made = test::made(job_text(job));
  const Font labels = test::label_font();
  for (const Wanted wanted : {Wanted::Numerals, Wanted::Views}) {
    JobFiles files(made, labels, {wanted, kDate, {}});
    CHECK(files.none());
    CHECK_FALSE(files.next());
  }
  CHECK_FALSE(JobFiles(made, labels).none());
}

TEST_CASE(
    "files: every word for a kind brings files of that kind, and the test page with full size") {
  const Font labels = test::label_font();
  const Made made = made_for_test();
  CHECK_FALSE(Wanted::of_word("everything"));
  CHECK_FALSE(Wanted::of_word(""));
  Wanted all;
  for (const std::string_view word : kWantedWords) {
    CAPTURE(word);
    const auto wanted = Wanted::of_word(word);
    REQUIRE(wanted);
    all = all | *wanted;
    const std::vector<MadeFile> files = files_of(made, labels, *wanted);
    for (const MadeFile& file : files) CHECK(wanted->has(file.kind));
    const bool printed_to_size =
        word == "pattern" || word == "tiles" || word == "templates" || word == "numerals";
    CHECK(std::ranges::count(files, FileKind::TestPage, &MadeFile::kind) == int(printed_to_size));
    CHECK(std::ranges::any_of(
        files, [](const MadeFile& file) { return file.kind != FileKind::TestPage; }));
  }
  CHECK((all | Wanted{FileKind::Start, FileKind::Report}) == Wanted::Everything);
}

TEST_CASE("files: models come after the sheets, where patterns are wanted") {
  const Font labels = test::label_font();
  const Made made = made_for_test();
  Sheet model{{"A-model", "a model", SheetKind::Model, "letter"}, {}};
  model.pages = {{100, 100, {}, "a model"}};
  const auto with_model = [&](Wanted wanted) {
    JobFiles files(made, labels, {wanted, kDate, {model}});
    return names_of(all_of(files));
  };
  const std::vector<std::string> patterns = with_model(Wanted::Patterns);
  CHECK(patterns.back() == "A-model.pdf");
  const std::vector<std::string> numerals = with_model(Wanted::Numerals);
  CHECK(std::ranges::count(numerals, "A-model.pdf") == 0);
  const std::vector<std::string> everything = with_model(Wanted::Everything);
  const auto at = [&](const char* name) { return std::ranges::find(everything, name); };
  CHECK(at("book.pdf") + 1 == at("A-model.pdf"));
  CHECK(everything.back() == "report.json");
}

TEST_CASE("files: a page past what a PDF may hold comes as SVG and DXF alone") {
  const Font labels = test::label_font();
  const Made made = made_for_test();
  Sheet large{{"large", "large", SheetKind::Pattern, "full size"}, {}};
  large.pages = {{6000, 100, {}, "large"}};
  JobFiles files(made, labels, {Wanted::Patterns, kDate, {large}});
  const std::vector<std::string> names = names_of(all_of(files));
  REQUIRE(names.size() > 2);
  CHECK(names[names.size() - 2] == "large.svg");
  CHECK(names.back() == "large.dxf");
  CHECK(std::ranges::count(names, "large.pdf") == 0);
  CHECK(files.sheets().back().too_large_for_pdf);
}

}  // namespace
}  // namespace swathe
