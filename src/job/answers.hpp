#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "job/new_job.hpp"
#include "swathe/job.hpp"

// What somebody answers who starts a job: each answer read by itself, in everyday words.
namespace swathe {

struct FrameAnswer {
  Length width = inches(28), depth = inches(30);
  Units units = Units::Inches;  ///< that it was told in
};
/// "28 in x 30 in", "700 by 760 mm".
std::optional<FrameAnswer> read_frame_answer(std::string_view text);

struct OpeningAnswer {
  std::string side;
  Length width;
};
/// "front 17 in", "17 in left".
std::optional<OpeningAnswer> read_opening_answer(std::string_view text, Units units);

enum class BumperSet { One, Halves, Sides, Corners };
/// "1", "2", "4 sides", "4 corners".
std::optional<BumperSet> read_bumpers_answer(std::string_view text);

struct BracketAnswer {
  std::string side;
  std::optional<Length> from_corner;  ///< to its nearer edge; nothing: centered
  std::string neighbor;               ///< the side at that corner
  Length width, height;
};
/// "left 9 in from front, 3 in x 2 in; right middle, 3 in x 2 in".
std::optional<std::vector<BracketAnswer>> read_brackets_answer(std::string_view text, Units units);

struct PaddingAnswer {
  Length board_thickness = BoardKeys().thickness, board_height = BoardKeys().height;
  PaddingForm form = PaddingForm::Noodles;
  Length size = PaddingKeys().diameter;  ///< diameter of a noodle, depth of a block
  Length block_height;                   ///< of a block
  Core core = Core::Unstated;
};
/// "23/32 in x 5 in, noodles 2 1/2 in solid", "18 mm x 127 mm, block 60 mm x 120 mm".
std::optional<PaddingAnswer> read_padding_answer(std::string_view text, Units units);

struct NumberAnswer {
  std::string number;
  NumeralMethod method = NumeralMethod::Stencil;
};
/// "20486 stencil", "7 iron-on".
std::optional<NumberAnswer> read_number_answer(std::string_view text);

struct PaperAnswer {
  std::string sheet = office_paper(Units::Inches).name;  ///< of the paper list, or "roll"
  std::optional<Length> width;                           ///< of a roll
};
/// "letter", "A4", "roll 36 in".
std::optional<PaperAnswer> read_paper_answer(std::string_view text, Units units);

/// All of them, as they are read.
struct Answers {
  FrameAnswer frame;
  std::optional<OpeningAnswer> opening;
  BumperSet bumpers = BumperSet::Halves;
  std::vector<BracketAnswer> brackets;
  PaddingAnswer padding;
  std::optional<NumberAnswer> number;
  PaperAnswer paper;
};

// The sides of a rectangle by number, counter-clockwise from the front; 4 is the front again.
std::size_t side_number(std::string_view side);
std::string side_name(std::size_t number);
Length side_length(const FrameAnswer& frame, std::size_t number);

/// The new job that they come to. Requires: answers that go with one another.
NewJob job_of_answers(const Answers& answers);

/// "none", "no": there is none of what was asked for.
bool says_none(std::string_view text);

}  // namespace swathe
