#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "base/print.hpp"
#include "job/answers.hpp"
#include "job/limits.hpp"
#include "job/new_job.hpp"
#include "swathe/job.hpp"
#include "swathe/rules.hpp"

// The seven questions, and what their answers come to.
namespace swathe {
namespace {

enum Question { kFrame, kOpening, kBumpers, kBrackets, kPadding, kNumber, kPaper, kQuestions };

constexpr LengthRange kUsualFrame{inches(8), inches(120)};
constexpr Length kLeastOpening = inches(3);  // less is a gap
constexpr Length kSpare = inches(1.0 / 4);   // room for a saw and a tape measure
constexpr Length kAroundEnd = inches(1);     // of a bracket from where a bumper ends
/// Longer by more than what a sum of decimals is off.
bool longer(Length a, Length b) { return a > b + mm(1e-6); }

/// The answers read one after another, each by those before it, with what is
/// wrong in them.
class Reading {
 public:
  explicit Reading(const std::vector<std::string>& answers) : answers_(answers) {
    const auto season = bundled_season(newest_season());
    if (season) season_ = *season;
    read_frame();
    read_opening();
    read_bumpers();
    read_padding();  // before the brackets, which lie on the boards
    read_brackets();
    read_number();
    read_paper();
  }

  Refusals faults() const {
    Refusals sorted = faults_;
    std::ranges::stable_sort(sorted, {}, [](const Refusal& fault) { return fault.place.line; });
    return sorted;
  }
  /// An example in the units of the frame's answer.
  std::string in_units(const char* inches, const char* metric) const {
    return read_.frame.units == Units::Inches ? inches : metric;
  }
  std::string usual(Question question) const {
    switch (question) {
      case kFrame:
        return "28 in x 30 in";
      case kBumpers:
        return read_.opening ? "1" : "2";
      case kPadding:
        return in_units("23/32 in x 5 in, noodles 2 1/2 in solid",
                        "18 mm x 127 mm, noodles 64 mm solid");
      case kPaper:
        return office_paper(read_.frame.units).name;
      default:
        return "none";
    }
  }
  const Answers& read() const { return read_; }

 private:
  std::string answer(Question question) const {
    const auto number = static_cast<std::size_t>(question);
    const std::string given = number < answers_.size() ? answers_[number] : "";
    return given.find_first_not_of(" \t") == std::string::npos ? usual(question) : given;
  }
  void fault(Question question, Why why, std::string sentence) {
    faults_.push_back({why, std::move(sentence), {"answers", static_cast<int>(question) + 1, 1}});
  }
  void not_understood(Question question, std::string_view expected) {
    fault(
        question, Why::Malformed,
        fmt::format("\"{}\" is not understood, expected {}", clip(answer(question), 60), expected));
  }
  std::string size(Length length) const { return exact(length, read_.frame.units); }
  Length length_of(std::size_t side) const {
    return side % 2 == 0 ? read_.frame.width : read_.frame.depth;
  }
  /// What this frame's units show of a length: down to 1/4 in or 5 mm.
  std::string at_most(Length length) const {
    const Length step = read_.frame.units == Units::Inches ? inches(1.0 / 4) : mm(5);
    return size(std::floor(length / step + 1e-9) * step);
  }

  void read_frame();
  void read_opening();
  void read_bumpers();
  void read_padding();
  void judge_boards();
  void judge_foam();
  void read_brackets();
  std::string fault_of_bracket(const BracketAnswer& bracket, std::size_t number) const;
  double from_of(const BracketAnswer& bracket) const;
  void read_number();
  void read_paper();

  const std::vector<std::string>& answers_;
  Season season_;
  Refusals faults_;
  Answers read_;
};

void Reading::read_frame() {
  const auto read = read_frame_answer(answer(kFrame));
  if (!read)
    return not_understood(kFrame,
                          "two lengths: left to right, then front to back, like "
                          "28 in x 30 in, or 710 mm x 760 mm");
  for (const Length length : {read->width, read->depth})
    if (longer(kUsualFrame.least, length) || longer(length, kUsualFrame.most))
      return fault(kFrame, Why::OutOfRange,
                   fmt::format("a side of {} is no frame, expected {} to {}; give the unit too, "
                               "like 28 in x 30 in, or 710 mm x 760 mm",
                               exact(length, read->units), exact(kUsualFrame.least, read->units),
                               exact(kUsualFrame.most, read->units)));
  read_.frame = *read;
}

void Reading::read_opening() {
  if (says_none(answer(kOpening))) return;
  const auto read = read_opening_answer(answer(kOpening), read_.frame.units);
  if (!read)
    return not_understood(kOpening,
                          "none, or a side and how wide the opening is, like front 14 in");
  // What the season wants covered beside each corner, along the frame.
  Length beside;
  if (season_.cover_larger_gap) beside = std::max(beside, season_.cover_larger_gap->value);
  if (season_.cover_reach) beside = std::max(beside, season_.cover_reach->value);
  const Length side = length_of(side_number(read->side));
  const Length most = side - 2.0 * (beside + kSpare);
  if (longer(kLeastOpening, most))
    return fault(kOpening, Why::OutOfRange,
                 fmt::format("the {} side is {} long and needs {} covered beside each corner: "
                             "there is no room for an opening, expected none",
                             read->side, size(side), size(beside)));
  if (longer(read->width, most) || longer(kLeastOpening, read->width))
    return fault(kOpening, Why::OutOfRange,
                 fmt::format("an opening of {} does not go into the {} side, "
                             "which is {} long and "
                             "needs {} covered beside each corner, expected {} "
                             "to {}, like {} {}",
                             size(read->width), read->side, size(side), size(beside),
                             size(kLeastOpening), at_most(most), read->side, at_most(most)));
  read_.opening = *read;
}

void Reading::read_bumpers() {
  const auto read = read_bumpers_answer(answer(kBumpers));
  if (!read) return not_understood(kBumpers, "1, 2, 4 sides or 4 corners");
  if (*read == BumperSet::One && !read_.opening)
    return fault(kBumpers, Why::OutOfRange,
                 "one bumper with no opening is a ring that does not go on, "
                 "expected 2, 4 sides "
                 "or 4 corners");
  if (*read == BumperSet::Sides && read_.opening)
    return fault(kBumpers, Why::OutOfRange,
                 fmt::format("with an opening on the {} side there are two "
                             "bumpers on it, expected "
                             "1, 2 or 4 corners",
                             read_.opening->side));
  read_.bumpers = *read;
}

void Reading::read_padding() {
  const auto read = read_padding_answer(answer(kPadding), read_.frame.units);
  const std::string usual_answer = usual(kPadding);
  if (!read)
    return not_understood(kPadding, fmt::format("the board, thickness x height, then the foam, "
                                                "like {}; or hollow in "
                                                "place of solid; or block 2 1/2 in x 5 in",
                                                usual_answer));
  read_.padding = *read;
  judge_boards();
  judge_foam();
}

// What the newest season asks of them, so that nobody saws boards that do not
// pass.
void Reading::judge_boards() {
  const Length thickness = read_.padding.board_thickness, height = read_.padding.board_height;
  Length least = kBoardHeight.least, most = kBoardThickness.most;
  if (season_.backing_height) least = std::max(least, season_.backing_height->value);
  if (season_.hard_parts_past_frame)
    most = std::min(most, season_.hard_parts_past_frame->value - FrameKeys().fit);
  if (longer(least, height) || longer(height, inches(12)))
    fault(kPadding, Why::OutOfRange,
          fmt::format("boards {} high, expected {} to {}", size(height), size(least),
                      size(inches(12))));
  if (longer(inches(1.0 / 4), thickness) || longer(thickness, most))
    fault(kPadding, Why::OutOfRange,
          fmt::format("boards {} thick, expected {} to {}", size(thickness), size(inches(1.0 / 4)),
                      size(most)));
}

void Reading::judge_foam() {
  const bool noodles = read_.padding.form == PaddingForm::Noodles;
  const Length foam = read_.padding.size;
  const Length height = noodles ? 2.0 * foam : read_.padding.block_height;
  Length least = inches(1), most = inches(6), lowest = inches(2);
  if (season_.padding_depth) least = std::max(least, season_.padding_depth->value);
  if (season_.extension_most)
    most = std::min(most, season_.extension_most->value - FrameKeys().fit -
                              read_.padding.board_thickness - 2.0 * ClothKeys().thickness);
  if (season_.padding_height) lowest = std::max(lowest, season_.padding_height->value);
  if (longer(least, foam) || longer(foam, most))
    fault(kPadding, Why::OutOfRange,
          fmt::format("foam {} deep, expected {} to {} in front of boards that thick", size(foam),
                      size(least), at_most(most)));
  else if (longer(lowest, height) || longer(height, read_.padding.board_height + inches(1)))
    fault(kPadding, Why::OutOfRange,
          fmt::format("foam {} high in all, expected {} to {} on boards {} high", size(height),
                      size(lowest), size(read_.padding.board_height + inches(1)),
                      size(read_.padding.board_height)));
  if (read_.padding.core == Core::Hollow && noodles && season_.padding_hollow &&
      !season_.padding_hollow->value)
    fault(kPadding, Why::OutOfRange,
          fmt::format("noodles with a hole are not allowed in {}, expected solid ones",
                      season_.name));
}

/// Where a bracket begins along its side, counter-clockwise.
double Reading::from_of(const BracketAnswer& bracket) const {
  const std::size_t side = side_number(bracket.side);
  const Length length = length_of(side);
  if (!bracket.from_corner) return (0.5 * (length - bracket.width)).mm();
  if (bracket.neighbor == side_name(side + 3)) return bracket.from_corner->mm();
  return (length - *bracket.from_corner - bracket.width).mm();
}

std::string Reading::fault_of_bracket(const BracketAnswer& bracket, std::size_t number) const {
  const std::size_t side = side_number(bracket.side);
  const Length length = length_of(side);
  if (!bracket.neighbor.empty() && side_number(bracket.neighbor) % 2 == side % 2)
    return fmt::format("the {} side has no corner with {}, expected {} or {}", bracket.side,
                       bracket.neighbor, side_name(side + 1), side_name(side + 3));
  const double from = from_of(bracket), to = from + bracket.width.mm();
  if (from < -1e-6 || longer(mm(to), length))
    return fmt::format("a bracket {} wide there reaches past the {} side, which is {} long",
                       size(bracket.width), bracket.side, size(length));
  if (longer(bracket.height, read_.padding.board_height))
    return fmt::format("a bracket {} high does not go on a board {} high", size(bracket.height),
                       size(read_.padding.board_height));
  // Where bumpers end on this side.
  double half = -1;
  if (read_.opening && read_.opening->side == bracket.side)
    half = (0.5 * read_.opening->width + kAroundEnd).mm();
  else if (read_.bumpers == BumperSet::Corners)
    half = kAroundEnd.mm();
  else if (read_.bumpers == BumperSet::Halves) {
    const std::size_t split = read_.opening ? side_number(read_.opening->side) : 0;
    if (side % 2 == split % 2) half = kAroundEnd.mm();
  }
  const double middle = 0.5 * length.mm();
  if (half > 0 && from < middle + half && to > middle - half)
    return fmt::format(
        "bumpers end in the middle of the {} side, expected "
        "brackets {} from there",
        bracket.side, size(mm(half)));
  for (std::size_t k = 0; k < number; ++k) {
    const double other = from_of(read_.brackets[k]);
    if (read_.brackets[k].side == bracket.side && from < other + read_.brackets[k].width.mm() &&
        to > other)
      return fmt::format("two brackets lie on each other on the {} side", bracket.side);
  }
  return "";
}

void Reading::read_brackets() {
  if (says_none(answer(kBrackets))) return;
  constexpr std::string_view kLike = "left 9 in from front, 3 in x 2 in; right middle, 3 in x 2 in";
  const auto read = read_brackets_answer(answer(kBrackets), read_.frame.units);
  if (!read)
    return not_understood(
        kBrackets,
        fmt::format("none, or for each its place and its width x height, like {}", kLike));
  if (read->size() > static_cast<std::size_t>(swathe::kBrackets.most))
    return fault(
        kBrackets, Why::TooLarge,
        fmt::format("{} brackets, expected at most {}", read->size(), swathe::kBrackets.most));
  read_.brackets = *read;
  for (std::size_t k = 0; k < read_.brackets.size(); ++k)
    if (const std::string wrong = fault_of_bracket(read_.brackets[k], k); !wrong.empty())
      fault(kBrackets, Why::DoesNotFit, fmt::format("{}; such as {}", wrong, kLike));
}

void Reading::read_number() {
  if (says_none(answer(kNumber))) return;
  const auto read = read_number_answer(answer(kNumber));
  if (!read)
    return not_understood(kNumber,
                          "none, or 1 to 5 digits and stencil, iron-on, sew-on or paint-mask, "
                          "like 123 stencil");
  read_.number = *read;
}

void Reading::read_paper() {
  const auto read = read_paper_answer(answer(kPaper), read_.frame.units);
  const auto expected = [] {
    std::string names;
    for (const Paper& paper : papers()) names += paper.name + ", ";
    return names + "or roll 36 in";
  };
  if (!read) return not_understood(kPaper, expected());
  if (read->width && (*read->width < kPaperSize.least || *read->width > kPaperSize.most))
    return fault(kPaper, Why::OutOfRange,
                 fmt::format("a roll {} wide, expected {} to {}", size(*read->width),
                             size(kPaperSize.least), size(kPaperSize.most)));
  read_.paper = *read;
}

}  // namespace

std::vector<NewJobQuestion> new_job_questions(const std::vector<std::string>& answers) {
  const Reading reading(answers);
  std::vector<NewJobQuestion> questions = {
      {"How large is the frame? Give left to right, then front to back.",
       "26 1/2 in x 32 in, or 710 mm x 760 mm", ""},
      {"Does a side have an opening in its middle? Give the side, and how wide "
       "it is from cover to "
       "cover.",
       reading.in_units("front 14 in", "front 350 mm"), ""},
      {"How many bumpers? 1 (with an opening), 2 (halves), 4 sides, or 4 "
       "corners.",
       "4 corners", ""},
      {"Which brackets are on the boards? For each, give its place along the "
       "side and its width x "
       "height.",
       reading.in_units("left 9 in from front, 3 in x 2 in; right middle, 3 in x 2 in",
                        "left 230 mm from front, 75 mm x 50 mm; right middle, 75 mm x 50 "
                        "mm"),
       ""},
      {"Which boards and foam? Give the board's thickness x height, then the "
       "noodles: solid, or "
       "hollow (with a hole).",
       reading.in_units("1/2 in x 5 in, noodles 2 3/8 in solid",
                        "18 mm x 125 mm, noodles 60 mm solid"),
       ""},
      {"What is your team's number, and how is it put on? stencil, iron-on, "
       "sew-on or paint-mask.",
       "123 stencil", ""},
      {"Which paper does your printer take?", reading.in_units("tabloid, or roll 36 in", "a3"),
       ""}};
  for (std::size_t k = 0; k < questions.size(); ++k)
    questions[k].usual = reading.usual(static_cast<Question>(k));
  return questions;
}

Outcome<std::string> new_job(const std::vector<std::string>& answers) {
  const Reading reading(answers);
  if (Refusals faults = reading.faults(); !faults.empty()) return tl::unexpected(std::move(faults));
  return new_job_of(job_of_answers(reading.read()));
}

std::string_view new_job_text() {
  static const std::string text = new_job({}).value();
  return text;
}

}  // namespace swathe
