#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>

#include "job/answers.hpp"
#include "support/examples.hpp"
#include "swathe/job.hpp"

namespace swathe {
namespace {

enum { kFrame, kOpening, kBumpers, kBrackets, kPadding, kNumber, kPaper, kQuestions };

/// All answers empty but one.
std::vector<std::string> but(std::size_t question, const std::string& answer) {
  std::vector<std::string> answers(kQuestions);
  answers[question] = answer;
  return answers;
}

Job read(const std::string& text) {
  const JobReading reading = read_job(text, "job.toml");
  REQUIRE_MESSAGE(reading.faults.empty(), to_text(reading.faults.front()) << '\n' << text);
  return reading.job;
}

Job job_of(const std::vector<std::string>& answers) {
  const auto text = new_job(answers);
  REQUIRE_MESSAGE(text.has_value(), text.error().front().sentence);
  return read(*text);
}

/// What is wrong at that question, and nothing elsewhere.
std::string fault_at(std::size_t question, const std::vector<std::string>& answers) {
  const auto text = new_job(answers);
  REQUIRE_MESSAGE(!text.has_value(), answers[question]);
  REQUIRE(text.error().size() == 1);
  CHECK(text.error()[0].place.line == static_cast<int>(question) + 1);
  return text.error()[0].sentence;
}

}  // namespace

TEST_CASE("questions: there are seven, each with a default and an example that is an answer") {
  const auto questions = new_job_questions();
  REQUIRE(questions.size() == kQuestions);
  for (std::size_t k = 0; k < questions.size(); ++k) {
    CAPTURE(questions[k].asks);
    CHECK(new_job(but(k, questions[k].usual)).has_value());
    const std::string one = questions[k].example.substr(0, questions[k].example.find(", or "));
    CHECK(new_job(but(k, one)).has_value());
  }
  // By the answers before.
  CHECK(new_job_questions({"28 x 30", "front 14 in"})[kBumpers].usual == "1");
  CHECK(new_job_questions({"710 mm x 760 mm"})[kPaper].usual == "a4");
  const auto metric = new_job_questions({"710 mm x 760 mm"});
  for (std::size_t k = kOpening; k < metric.size(); ++k)
    CHECK(metric[k].usual.find(" in") == std::string::npos);
}

TEST_CASE("questions: answers are read in everyday words") {
  const auto frame = [](const char* text) { return read_frame_answer(text).value(); };
  CHECK(frame("26 1/2 in x 32 in").width == inches(26.5));
  CHECK(frame("28x30").depth == inches(30));
  CHECK(frame("28 by 30 in").width == inches(28));
  CHECK(frame("28\" × 30\"").depth == inches(30));
  CHECK(frame("700 X 760 mm").width == mm(700));
  CHECK(frame("70 cm x 76 cm").depth == mm(760));
  CHECK(frame("2' 4\" x 2' 6\"").depth.mm() == doctest::Approx(762));
  CHECK(frame("700 x 760 mm").units == Units::Millimeters);
  CHECK_FALSE(read_frame_answer("28 in").has_value());
  CHECK_FALSE(read_frame_answer("28 in x 30 in x 5 in").has_value());

  const auto opening = [](const char* text) {
    return read_opening_answer(text, Units::Inches).value();
  };
  CHECK(opening("front 17 in").width == inches(17));
  CHECK(opening("17 in on the Left").side == "left");
  CHECK(opening("back, 430 mm").width == mm(430));
  CHECK_FALSE(read_opening_answer("front left 17 in", Units::Inches).has_value());
  CHECK_FALSE(read_opening_answer("17 in", Units::Inches).has_value());

  CHECK(read_bumpers_answer("two") == BumperSet::Halves);
  CHECK(read_bumpers_answer("4, one on each side") == BumperSet::Sides);
  CHECK(read_bumpers_answer("4 corners") == BumperSet::Corners);
  CHECK(read_bumpers_answer("4 Sides") == BumperSet::Sides);
  CHECK(read_bumpers_answer("4") == std::nullopt);  // sides or corners

  const auto brackets =
      read_brackets_answer("left 9 in from front, 3 in x 2 in; Right middle 2x2", Units::Inches);
  REQUIRE(brackets.has_value());
  REQUIRE(brackets->size() == 2);
  CHECK((*brackets)[0].side == "left");
  CHECK((*brackets)[0].neighbor == "front");
  CHECK((*brackets)[0].from_corner == inches(9));
  CHECK((*brackets)[0].height == inches(2));
  CHECK_FALSE((*brackets)[1].from_corner.has_value());
  CHECK_FALSE(read_brackets_answer("left 9 in", Units::Inches).has_value());
  CHECK_FALSE(read_brackets_answer("left 9 in from front", Units::Inches).has_value());

  const auto padding = [](const char* text) {
    return read_padding_answer(text, Units::Inches).value();
  };
  CHECK(padding("boards 23/32 in x 5 in, noodles 2 1/2 in solid").core == Core::Solid);
  CHECK(padding("3/4 x 5, 2.5 with a hole").core == Core::Hollow);
  CHECK(padding("3/4 x 5, 2.5 in noodles without a hole").core == Core::Solid);
  CHECK(padding("3/4 x 5, 2.5").core == Core::Unstated);
  CHECK(padding("3/4 in thick x 5 in high, 2.5").board_height == inches(5));
  CHECK(padding("18 mm x 127 mm, block 60 mm x 120 mm").form == PaddingForm::Block);
  CHECK_FALSE(read_padding_answer("2 1/2 in", Units::Inches).has_value());
  CHECK_FALSE(read_padding_answer("3/4 x 5, 2.5 solid hollow", Units::Inches).has_value());

  CHECK(read_number_answer("0042").value().number == "0042");
  CHECK(read_number_answer("7 iron-on").value().method == NumeralMethod::IronOn);
  CHECK(read_number_answer("7, painted with a stencil") == std::nullopt);
  CHECK(read_number_answer("7 paint-mask").value().method == NumeralMethod::PaintMask);
  CHECK_FALSE(read_number_answer("123456").has_value());
  CHECK_FALSE(read_number_answer("12a").has_value());

  CHECK(read_paper_answer("A4", Units::Inches).value().sheet == "a4");
  CHECK(read_paper_answer("roll 36 in", Units::Inches).value().width == inches(36));
  CHECK_FALSE(read_paper_answer("roll", Units::Inches).has_value());
  CHECK_FALSE(read_paper_answer("napkin", Units::Inches).has_value());
}

TEST_CASE("questions: the job says what was answered") {
  const Job job = job_of({"26 1/2 in x 32 in", "left 14 in", "2",
                          "front 9 in from right, 3 in x 2 in; back middle, 2 in x 1 in",
                          "1/2 in x 5 in, noodles 2 3/8 in", "007 sew-on", "roll 36 in"});
  CHECK(job.units == Units::Inches);
  CHECK(job.frame.corners[0] == FlatPoint{26.5 * 25.4, 32 * 25.4});
  REQUIRE(job.openings.size() == 1);
  CHECK(job.openings[0].side == "left");
  CHECK(job.openings[0].width == inches(14));
  REQUIRE(job.bumpers.size() == 2);  // from the opening to the middle of the right side, and on
  CHECK(job.bumpers[0].from.side == "left");
  CHECK(std::holds_alternative<RunEnd::Opening>(job.bumpers[0].from.at));
  CHECK(job.bumpers[0].to.side == "right");
  CHECK(std::get<RunEnd::Share>(job.bumpers[0].to.at).fraction == 0.5);
  CHECK(job.bumpers[1].to.side == "left");
  REQUIRE(job.brackets.size() == 2);
  CHECK(std::get<FromCorner>(job.brackets[0].at).distance == inches(9));
  CHECK(std::get<FromCorner>(job.brackets[0].at).neighbor == "right");
  CHECK(job.brackets[1].width == inches(2));
  CHECK(std::holds_alternative<SideShare>(job.brackets[1].at));
  CHECK(job.boards.thickness == inches(0.5));
  CHECK(job.padding.diameter == inches(2.375));
  CHECK(job.padding.core == Core::Unstated);
  CHECK(job.number == "007");
  CHECK(job.numerals.method == NumeralMethod::SewOn);
  CHECK(job.paper.width == inches(36));

  const Job metric = job_of({"700 mm x 760 mm", "", "4 corners", "", "", "", ""});
  CHECK(metric.units == Units::Millimeters);
  CHECK(metric.bumpers.size() == 4);
  CHECK(metric.paper.sheet == "a4");
  CHECK(metric.padding.core == Core::Solid);
  const Job block = job_of(but(kPadding, "18 mm x 127 mm, block 60 mm x 120 mm"));
  CHECK(block.padding.form == PaddingForm::Block);
  CHECK(block.padding.height == mm(120));
}

TEST_CASE("questions: what was not answered is not in the job") {
  const Job job = job_of({});
  CHECK(job.number.empty());
  CHECK(job.title.empty());
  CHECK(job.brackets.empty());
  CHECK(job.openings.empty());
  CHECK(job.bumpers.size() == 2);
  CHECK(job.season == newest_season());
  CHECK(new_job({}).value() == new_job(std::vector<std::string>(kQuestions, " ")).value());
  CHECK(new_job({}).value() == new_job_text());
}

TEST_CASE("questions: nonsense is told at its question, quoted, with what is expected") {
  for (std::size_t k = 0; k < kQuestions; ++k) {
    const std::string fault = fault_at(k, but(k, "blue cheese"));
    CAPTURE(fault);
    CHECK(fault.find("\"blue cheese\"") != std::string::npos);
    CHECK(fault.find("expected") != std::string::npos);
  }
  // All of them at once, in order.
  const auto all = new_job(std::vector<std::string>(kQuestions, "?"));
  REQUIRE_FALSE(all.has_value());
  CHECK(all.error().size() == kQuestions);
  CHECK(std::ranges::is_sorted(all.error(), {}, [](const Refusal& f) { return f.place.line; }));
}

// The newest season's values: 5 in covered beside each corner, boards at least 4 1/2 in high and at
// most 1 1/4 in past the frame, padding at least 2 1/4 in deep, no hollow noodles.
TEST_CASE("questions: what does not go is told with what would") {
  REQUIRE(newest_season() == "2026");
  // 28 - 2 x (5 + 1/4) = 17 1/2
  CHECK(fault_at(kOpening, but(kOpening, "front 20 in")).ends_with("like front 17 1/2 in"));
  CHECK(new_job(but(kOpening, "front 17 1/2 in")).has_value());
  CHECK(fault_at(kOpening, but(kOpening, "front 17 3/4 in")).find("3 in to 17 1/2 in") !=
        std::string::npos);
  CHECK(fault_at(kOpening, {"12 in x 30 in", "front 4 in"}).find("expected none") !=
        std::string::npos);
  CHECK(fault_at(kBumpers, but(kBumpers, "1")).find("ring") != std::string::npos);
  CHECK(fault_at(kBumpers, {"", "front 10 in", "4 sides"}).find("4 corners") != std::string::npos);
  CHECK(fault_at(kPadding, but(kPadding, "3/4 in x 4 in, 2 1/2 in solid"))
            .find("boards 4 in high, expected 4 1/2 in") != std::string::npos);
  CHECK(fault_at(kPadding, but(kPadding, "3/4 in x 5 in, 2 1/2 in hollow"))
            .find("not allowed in 2026") != std::string::npos);
  CHECK(fault_at(kPadding, but(kPadding, "3/4 in x 5 in, 2 in solid"))
            .find("foam 2 in deep, expected 2 1/4 in") != std::string::npos);
  CHECK(fault_at(kFrame, but(kFrame, "700 x 760")).find("710 mm") != std::string::npos);
  const auto bracket = [](const char* answer) {
    return fault_at(kBrackets, but(kBrackets, answer));
  };
  CHECK(bracket("left 9 in from back, 3 in x 6 in").find("does not go on a board") !=
        std::string::npos);
  CHECK(bracket("left 29 in from back, 3 in x 2 in").find("reaches past") != std::string::npos);
  CHECK(bracket("left 9 in from right, 3 in x 2 in").find("no corner with right") !=
        std::string::npos);
  CHECK(bracket("front middle, 3 in x 2 in").find("bumpers end in the middle") !=
        std::string::npos);
  CHECK(bracket("left middle, 3 in x 2 in; left 14 in from front, 3 in x 2 in")
            .find("on each other") != std::string::npos);
}

TEST_CASE("kinds: every example of a kind, without its title, number and brackets") {
  std::vector<std::string> names;
  for (const auto& path : test::example_jobs())
    if (path.parent_path().filename() == "kinds") names.push_back(path.stem().string());
  CHECK(job_kinds() == names);
  for (const std::string& kind : names) {
    CAPTURE(kind);
    const std::string text = new_job_like(kind).value();
    Job mine = read(text), example = read(test::bytes_of(test::example("kinds/" + kind)));
    CHECK(mine.title.empty());
    CHECK(mine.number.empty());
    CHECK(mine.brackets.empty());
    CHECK(text.find("20486") == std::string::npos);
    CHECK(text.find("Heron") == std::string::npos);
    example.title.clear();
    example.number.clear();
    CHECK(text.find("# [numerals]") != std::string::npos);  // of use with a number alone
    example.numerals = {};
    CHECK(job_text(mine) == job_text(example));  // all else is the example's
  }
  const auto unknown = new_job_like("hexagn");
  REQUIRE_FALSE(unknown.has_value());
  CHECK(unknown.error()[0].sentence.find("the nearest is \"hexagon\"") != std::string::npos);
}

}  // namespace swathe
