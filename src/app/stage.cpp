#include "stage.hpp"

#include <dirent.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <memory>
#include <string_view>

namespace swathe::app {
namespace {

constexpr std::string_view kPrefix = ".swathe-stage-";
constexpr mode_t kMode = 0700;
constexpr int kTries = 1000;
// A file in the stage that says that it is ours. No file that we write has this name.
constexpr const char* kMark = ".stage-of-swathe";
constexpr std::string_view kMarkText =
    "swathe writes its files here first, then moves them to their places.\n"
    "It deletes this folder, with all files in it, when it runs next.\n";

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

/// A stage holds only files; anything else is not ours and stays. The mark is deleted last.
void remove_stage(int in, const std::string& name, int stage,
                  const std::vector<std::string>& files) {
  for (const std::string& file : files)
    if (file != kMark) ::unlinkat(stage, file.c_str(), 0);
  ::unlinkat(stage, kMark, 0);
  ::unlinkat(in, name.c_str(), AT_REMOVEDIR);
}

/// Whether a folder has our mark, word for word; if not, somebody else made the folder.
bool has_mark(int stage) {
  const Handle file(::openat(stage, kMark, O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC));
  std::array<char, kMarkText.size() + 1> text;
  const ssize_t got = file ? ::read(file.get(), text.data(), text.size()) : -1;
  return got >= 0 && std::string_view(text.data(), static_cast<std::size_t>(got)) == kMarkText;
}

/// A run that was killed before it wrote its mark, or after it deleted it, leaves an empty folder
/// with a name like ours that only this user may enter.
bool may_be_unmarked(const std::string& name, int stage) {
  const std::string_view numbers = std::string_view(name).substr(kPrefix.size());
  struct stat info {};
  return numbers.find_first_not_of("0123456789-") == numbers.npos && ::fstat(stage, &info) == 0 &&
         (info.st_mode & 07777) == kMode && info.st_uid == ::geteuid();
}

bool lock(const Handle& folder) { return ::flock(folder.get(), LOCK_EX | LOCK_NB) == 0; }

void remove_stale(int folder) {
  for (const std::string& name : names_in(folder)) {
    if (!name.starts_with(kPrefix)) continue;
    const Handle stage = open_folder(folder, name);
    if (!stage || !lock(stage)) continue;
    if (has_mark(stage.get()))
      remove_stage(folder, name, stage.get(), names_in(stage.get()));
    else if (may_be_unmarked(name, stage.get()))
      ::unlinkat(folder, name.c_str(), AT_REMOVEDIR);  // does nothing if the folder is not empty
  }
}

/// Whether the open stage still has its name: another run may have deleted it as left over before
/// it was locked.
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
    if (::mkdirat(folder.get(), name.c_str(), kMode) != 0) {
      error = errno;
      continue;
    }
    stage.handle_ = open_folder(folder.get(), name);
    // Without locks no run can tell that a stage is left over, so none deletes it.
    const bool ours = stage.handle_ && (lock(stage.handle_) || errno != EWOULDBLOCK);
    if (!ours || !stands(folder.get(), name, stage.handle_)) continue;
    stage.name_ = std::move(name);
    if ((error = stage.put(kMark, kMarkText)) == 0) return stage;
    break;
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
  if (const int error = put(name, bytes)) return fault(error);
  return {};
}

int Stage::put(const std::string& name, std::string_view bytes) {
  Handle file(::openat(handle_.get(), name.c_str(),
                       O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0666));
  if (!file) return errno;
  if (const int error = write_all(file.get(), bytes)) return error;
  if (::fsync(file.get()) != 0) return errno;
  return ::close(file.release()) == 0 ? 0 : errno;
}

int Stage::make_like(const std::string& name, const struct stat& other) {
  // Only root may give a file to another owner; else a file of another owner becomes ours.
  if (::fchownat(handle_.get(), name.c_str(), other.st_uid, other.st_gid, AT_SYMLINK_NOFOLLOW) != 0)
    if (errno != EPERM) return errno;
  return ::fchmodat(handle_.get(), name.c_str(), other.st_mode & 07777, 0) == 0 ? 0 : errno;
}

int Stage::move_over(const std::string& name, const std::string& as) {
  return ::renameat(handle_.get(), name.c_str(), folder_->get(), as.c_str()) == 0 ? 0 : errno;
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
