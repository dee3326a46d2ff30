#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

// What a run wrote into a folder, kept there for the next run: it may then delete what it no longer
// makes, and nothing else.
namespace swathe::app {

inline constexpr const char* kRecordName = ".swathe-files";

struct RecordedFile {
  std::string name;
  std::string kind;    ///< "tiles"
  std::string sha256;  ///< 64 hexadecimal digits, in small letters

  friend bool operator==(const RecordedFile&, const RecordedFile&) = default;
};

/// A name may be there more than once: a run that was killed leaves both what was to be replaced
/// and what was to replace it.
using Record = std::vector<RecordedFile>;

/// As a text that `sha256sum --check` reads, too: kinds stand in comments.
std::string record_text(const Record& record);

/// Nothing where the text is no record, in every line: a stranger's file is never half believed.
/// Names that lead out of the folder, or are hidden, make it none.
///
/// Holds (record_test.cpp): (1) read_record(record_text(record)) is the record.
std::optional<Record> read_record(std::string_view text);

}  // namespace swathe::app
