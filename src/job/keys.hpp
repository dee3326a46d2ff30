#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "job/limits.hpp"
#include "swathe/job.hpp"

// The one description of each key of a job. From it follow how a job is read, refused and written
// (each_key.hpp says which member of `Job` a key is), the job that `swathe new` writes, what
// `swathe explain` tells, how a value is put into a job's text, and the schema that editors read. A
// member's initializer is held to the default here by tests/job/new_job_test.cpp.
namespace swathe {

// What a key holds.
struct OfLength {
  LengthRange range;
};
struct OfLengths {  ///< a list of them
  CountRange count;
  LengthRange range;
};
struct OfLengthOr {  ///< a length, or a word
  std::vector<std::string_view> words;
  LengthRange range;
};
struct OfPoints {  ///< a list of points, each of so many lengths
  CountRange count;
  LengthRange range;
  int lengths = 0;
};
struct OfAngle {
  AngleRange range;
};
struct OfNumber {
  NumberRange range;
  std::string_view unit;  ///< empty for a share
};
struct OfCount {
  CountRange range;
};
struct OfFlag {};
struct OfText {
  int most = 0;           ///< characters
  bool or_whole = false;  ///< a whole number is taken too, as if it stood in quotes
};
struct OfDigits {  ///< in quotes, or bare where that cannot mean anything else
  int most = 0;
};
struct OfChoice {
  std::vector<std::string_view> words;
};
struct OfColor {};
struct OfColors {  ///< a table of names, a color each
  CountRange count;
  int most = 0;  ///< characters of a name
};
struct OfAxes {  ///< a table of four letters, a number each
  CountRange count;
  NumberRange range;
};
struct OfNames {  ///< a list of names
  CountRange count;
  int most = 0;  ///< characters of each
};
struct OfSide {};  ///< the name of a side of the frame
struct OfSides {   ///< a list of them
  CountRange count{0, kSides.most};
};
struct OfSidesOr {  ///< a list of them, or a word
  std::vector<std::string_view> words;
  CountRange count{0, kSides.most};
};
struct OfBumper {};  ///< the name of a bumper
struct OfEnd {       ///< a side, and a place along it or a word
  std::vector<std::string_view> words;
  LengthRange range;
};
struct OfSidePlace {  ///< a place along a side that another key names
  LengthRange range;
};
struct OfPaper {  ///< a paper's name, or its width and height
  LengthRange range;
};

using Holds = std::variant<OfLength, OfLengths, OfLengthOr, OfPoints, OfAngle, OfNumber, OfCount,
                           OfFlag, OfText, OfDigits, OfChoice, OfColor, OfColors, OfAxes, OfNames,
                           OfSide, OfSides, OfSidesOr, OfBumper, OfEnd, OfSidePlace, OfPaper>;

struct Key {
  std::string_view path;  ///< "cloth.flap", "bumper.from"
  Holds holds;
  Given given = Given::Needed;
  std::string_view value;  ///< the default, or an example, as it stands in a job
  std::string_view label;  ///< a word or few, for a form
  std::string_view meaning;
  std::string_view why;  ///< a sentence
  /// What a fault says is expected where the key is needed and missing; empty where only its reader
  /// knows.
  std::string_view needed = {};
};

/// Every key, in the order of the new job.
std::span<const Key> job_keys();
/// Null where there is none of that path.
const Key* find_key(std::string_view path);

struct KeyTable {
  std::string_view path;           ///< "cloth", "numerals.place"
  bool needed = false;             ///< no job is without
  std::optional<CountRange> many;  ///< so many of it, [[bumper]]
};

/// Every table of a job, in the order of the new job.
std::span<const KeyTable> job_tables();
/// How often a table may be there, [[bumper]]; nothing where it is there once.
std::optional<CountRange> times_allowed(std::string_view path);
/// The tables that may be there many times, [[bumper]].
std::span<const std::string_view> lists_of_tables();
/// Whether a table may be there many times.
bool is_list_of_tables(std::string_view path);

/// Whether a key's value is always a text in quotes; one that only may be, such as a length, is
/// not.
bool is_always_text(const Holds& holds);

}  // namespace swathe
