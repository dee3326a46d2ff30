#pragma once

// Lengths and angles with their units, outcomes and refusals, notices and findings.

#include <compare>
#include <initializer_list>
#include <memory>
#include <numbers>
#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <utility>
#include <vector>

namespace swathe {

/// A distance. Kept in millimeters; numbers enter and leave only by the name of their unit.
class Length {
 public:
  constexpr Length() = default;  ///< zero
  static constexpr Length from_mm(double mm) { return Length(mm); }
  static constexpr Length from_inches(double in) { return Length(in * kMmPerInch); }
  constexpr double mm() const { return mm_; }
  constexpr double inches() const { return mm_ / kMmPerInch; }

  friend constexpr auto operator<=>(Length, Length) = default;
  friend constexpr Length operator+(Length a, Length b) { return Length(a.mm_ + b.mm_); }
  friend constexpr Length operator-(Length a, Length b) { return Length(a.mm_ - b.mm_); }
  friend constexpr Length operator-(Length a) { return Length(-a.mm_); }
  friend constexpr Length operator*(double k, Length a) { return Length(k * a.mm_); }
  friend constexpr Length operator*(Length a, double k) { return Length(k * a.mm_); }
  friend constexpr Length operator/(Length a, double k) { return Length(a.mm_ / k); }
  friend constexpr double operator/(Length a, Length b) { return a.mm_ / b.mm_; }  ///< a ratio
  constexpr Length& operator+=(Length b) { return *this = *this + b; }
  constexpr Length& operator-=(Length b) { return *this = *this - b; }

 private:
  static constexpr double kMmPerInch = 25.4;  // exact by definition of the inch
  explicit constexpr Length(double mm) : mm_(mm) {}
  double mm_ = 0.0;
};

constexpr Length mm(double value) { return Length::from_mm(value); }
constexpr Length inches(double value) { return Length::from_inches(value); }

/// An angle. Kept in radians.
class Angle {
 public:
  constexpr Angle() = default;  ///< zero
  static constexpr Angle from_radians(double rad) { return Angle(rad); }
  static constexpr Angle from_degrees(double deg) { return Angle(deg * std::numbers::pi / 180.0); }
  static constexpr Angle from_arcmin(double arcmin) { return from_degrees(arcmin / 60.0); }
  constexpr double radians() const { return radians_; }
  constexpr double degrees() const { return radians_ * 180.0 / std::numbers::pi; }
  constexpr double arcmin() const { return degrees() * 60.0; }

  friend constexpr auto operator<=>(Angle, Angle) = default;
  friend constexpr Angle operator+(Angle a, Angle b) { return Angle(a.radians_ + b.radians_); }
  friend constexpr Angle operator-(Angle a, Angle b) { return Angle(a.radians_ - b.radians_); }
  friend constexpr Angle operator-(Angle a) { return Angle(-a.radians_); }
  friend constexpr Angle operator*(double k, Angle a) { return Angle(k * a.radians_); }
  friend constexpr Angle operator/(Angle a, double k) { return Angle(a.radians_ / k); }

 private:
  explicit constexpr Angle(double radians) : radians_(radians) {}
  double radians_ = 0.0;
};

constexpr Angle degrees(double value) { return Angle::from_degrees(value); }

/// The unit of bare numbers in a job, and of printed dimensions.
enum class Units { Inches, Millimeters };

/// Reads a length with its unit, or a bare number in `bare`.
///
/// Understands "32 1/4 in", "32.25in", "2 ft 8 1/4 in", `2' 8-1/4"`, "819 mm", "81.9 cm", "1 m",
/// "1/4 yd". One leading minus makes it negative. Does not depend on the locale. Nothing if the
/// text is not a length, or not finite.
std::optional<Length> parse_length(std::string_view text, Units bare);

/// Reads "90 deg", "15 arcmin", "0.5 rad"; a bare number is degrees.
std::optional<Angle> parse_angle(std::string_view text);

/// A length as it stands on a sheet, without its unit: a reduced fraction to the nearest 1/16 in
/// ("32 1/4", "0", "1/16"; halfway goes up in size), or millimeters to the nearest whole ("819").
std::string dimension(Length length, Units units);

/// The same with its unit: "32 1/4 in", "819 mm".
std::string dimension_with_unit(Length length, Units units);

/// A distance to walk, in feet or meters to a tenth: "60 ft", "18.3 m".
std::string walked(Length length, Units units);

/// A length of cloth, in yards to a sixteenth: "2 1/2 yd".
std::string yards(Length length);

/// A measured value for tables and findings: decimals enough to tell it from its limit
/// ("4.125 in", "104.8 mm").
std::string measured(Length length, Units units);

/// A length or a rule's value in words, exactly: "3 3/4 in" where it is a multiple of 1/64 in, else
/// as measured(); in millimeters to 1/100 ("95.25 mm").
std::string exact(Length length, Units units);

/// A number with at most `decimals` places, no trailing zeros, never "-0"; the same in any locale.
std::string plain_number(double value, int decimals);

/// Reads a decimal number that fills the whole text; the same in any locale.
std::optional<double> parse_number(std::string_view text);

/// An sRGB color, each channel 0 to 1.
struct Color {
  double red = 0, green = 0, blue = 0;
  friend constexpr bool operator==(const Color&, const Color&) = default;
};

/// Reads "#rrggbb" or "#rgb".
std::optional<Color> parse_color(std::string_view text);
/// "#rrggbb".
std::string to_text(const Color& color);

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

/// A key of a job and the value to give it, as set_value() takes them.
struct KeyChange {
  std::string key;    ///< "bumper.2.from", counted from 1
  std::string value;  ///< TOML

  friend bool operator==(const KeyChange&, const KeyChange&) = default;
};

/// A place in a text file. Lines and columns count from 1; a column counts bytes.
struct Place {
  std::string file;
  int line = 1;  ///< 0 where the file as a whole is meant
  int column = 1;
  /// The key of a job whose place it is, given or not: "bumper.2.from", counted from 1.
  std::string key{};
};

/// Why something cannot be made, for programs; people read the sentence beside it.
enum class Why {
  Malformed,     ///< not TOML, not a font, not a number: the text itself is wrong
  UnknownKey,    ///< a key or table nobody knows
  Missing,       ///< a required key or table is not there
  WrongType,     ///< a string where a table was wanted, and the like
  OutOfRange,    ///< a value outside its stated range
  UnknownName,   ///< a side, bumper, season, font or paper of that name does not exist
  NotSupported,  ///< known, but not built yet
  DoesNotFit,    ///< parts overlap, or do not fit where they are put
  ReflexCorner,  ///< a bumper cannot turn inwards
  BadFont,       ///< the font cannot be read, or has no usable digits
  TooLarge,      ///< beyond a stated limit of size or count
};

/// Something that cannot be made: what it is, what it measures, what would do instead.
struct Refusal {
  Why why = Why::Malformed;
  std::string sentence;           ///< without the place: "what is wrong, what was expected"
  Place place;                    ///< 1:1 of the file where nothing better is known
  std::vector<KeyChange> mend{};  ///< of keys, that would do; empty where none is known
};

using Refusals = std::vector<Refusal>;

/// A value, or every reason why there is none.
template <class T>
using Outcome = tl::expected<T, Refusals>;

inline tl::unexpected<Refusals> refuse(Why why, std::string sentence, Place place = {}) {
  return tl::unexpected<Refusals>(Refusals{Refusal{why, std::move(sentence), std::move(place)}});
}

/// "FILE:LINE:COL: sentence", the one form in which refusals are printed; one line, any file name.
std::string to_text(const Refusal& refusal);

/// A key of a job that has no effect. It is not a fault: everything is made as if it were not
/// there.
struct Notice {
  std::string key;       ///< as in `swathe explain`: "padding.depth"
  std::string sentence;  ///< the place is not in it: "has no effect: ..."
  Place place;
};

/// "FILE:LINE:COL: sentence", the one form in which notices are printed.
std::string to_text(const Notice& notice);

/// What a check came to.
enum class Verdict { Fail, Warn, Unknown, Pass };  // in the order in which people want to read them

/// How sure a rule's value is. Only what stands in an official text may pass or fail a job.
enum class Attested { Official, Inferred, Quoted, Unverified };

/// One rule held against what was made. Data, not an error: the drawing is still made.
struct Finding {
  std::string id;        ///< "numeral-height" and the like: the list is in the report's schema
  std::string rule;      ///< season and rule number, "2026 R412"; empty for our own advice
  std::string subject;   ///< what was looked at: "front numeral", "bumper A, left bracket"
  std::string required;  ///< in the job's units, in words
  std::string measured;  ///< in the job's units, in words
  Verdict verdict = Verdict::Unknown;
  Attested attested = Attested::Official;
  std::string advice;             ///< what would change the verdict; empty when it passes
  std::vector<Subject> subjects;  ///< the parts of the model it is about, the rule besides
  std::vector<std::string> keys;  ///< of the job that say them: "bumper.2.from"
  std::vector<KeyChange> mend;    ///< together they mend it; empty where none is known
};

std::string to_text(Verdict verdict);
std::string to_text(Attested attested);

}  // namespace swathe
