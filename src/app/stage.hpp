#pragma once

#include <sys/stat.h>

#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "folder.hpp"
#include "handle.hpp"

namespace swathe::app {

/// The hidden folder in which files are written before they are moved to their places. It is locked
/// while its run lives; the destructor removes it with everything that is still in it.
class Stage {
 public:
  /// Removes what killed runs left behind, known by the mark that they set in it, then makes a
  /// stage of its own. Requires: the folder outlives the stage. The error is a sentence.
  static tl::expected<Stage, std::string> open(const Folder& folder);
  Stage(Stage&& other) noexcept;
  ~Stage();

  /// Writes a file and flushes it to the disk. The error is a sentence.
  tl::expected<void, std::string> write(const std::string& name, const std::string& bytes);
  /// Gives a written file another's permissions, and its owner where we may. Error: errno.
  int make_like(const std::string& name, const struct stat& other);
  /// Moves a written file to its place in the folder, over what is there. Error: errno.
  int move_over(const std::string& name) { return move_over(name, name); }
  /// The same under another name.
  int move_over(const std::string& name, const std::string& as);
  /// The same where nothing is there; EEXIST where something is.
  int move_new(const std::string& name);

 private:
  explicit Stage(const Folder& folder) : folder_(&folder) {}
  /// A new file in the stage, whole and on the disk. 0, or errno.
  int put(const std::string& name, std::string_view bytes);

  const Folder* folder_;
  std::string name_;
  Handle handle_;
  std::vector<std::string> begun_;  ///< files, listed beforehand: tidying up takes no memory
};

}  // namespace swathe::app
