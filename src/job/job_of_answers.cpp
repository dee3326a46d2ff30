#include <fmt/format.h>

#include <cmath>

#include "job/answers.hpp"
#include "job/key_path.hpp"
#include "job/names.hpp"
#include "swathe/rules.hpp"

// What the answers come to, as keys of a job.
namespace swathe {
namespace {

class Filling {
 public:
  explicit Filling(const Answers& answers) : answers_(answers) {
    add_frame();
    add_padding();
    if (answers_.opening) add_opening(*answers_.opening);
    add_bumpers();
    for (const BracketAnswer& bracket : answers_.brackets) add_bracket(bracket);
    add_number();
  }
  NewJob job() && { return std::move(job_); }

 private:
  /// In the job's units, but where they would round it: 120 mm are no 4.724 in.
  std::string text(Length length) const {
    const std::string words = exact(length, answers_.frame.units);
    const auto again = parse_length(words, answers_.frame.units);
    const bool same = again && std::abs((*again - length).mm()) < 1e-6;
    return quoted_text(same ? words : exact(length, Units::Millimeters));
  }
  static std::string end(const std::string& side, const std::string& where) {
    return fmt::format("[{}, {}]", quoted_text(side), where);
  }

  void add_frame() {
    job_.values["job.season"] = quoted_text(newest_season());
    if (answers_.frame.units == Units::Millimeters) job_.values["job.units"] = "\"mm\"";
    job_.values["frame.width"] = text(answers_.frame.width);
    job_.values["frame.depth"] = text(answers_.frame.depth);
    job_.values["paper.sheet"] = quoted_text(answers_.paper.sheet);
    if (answers_.paper.width) job_.values["paper.width"] = text(*answers_.paper.width);
  }

  void add_padding() {
    const PaddingAnswer& padding = answers_.padding;
    job_.values["boards.thickness"] = text(padding.board_thickness);
    job_.values["boards.height"] = text(padding.board_height);
    if (padding.form == PaddingForm::Block) {
      job_.values["padding.form"] = "\"block\"";
      job_.values["padding.depth"] = text(padding.size);
      job_.values["padding.height"] = text(padding.block_height);
      return;
    }
    job_.values["padding.diameter"] = text(padding.size);
    if (padding.core != Core::Unstated)
      job_.values["padding.core"] = quoted_text(word_for(padding.core));
  }

  void add_bumper(const std::string& from, const std::string& to) {
    const std::string name(1, static_cast<char>('A' + job_.bumpers.size()));
    job_.bumpers.push_back({{"name", quoted_text(name)}, {"from", from}, {"to", to}});
  }

  /// The sides in whose middles bumpers end, counter-clockwise; the opening's
  /// first.
  std::vector<std::size_t> split_sides() const {
    const std::size_t first = answers_.opening ? side_number(answers_.opening->side) : 0;
    if (answers_.bumpers == BumperSet::One) return {first};
    if (answers_.bumpers == BumperSet::Halves) return {first, first + 2};
    return {first, first + 1, first + 2, first + 3};
  }

  void add_bumpers() {
    if (answers_.bumpers == BumperSet::Sides) {
      for (std::size_t side = 0; side < 4; ++side)
        add_bumper(end(side_name(side), "\"corner\""), end(side_name(side), "\"corner\""));
      return;
    }
    const std::vector<std::size_t> split = split_sides();
    for (std::size_t k = 0; k < split.size(); ++k)
      add_bumper(end_on(split[k]), end_on(split[(k + 1) % split.size()]));
  }

  /// Where bumpers end on a side: at its opening, or in its middle.
  std::string end_on(std::size_t side) const {
    const std::string name = side_name(side);
    const bool open = answers_.opening && answers_.opening->side == name;
    return end(name, open ? "\"opening\"" : "\"50%\"");
  }

  void add_opening(const OpeningAnswer& opening) {
    job_.openings.push_back({{"side", quoted_text(opening.side)}, {"width", text(opening.width)}});
  }

  void add_bracket(const BracketAnswer& bracket) {
    const std::string at = bracket.from_corner ? fmt::format("[{}, {}]", text(*bracket.from_corner),
                                                             quoted_text(bracket.neighbor))
                                               : "\"50%\"";
    job_.brackets.push_back({{"side", quoted_text(bracket.side)},
                             {"at", at},
                             {"width", text(bracket.width)},
                             {"height", text(bracket.height)}});
  }

  void add_number() {
    if (!answers_.number) return;
    job_.values["job.number"] = quoted_text(answers_.number->number);
    job_.values["numerals.method"] = quoted_text(word_for(answers_.number->method));
  }

  const Answers& answers_;
  NewJob job_;
};

}  // namespace

NewJob job_of_answers(const Answers& answers) { return Filling(answers).job(); }

}  // namespace swathe
