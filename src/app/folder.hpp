#pragma once

#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "handle.hpp"

namespace swathe::app {

/// A folder held open: what is done in it happens there, wherever its name points to meanwhile.
class Folder {
 public:
  /// Opens the folder, making it and those above it where they are missing. The error is a
  /// sentence.
  static tl::expected<Folder, std::string> make(const std::string& path);
  Folder(Folder&&) = default;
  ~Folder();  ///< takes back the folders it made, unless kept

  int get() const { return handle_.get(); }
  /// The folder's name and a file in it, for people: escaped.
  std::string named(const std::string& file) const;
  void keep() { made_.clear(); }

 private:
  Folder() = default;
  std::string path_;
  Handle handle_;
  std::vector<std::string> made_;  ///< outermost first
};

}  // namespace swathe::app
