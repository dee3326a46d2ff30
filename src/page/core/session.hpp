#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "page/core/json.hpp"
#include "swathe/make.hpp"
#include "swathe/write.hpp"

namespace swathe::page {

/// What a page holds between calls: the files that jobs name, what was opened and measured for
/// earlier jobs, and the job that is open. All of it can be made anew from the text and the files.
class Session {
 public:
  std::map<std::string, std::string> files;  ///< bytes by name
  OpenFonts fonts;
  KeptDigits kept;

  /// The open job; throws std::runtime_error where there is none.
  const Made& made() const;
  /// The same, or where the last one that was asked for could not be made, the one before.
  const Made& last_made() const;
  /// Another takes its place, and what was drawn of the last one is put away.
  void open(Made made);
  void close();

  const Font& labels();
  const std::vector<ListedSheet>& sheets();
  const PrintWays& ways();
  /// A sheet with its pages, which stay until another is asked for. Throws where there is none.
  const Sheet& sheet(const std::string& stem);

  /// A job's files one after another: those that were made so far.
  struct Making {
    JobFiles files;
    std::string created;
    std::vector<MadeFile> made = {};
  };
  std::optional<Making> making;

 private:
  std::unique_ptr<const Made> made_;  ///< stays where it is: `making` refers to it
  std::unique_ptr<const Made> last_;  ///< where none is open
  std::optional<Font> labels_;
  std::optional<std::vector<ListedSheet>> sheets_;
  std::optional<PrintWays> ways_;
  std::optional<Sheet> sheet_;
};

/// The files that a job names, of those that were given.
NamedFiles files_for(const Session& session, std::string_view text);

/// `request`: {"file": the name that stands in places, "advice": whether what would mend things is
/// looked for, true where it is not said}. Says {"title", "number", "season", "units", "bumpers",
/// "notices"}. Refuses as make(); then no job is open.
Outcome<Answer> open_job(Session& session, std::string_view text, const Json& request);

}  // namespace swathe::page
