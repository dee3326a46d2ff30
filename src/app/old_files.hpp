#pragma once

#include <functional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "folder.hpp"
#include "record.hpp"

namespace swathe::app {

/// What earlier runs wrote into the folder; nothing where there is no record, or what has its name
/// is none of ours. The error is a sentence.
tl::expected<Record, std::string> recorded_in(const Folder& folder);

/// What becomes of a folder's files when a run puts its own there.
struct OldFiles {
  Record during;     ///< while it puts them there: all of before and all of its own
  Record after;      ///< once that is done
  Record to_delete;  ///< what it no longer makes
};
/// `makes` says whether the run makes files of that kind: others it leaves as they are.
OldFiles plan_old_files(const Record& before, const Record& fresh,
                        const std::function<bool(const std::string&)>& makes);

/// What came of it.
struct Deleted {
  std::vector<std::string> deleted;  ///< their names
  std::vector<std::string> changed;  ///< that somebody has changed since: they are left alone
  bool all_known = true;             ///< false where one could not be read or deleted
};
/// Deletes those plain files whose bytes are still those recorded. What is not there any more, or
/// is a link, a folder or read-only, is left alone.
Deleted delete_unchanged(const Folder& folder, const Record& files);

/// "deleted 2 files that this run no longer makes: A-fold.pdf, B-fold.pdf\n"; empty where nothing
/// is to be told.
std::string deleted_text(const Deleted& deleted);

}  // namespace swathe::app
