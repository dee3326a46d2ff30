#include <doctest/doctest.h>

#include <algorithm>
#include <regex>
#include <set>

#include "job/key_path.hpp"
#include "sheet/fold_sheet.hpp"
#include "support/examples.hpp"
#include "support/jobs.hpp"
#include "support/label_font.hpp"
#include "support/made_examples.hpp"
#include "swathe/job.hpp"
#include "swathe/sheet.hpp"
#include "swathe/write.hpp"

// What marks show of the model, on every sheet of the examples.
namespace swathe {
namespace {

bool is_side(const Made& made, const std::string& name) {
  return std::ranges::count(made.job.frame.sides, name) == 1;
}

bool are_neighbors(const Made& made, const std::string& before, const std::string& after) {
  const auto& sides = made.job.frame.sides;
  for (std::size_t k = 0; k < sides.size(); ++k)
    if (sides[k] == before && sides[(k + 1) % sides.size()] == after) return true;
  return false;
}

const Wrap* wrap_of(const Made& made, const std::string& bumper) {
  const auto found =
      std::ranges::find_if(made.wraps, [&](const Wrap& wrap) { return wrap.run().name == bumper; });
  return found == made.wraps.end() ? nullptr : &*found;
}

bool turns(const Made& made, const Subject& corner) {
  const Wrap* const wrap = wrap_of(made, corner.names[0]);
  return wrap && std::ranges::any_of(wrap->run().corners, [&](const RunCorner& one) {
           return made.job.frame.sides[static_cast<std::size_t>(one.before)] == corner.names[1] &&
                  made.job.frame.sides[static_cast<std::size_t>(one.after)] == corner.names[2];
         });
}

bool lies_on(const Made& made, const std::string& bumper, const std::string& side) {
  const Wrap* const wrap = wrap_of(made, bumper);
  return wrap && std::ranges::any_of(wrap->run().sides, [&](const RunSide& leg) {
           return made.job.frame.sides[static_cast<std::size_t>(leg.side)] == side;
         });
}

bool is_counted(int number, std::size_t count) {
  return number >= 1 && static_cast<std::size_t>(number) <= count;
}

bool is_there(const Made& made, const Subject& subject) {
  using Kind = Subject::Kind;
  switch (subject.kind) {
    case Kind::Side:
      return is_side(made, subject.names[0]);
    case Kind::Corner:
      return are_neighbors(made, subject.names[0], subject.names[1]);
    case Kind::Bumper:
    case Kind::Start:
    case Kind::End:
      return wrap_of(made, subject.names[0]) != nullptr;
    case Kind::BumperCorner:
      return turns(made, subject);
    case Kind::Board:
    case Kind::PaddingPiece:
      return lies_on(made, subject.names[0], subject.names[1]);
    case Kind::ClothOfColor:
      return std::ranges::count(made.job.cloth.colors, subject.names[0], &ClothColor::name) == 1;
    case Kind::Bracket:
      return is_counted(subject.number, made.job.brackets.size());
    case Kind::Numeral:
      return std::ranges::count(made.numerals->placed, subject.number, &PlacedNumeral::place) > 0;
    case Kind::Digit:
      return made.job.number.find(subject.names[0]) != std::string::npos;
    case Kind::Blind:
      return is_counted(subject.number, made.job.sight.blind.size());
    default:
      return true;
  }
}

void check_subject(const Made& made, const Subject& subject) {
  const std::string text = to_text(subject);
  CAPTURE(text);
  CHECK(parse_subject(text) == subject);
  CHECK(is_there(made, subject));
  const std::vector<std::string> keys = keys_of(subject, made.job);
  CHECK_FALSE(keys.empty());
  for (const std::string& key : keys) {
    CAPTURE(key);
    const auto named = read_key_path(key, "job");
    REQUIRE(named.has_value());
    CHECK(named->key != nullptr);
  }
}

/// Every subject on a sheet, checked once each.
std::set<std::string> subjects_on(const Made& made, const Sheet& sheet) {
  std::set<std::string> seen;
  for (const Page& page : sheet.pages)
    for (const draw::Mark& mark : page.drawing.marks())
      for (const Subject& subject : shown_by(mark))
        if (seen.insert(to_text(subject)).second) check_subject(made, subject);
  return seen;
}

Page without_subjects(const Page& page) {
  Page bare{page.width_mm, page.height_mm, {}, page.name, page.print};
  for (const draw::Mark& mark : page.drawing.marks()) {
    if (const auto* const line = std::get_if<LineMark>(&mark)) {
      if (line->sample)
        bare.drawing.sample(line->kind, line->path);
      else
        bare.drawing.line(line->kind, line->path);
    } else if (const auto* const fill = std::get_if<FillMark>(&mark)) {
      bare.drawing.fill(fill->kind, fill->color, fill->outlines);
    } else if (const auto* const text = std::get_if<TextMark>(&mark)) {
      bare.drawing.text(text->at, text->text, text->height_mm, text->anchor, text->turn);
    }
  }
  return bare;
}

TEST_CASE("subjects: on every mark of every example they name what is there and has keys") {
  const Font labels = test::label_font();
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made_example(path);
    std::vector<Sheet> sheets = all_sheets(made, labels);
    for (std::size_t k = 0; k < made.patterns.size(); ++k)
      sheets.push_back(model_sheet(made, k, 0.25, made.job.paper, labels));
    std::set<std::string> patterns, all;
    for (const Sheet& sheet : sheets) {
      CAPTURE(sheet.stem);
      const std::set<std::string> seen = subjects_on(made, sheet);
      CHECK(seen.empty() == (sheet.kind == SheetKind::TestPage));  // that shows nothing of a job
      if (sheet.kind == SheetKind::Pattern) patterns.insert(seen.begin(), seen.end());
      all.insert(seen.begin(), seen.end());
    }
    // Nothing that a page would light up is without a mark.
    std::set<std::string> wanted;
    for (const Wrap& wrap : made.wraps) {
      const std::string& name = wrap.run().name;
      wanted.insert(to_text(Subject::bumper(name)));
      wanted.insert(to_text(Subject::end(name, true)));
      wanted.insert(to_text(Subject::end(name, false)));
      for (const RunCorner& corner : wrap.run().corners)
        wanted.insert(to_text(Subject::bumper_corner(
            name, made.job.frame.sides[static_cast<std::size_t>(corner.before)],
            made.job.frame.sides[static_cast<std::size_t>(corner.after)])));
    }
    for (std::size_t k = 0; k < made.job.brackets.size(); ++k)
      wanted.insert(to_text(Subject::bracket(static_cast<int>(k) + 1)));
    if (made.numerals)
      for (const PlacedNumeral& placed : made.numerals->placed)
        wanted.insert(to_text(Subject::numeral(placed.place)));
    for (const std::string& one : wanted) {
      CAPTURE(one);
      CHECK(patterns.contains(one));
    }
    for (const std::string& side : made.job.frame.sides)
      CHECK(all.contains(to_text(Subject::side(side))));
  }
}

TEST_CASE("subjects: findings of every example name what is there, and keys that are known") {
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made_example(path);
    for (const Finding& finding : made.findings) {
      CAPTURE(finding.id);
      CHECK_FALSE(finding.subjects.empty());
      for (const Subject& subject : finding.subjects) check_subject(made, subject);
      for (const std::string& key : finding.keys) {
        CAPTURE(key);
        CHECK(read_key_path(key, "job").has_value());
      }
    }
  }
}

TEST_CASE("subjects: without them an SVG is byte for byte what it is for marks that show nothing") {
  const Font labels = test::label_font();
  const std::regex attribute(" data-subject=\"[^\"]*\"");
  std::size_t shown = 0;
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    for (const Sheet& sheet : all_sheets(test::made_example(path), labels)) {
      CAPTURE(sheet.stem);
      const Page& page = sheet.pages.front();
      const std::string svg = to_svg(page, sheet.title, labels);
      const std::string bare = to_svg(without_subjects(page), sheet.title, labels);
      shown += svg.size() > bare.size() ? 1 : 0;
      CHECK(std::regex_replace(svg, attribute, "") == bare);
      CHECK(bare.find("data-subject") == std::string::npos);
    }
  }
  CHECK(shown > 20);
}

TEST_CASE("subjects: a half's marks show what they stand for on both halves") {
  Job job = test::c_halves(711.2, 762);
  job.brackets.clear();
  const auto made = make(job);
  REQUIRE(made.has_value());
  const Sheet half = fold_sheet(*made, 0, made->job.paper, test::label_font());
  REQUIRE_FALSE(half.pages.empty());
  std::set<std::string> texts;
  for (const Page& page : half.pages)
    for (const draw::Mark& mark : page.drawing.marks()) texts.insert(to_text(shown_by(mark)));
  CHECK(texts.contains("bumper.A.start bumper.A.end"));
  CHECK(texts.contains("bumper.A.corner.front.left bumper.A.corner.left.back"));
}

TEST_CASE("subjects: a drawing added to another keeps its own, and takes what it lacks") {
  Drawing inner;
  {
    const Showing one(inner, Subject::bracket(1));
    inner.line(LineKind::Cut, {0, 0}, {1, 1});
  }
  inner.text({0, 0}, "words");
  Drawing outer;
  outer.line(LineKind::Thin, {0, 0}, {1, 0});
  {
    const Showing bumper(outer, Subject::bumper("A"));
    outer.add(inner, {true, 0, {5, 5}});
  }
  outer.fill(LineKind::Match, {0, 0, 0}, {});
  REQUIRE(outer.marks().size() == 4);
  CHECK(shown_by(outer.marks()[0]).empty());
  CHECK(to_text(shown_by(outer.marks()[1])) == "bracket.1");
  CHECK(to_text(shown_by(outer.marks()[2])) == "bumper.A");
  CHECK(shown_by(outer.marks()[3]).empty());
  const std::string svg = to_svg({10, 10, outer, ""}, "t", test::label_font());
  CHECK(svg.find("<path data-subject=\"bracket.1\" d=") != std::string::npos);
  CHECK(svg.find(" data-subject=\"bumper.A\" transform=") != std::string::npos);
}

}  // namespace
}  // namespace swathe
