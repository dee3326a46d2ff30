#include "folder.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>

#include "text.hpp"

namespace swathe::app {
namespace {

bool is_folder(const std::string& path) {
  struct stat info {};
  return ::stat(path.c_str(), &info) == 0 && S_ISDIR(info.st_mode);
}

std::string not_made(const std::string& path, int error) {
  struct stat info {};
  if (::lstat(path.c_str(), &info) == 0 && !S_ISDIR(info.st_mode))
    return fmt::format("{} is {}, a folder was expected", named(path),
                       S_ISLNK(info.st_mode) ? "a link that leads to no folder" : "a file");
  return fmt::format("the folder {} cannot be made: {}", named(path), std::strerror(error));
}

}  // namespace

tl::expected<Folder, std::string> Folder::make(const std::string& path) {
  Folder folder;
  folder.path_ = path.empty() ? "." : path;
  std::filesystem::path so_far;
  for (const auto& part : std::filesystem::path(folder.path_)) {
    so_far /= part;
    const std::string name = so_far.string();
    if (is_folder(name)) continue;
    if (::mkdir(name.c_str(), 0777) == 0) {
      folder.made_.push_back(name);
      continue;
    }
    const int error = errno;
    if (error == EEXIST && is_folder(name)) continue;  // somebody else made it just now
    return tl::unexpected(not_made(name, error));
  }
  folder.handle_ = Handle(::open(folder.path_.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (!folder.handle_)
    return tl::unexpected(fmt::format("the folder {} cannot be opened: {}",
                                      app::named(folder.path_), std::strerror(errno)));
  return folder;
}

Folder::~Folder() {
  while (!made_.empty()) {
    ::rmdir(made_.back().c_str());
    made_.pop_back();
  }
}

std::string Folder::named(const std::string& file) const {
  return app::named((std::filesystem::path(path_) / file).string());
}

}  // namespace swathe::app
