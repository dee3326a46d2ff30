#include "stage.hpp"

#include <dirent.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <memory>
#include <string_view>

namespace swathe::app {
namespace {

constexpr std::string_view kPrefix = ".swathe-stage-";
constexpr int kTries = 1000;

Handle open_folder(int in, const std::string& name) {
  return Handle(::openat(in, name.c_str(), O_RDONLY | O_DIRECTORY | O_NOFOLLOW | O_CLOEXEC));
}

std::vector<std::string> names_in(int folder) {
  Handle again = open_folder(folder, ".");
  if (!again) return {};
  const std::unique_ptr<DIR, int (*)(DIR*)> list(::fdopendir(again.get()), ::closedir);
  if (!list) return {};
  again.release();  // the list closes it
  std::vector<std::string> names;
  while (const dirent* entry = ::readdir(list.get())) names.emplace_back(entry->d_name);
  return names;
}

/// Only files can be in a stage; anything else is not ours and stays.
void remove_stage(int in, const std::string& name, int stage,
                  const std::vector<std::string>& files) {
  for (const std::string& file : files) ::unlinkat(stage, file.c_str(), 0);
  ::unlinkat(in, name.c_str(), AT_REMOVEDIR);
}

bool lock(const Handle& folder) { return ::flock(folder.get(), LOCK_EX | LOCK_NB) == 0; }

void remove_stale(int folder) {
  for (const std::string& name : names_in(folder)) {
    if (!name.starts_with(kPrefix)) continue;
    const Handle stage = open_folder(folder, name);
    if (stage && lock(stage)) remove_stage(folder, name, stage.get(), names_in(stage.get()));
  }
}

/// Whether the open stage still stands under its name: another run may have taken it for stale
/// between its making and its locking.
bool stands(int folder, const std::string& name, const Handle& stage) {
  struct stat held {
  }, named{};
  return ::fstat(stage.get(), &held) == 0 &&
         ::fstatat(folder, name.c_str(), &named, AT_SYMLINK_NOFOLLOW) == 0 &&
         held.st_dev == named.st_dev && held.st_ino == named.st_ino;
}

/// 0, or the error number.
int write_all(int file, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t wrote = ::write(file, bytes.data(), bytes.size());
    if (wrote < 0 && errno == EINTR) continue;
    if (wrote < 0) return errno;
    bytes.remove_prefix(static_cast<std::size_t>(wrote));
  }
  return 0;
}

}  // namespace

tl::expected<Stage, std::string> Stage::open(const Folder& folder) {
  remove_stale(folder.get());
  Stage stage(folder);
  int error = EEXIST;
  for (int attempt = 0; attempt < kTries && error == EEXIST; ++attempt) {
    std::string name = fmt::format("{}{}-{}", kPrefix, ::getpid(), attempt);
    if (::mkdirat(folder.get(), name.c_str(), 0700) != 0) {
      error = errno;
      continue;
    }
    stage.handle_ = open_folder(folder.get(), name);
    // Where locks are not to be had, nobody takes the stage for stale either.
    const bool ours = stage.handle_ && (lock(stage.handle_) || errno != EWOULDBLOCK);
    if (!ours || !stands(folder.get(), name, stage.handle_)) continue;
    stage.name_ = std::move(name);
    return stage;
  }
  return tl::unexpected(
      fmt::format("nothing can be written into {}: {}", folder.named(""), std::strerror(error)));
}

Stage::Stage(Stage&& other) noexcept
    : folder_(other.folder_),
      name_(std::exchange(other.name_, {})),
      handle_(std::move(other.handle_)),
      begun_(std::move(other.begun_)) {}

Stage::~Stage() {
  if (!name_.empty()) remove_stage(folder_->get(), name_, handle_.get(), begun_);
}

tl::expected<void, std::string> Stage::write(const std::string& name, const std::string& bytes) {
  const auto fault = [&](int error) {
    return tl::unexpected(
        fmt::format("{} cannot be written: {}", folder_->named(name), std::strerror(error)));
  };
  begun_.push_back(name);
  Handle file(::openat(handle_.get(), name.c_str(),
                       O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0666));
  if (!file) return fault(errno);
  if (const int error = write_all(file.get(), bytes)) return fault(error);
  if (::fsync(file.get()) != 0) return fault(errno);
  if (::close(file.release()) != 0) return fault(errno);
  return {};
}

int Stage::make_like(const std::string& name, const struct stat& other) {
  // Only root may give a file away; another's file that we may change becomes ours.
  if (::fchownat(handle_.get(), name.c_str(), other.st_uid, other.st_gid, AT_SYMLINK_NOFOLLOW) != 0)
    if (errno != EPERM) return errno;
  return ::fchmodat(handle_.get(), name.c_str(), other.st_mode & 07777, 0) == 0 ? 0 : errno;
}

int Stage::move_over(const std::string& name) {
  return ::renameat(handle_.get(), name.c_str(), folder_->get(), name.c_str()) == 0 ? 0 : errno;
}

int Stage::move_new(const std::string& name) {
  if (::linkat(handle_.get(), name.c_str(), folder_->get(), name.c_str(), 0) == 0) return 0;
  if (errno == EEXIST) return EEXIST;
  // A file system without links (memory sticks): look, then move.
  struct stat info {};
  if (::fstatat(folder_->get(), name.c_str(), &info, AT_SYMLINK_NOFOLLOW) == 0) return EEXIST;
  return move_over(name);
}

}  // namespace swathe::app
