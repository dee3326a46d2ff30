#pragma once

#include <functional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "interrupts.hpp"
#include "old_files.hpp"

// Files reach the disk whole or not at all.
//
// Every byte is made first, in memory. Then all files are written and flushed in a hidden folder
// of our own (".swathe-stage-...") inside the folder they are meant for, so that a full disk shows
// before anything of the user's is touched. Last each is renamed to its place, which a file system
// does in one step: at every moment the place holds the old file whole or the new one whole. A
// nameless file (O_TMPFILE) would be hidden better, but linking it cannot replace an old file.
//
// Trouble on the way, or an interrupt (SIGINT, SIGTERM, SIGHUP, SIGQUIT: held back until we have
// tidied), takes the hidden folder away again. Only a run that is killed outright leaves it; its
// owner holds a lock on it that dies with it, so the next run can tell such a folder from that of
// a run still at work, and removes it; it knows it for one of ours by a file in it, our mark.
namespace swathe::app {

struct OutputFile {
  std::string name;  ///< in its folder: not empty, no '/'
  std::string bytes;
  std::string kind{};  ///< what a record says of it
};

/// Why files could not be written, in one line with the name of what is in the way.
struct Trouble {
  std::string sentence;
  bool exists = false;  ///< put_new_file only: something is there already
};

/// Writes all files into the folder, which is made where it is missing; each replaces a file of
/// that name.
///
/// Trouble: the folder cannot be made, opened or written; a link, folder, device or read-only file
/// stands in a file's place; the disk is full. Nothing is replaced then, but for a rename that
/// fails after others have been done (the sentence says so). An interrupt that waits is one, too.
tl::expected<void, Trouble> put_files(const std::string& folder,
                                      const std::vector<OutputFile>& files,
                                      const HeldInterrupts& interrupts);

/// The same, with a record beside them of what was written (record.hpp). Files of earlier runs that
/// the record has, of a kind that this run makes (`makes`), and that are not among its own, are
/// deleted if nobody has changed them.
///
/// A run that is killed at any moment leaves a record that has both what was there and what it
/// meant to write, so that the next one knows of all of them.
tl::expected<Deleted, Trouble> put_set(const std::string& folder,
                                       const std::vector<OutputFile>& files,
                                       const std::function<bool(const std::string&)>& makes,
                                       const HeldInterrupts& interrupts);

/// Writes a file over the one that is there, which keeps its permissions, and its owner where we
/// may. A link is followed: what it leads to is changed. Trouble: as above.
tl::expected<void, Trouble> replace_file(const std::string& path, const std::string& bytes);

/// Writes one file where there is nothing yet. Trouble: as above, and where something is there.
tl::expected<void, Trouble> put_new_file(const std::string& path, const std::string& bytes);

}  // namespace swathe::app
