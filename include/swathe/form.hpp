#pragma once

// A job as a form shows it and changes it: what each key holds, how its keys stand, what was typed
// into a field, and what a handle that was moved comes to.

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/make.hpp"

namespace swathe {

/// What a key holds, for a field that asks for it.
struct KeyForm {
  enum class Kind {
    Length,
    Lengths,  ///< a list of them
    Points,   ///< a list of lists of lengths
    Angle,
    Number,
    Count,  ///< a whole number
    Flag,
    Text,
    Digits,
    Choice,
    Color,
    Colors,  ///< names, a color each
    Axes,    ///< names, a number each
    Names,
    Side,
    Sides,
    Bumper,
    End,     ///< a side, and a place along it
    OnSide,  ///< a place along a side that another key names
    Paper,
  };
  std::string key;  ///< "cloth.flap"; of one in [[bumper]] "bumper.from"
  std::string_view label;
  Kind kind = Kind::Text;
  /// Of a length and what has lengths in it mm, of an angle degrees, of a text characters; none
  /// where nothing but `words` may stand.
  std::optional<std::pair<double, double>> range;
  std::string_view unit;                      ///< of a number: "g"; empty for a share
  std::vector<std::string_view> words;        ///< of a choice all, else what may stand instead
  std::optional<std::pair<int, int>> counts;  ///< how many there may be in a list
};
/// "side-place"
std::string_view to_text(KeyForm::Kind kind);

/// Every key there is, in the order of key_words().
std::vector<KeyForm> key_forms();

/// A table of the job that may be there many times: [[bumper]].
struct TableForm {
  std::string_view path;
  int least = 0, most = 0;  ///< how many of it
};
std::vector<TableForm> table_forms();

/// A key of a job as it stands.
struct Field {
  std::string key;     ///< as set_value() takes it: "bumper.2.from"
  std::string form;    ///< the key of its KeyForm: "bumper.from"
  bool given = false;  ///< it stands in the text
  /// TOML, as in the text; else the default, and empty where there is none.
  std::string value;
  std::string shown;  ///< a text without its quotes, else as `value`
  Place place{};      ///< of the value in the text; of no line where it is not given
};

/// All keys of a job in the order of the new job, those of each bumper, bracket and the like one
/// after another; of keys that say the same in two ways those that this job says it with.
///
/// Holds (fields_test.cpp): (1) set_value() of any key to its `value` changes nothing in what the
///   job reads as; (2) each key that a job gives is there, with the text as it is in the file.
/// Refuses: what parse_toml refuses of the text.
Outcome<std::vector<Field>> fields_of(std::string_view text, const std::string& file = "job");

/// What somebody typed into a field.
struct Typed {
  std::string value;  ///< TOML, for set_value(); empty: to be taken out
  std::string
      reads;  ///< what it was read as, "28 1/2 in = 723.9 mm"; empty where that says nothing
};

/// Reads what was typed for a key of a job: a length with any unit or none, a name with or without
/// quotes, a list with or without brackets. `steps` are added to a length (of 1/16 in or 1 mm each,
/// from the next that is whole), an angle (of 1 deg), a number (of 1) or a count.
///
/// Holds (typed_test.cpp): (1) a length's value has its unit, so that it stays when the job's units
///   change; (2) what is refused is what read_job() refuses of it there.
/// Refuses: what set_value() and read_job() refuse of this key; other faults of the job are not
/// its.
Outcome<Typed> typed_value(std::string_view text, std::string_view key, std::string_view typed,
                           int steps = 0, const std::string& file = "job");

/// A handle's new place in the job's text.
struct Moved {
  std::string text;
  std::vector<KeyChange> changes;  ///< one of no value: the key is taken out
  Length distance;                 ///< as snapped and kept within the handle's limits
  std::string words;               ///< "12 1/4 in from the corner of front and left"
};

enum class Snap {
  Coarse,  ///< to 1/4 in or 5 mm, for a hand that drags
  Fine,    ///< to 1/16 in or 1 mm
};

/// The text of a job in which what `shows` names stands at another distance, as screen::Handle has
/// it. Both bumpers' ends at a gap move as one; of a number that was placed by rule the places of
/// all are written.
///
/// Requires: `made` is what `text` makes.
/// Holds (moved_test.cpp): (1) the new text makes the handle with that distance; (2) nothing else
/// of
///   the text is changed; (3) it is on a whole step, a fine one beside a limit.
/// Refuses: UnknownName (nothing that can be moved is named so); what set_value() refuses.
Outcome<Moved> moved(const Made& made, std::string_view text, std::string_view shows, Length to,
                     Snap snap = Snap::Coarse, const std::string& file = "job");

/// The same for what a key places, which stays where it is, to a fine step: its "50%" becomes
/// ["14 in", "left"], at a gap for both bumpers.
///
/// Requires: `made` is what `text` makes.
/// Refuses: UnknownName (the key places nothing that can be moved); what set_value() refuses.
Outcome<Moved> from_corner(const Made& made, std::string_view text, std::string_view key,
                           const std::string& file = "job");

}  // namespace swathe
