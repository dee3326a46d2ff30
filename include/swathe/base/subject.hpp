#pragma once

#include <initializer_list>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace swathe {

/// A part of the model: what a mark shows, what a finding is about.
///
/// As text it is words between dots: "side.left", "bumper.A.corner.front.left", "bracket.2". A name
/// that a job is free to choose stands there escaped: letters and digits of ASCII, '-', '_' and all
/// bytes past ASCII as they are, any other byte as '%' and two hexadecimal digits (as RFC 3986, 2.1
/// writes it). So no name has a dot, a blank or a quote, and subjects may stand in a row, a blank
/// between each two.
struct Subject {
  enum class Kind {
    Frame,         ///< "frame"
    Side,          ///< "side.left", of the frame
    Corner,        ///< "corner.front.left", of the frame, by the sides that meet there
    Bumpers,       ///< "bumpers": all of one set
    Bumper,        ///< "bumper.A"
    Start,         ///< "bumper.A.start": its first end, counter-clockwise
    End,           ///< "bumper.A.end"
    BumperCorner,  ///< "bumper.A.corner.front.left": where it turns
    Board,         ///< "bumper.A.board.front": what it has of boards on that side
    PaddingPiece,  ///< "bumper.A.padding.front"
    Boards,        ///< "boards": what all of them have alike
    Padding,       ///< "padding"
    Cloth,         ///< "cloth"
    ClothOfColor,  ///< "cloth.red"
    Bracket,       ///< "bracket.2", counted from 1 as in the job
    Numerals,      ///< "numerals": the number, wherever it stands
    Numeral,       ///< "numeral.1": in one place (PlacedNumeral::place)
    Digit,         ///< "digit.4"
    Blind,         ///< "blind.1": what hides cloth, counted from 1 as in the job
    Rule,          ///< "rule.R406"
  };

  Kind kind = Kind::Frame;
  std::vector<std::string> names;  ///< those of its text, in order, not escaped
  int number = 0;                  ///< of a kind that is counted; from 1

  static Subject frame() { return {Kind::Frame, {}, 0}; }
  static Subject side(std::string name) { return {Kind::Side, {std::move(name)}, 0}; }
  static Subject corner(std::string before, std::string after) {
    return {Kind::Corner, {std::move(before), std::move(after)}, 0};
  }
  static Subject bumpers() { return {Kind::Bumpers, {}, 0}; }
  static Subject bumper(std::string name) { return {Kind::Bumper, {std::move(name)}, 0}; }
  static Subject end(std::string bumper, bool start) {
    return {start ? Kind::Start : Kind::End, {std::move(bumper)}, 0};
  }
  static Subject bumper_corner(std::string bumper, std::string before, std::string after) {
    return {Kind::BumperCorner, {std::move(bumper), std::move(before), std::move(after)}, 0};
  }
  static Subject board(std::string bumper, std::string side) {
    return {Kind::Board, {std::move(bumper), std::move(side)}, 0};
  }
  static Subject padding_piece(std::string bumper, std::string side) {
    return {Kind::PaddingPiece, {std::move(bumper), std::move(side)}, 0};
  }
  static Subject boards() { return {Kind::Boards, {}, 0}; }
  static Subject padding() { return {Kind::Padding, {}, 0}; }
  static Subject cloth() { return {Kind::Cloth, {}, 0}; }
  static Subject cloth_of(std::string color) { return {Kind::ClothOfColor, {std::move(color)}, 0}; }
  static Subject bracket(int number) { return {Kind::Bracket, {}, number}; }
  static Subject numerals() { return {Kind::Numerals, {}, 0}; }
  static Subject numeral(int number) { return {Kind::Numeral, {}, number}; }
  static Subject digit(char digit) { return {Kind::Digit, {std::string(1, digit)}, 0}; }
  static Subject blind(int number) { return {Kind::Blind, {}, number}; }
  static Subject rule(std::string name) { return {Kind::Rule, {std::move(name)}, 0}; }

  friend bool operator==(const Subject&, const Subject&) = default;
};

/// Holds (subject_test.cpp): (1) parse_subject(to_text(subject)) is the subject, whatever its
///   names; (2) two subjects that differ have texts that differ.
std::string to_text(const Subject& subject);
/// Nothing where the text is no subject.
std::optional<Subject> parse_subject(std::string_view text);

/// What a mark shows. Copies share one list: a cover has a thousand staples.
class Subjects {
 public:
  Subjects() = default;
  // A mark shows one part as a rule.
  Subjects(Subject one) : Subjects(std::vector<Subject>{std::move(one)}) {}  // NOLINT
  Subjects(std::initializer_list<Subject> list) : Subjects(std::vector<Subject>(list)) {}
  explicit Subjects(std::vector<Subject> list);

  bool empty() const { return !list_; }
  const std::vector<Subject>& list() const;
  auto begin() const { return list().begin(); }
  auto end() const { return list().end(); }

  friend bool operator==(const Subjects& a, const Subjects& b) { return a.list() == b.list(); }

 private:
  std::shared_ptr<const std::vector<Subject>> list_;  ///< null where there are none
};

/// In a row, a blank between each two.
std::string to_text(const Subjects& subjects);

}  // namespace swathe
