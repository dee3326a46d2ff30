#pragma once

#include <string>
#include <tl/expected.hpp>
#include <utility>
#include <vector>

#include "swathe/base/key_change.hpp"

namespace swathe {

/// A place in a text file. Lines and columns count from 1; a column counts bytes.
struct Place {
  std::string file;
  int line = 1;
  int column = 1;
  std::string
      key{};  ///< of a job, whose place it is, given or not: "bumper.2.from", counted from 1
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

}  // namespace swathe
