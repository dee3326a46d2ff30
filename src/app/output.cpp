#include "output.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cassert>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <optional>

#include "folder.hpp"
#include "sha256.hpp"
#include "stage.hpp"
#include "text.hpp"

namespace swathe::app {
namespace {

tl::unexpected<Trouble> trouble(std::string sentence) {
  return tl::unexpected(Trouble{std::move(sentence), false});
}

/// Whether a file is read-only; also for root, who could write to it all the same.
bool is_read_only(const Folder& folder, const std::string& name, const struct stat& info) {
  constexpr mode_t kAnyWrite = S_IWUSR | S_IWGRP | S_IWOTH;
  return (info.st_mode & kAnyWrite) == 0 ||
         ::faccessat(folder.get(), name.c_str(), W_OK, AT_EACCESS) != 0;
}

/// What is in the way where a file has to be written, in words.
std::optional<std::string> in_the_way(const Folder& folder, const std::string& name) {
  struct stat info {};
  if (::fstatat(folder.get(), name.c_str(), &info, AT_SYMLINK_NOFOLLOW) != 0) return {};
  if (S_ISREG(info.st_mode)) {
    if (!is_read_only(folder, name, info)) return {};
    return fmt::format(
        "{} is read-only and would be overwritten; make it writable, or write into "
        "another folder",
        folder.named(name));
  }
  const char* what = S_ISLNK(info.st_mode)   ? "a link"
                     : S_ISDIR(info.st_mode) ? "a folder"
                                             : "not a plain file";
  return fmt::format("{} is {}, where a file has to be written; move it away first",
                     folder.named(name), what);
}

tl::expected<void, Trouble> write_all(Stage& stage, const std::vector<OutputFile>& files,
                                      const HeldInterrupts& interrupts) {
  for (const OutputFile& file : files) {
    assert(!file.name.empty() && file.name.find('/') == file.name.npos);
    if (interrupts.any()) return trouble("stopped; nothing was written");
    if (auto done = stage.write(file.name, file.bytes); !done) return trouble(done.error());
  }
  return {};
}

}  // namespace

namespace {

constexpr const char* kRecordDuring = ".swathe-files-during";  ///< its name in the stage

/// Moves all files from the stage to their places.
tl::expected<void, Trouble> move_all(Stage& stage, const Folder& folder,
                                     const std::vector<OutputFile>& files) {
  for (std::size_t moved = 0; moved < files.size(); ++moved) {
    const int error = stage.move_over(files[moved].name);
    if (error != 0)
      return trouble(fmt::format("{} cannot be put in place: {} ({} of {} files are new)",
                                 folder.named(files[moved].name), std::strerror(error), moved,
                                 files.size()));
  }
  return {};
}

Record record_of(const std::vector<OutputFile>& files) {
  Record record;
  for (const OutputFile& file : files) record.push_back({file.name, file.kind, sha256(file.bytes)});
  return record;
}

}  // namespace

tl::expected<void, Trouble> put_files(const std::string& path, const std::vector<OutputFile>& files,
                                      const HeldInterrupts& interrupts) {
  auto folder = Folder::make(path);
  if (!folder) return trouble(folder.error());
  for (const OutputFile& file : files)
    if (auto what = in_the_way(*folder, file.name)) return trouble(*what);
  auto stage = Stage::open(*folder);
  if (!stage) return trouble(stage.error());
  if (auto written = write_all(*stage, files, interrupts); !written) return written;

  folder->keep();
  ::flock(folder->get(), LOCK_EX);  // so that two runs at the same time do not mix their files
  if (auto moved = move_all(*stage, *folder, files); !moved) return moved;
  ::fsync(folder->get());
  return {};
}

tl::expected<Deleted, Trouble> put_set(const std::string& path,
                                       const std::vector<OutputFile>& files,
                                       const std::function<bool(const std::string&)>& makes,
                                       const HeldInterrupts& interrupts) {
  auto folder = Folder::make(path);
  if (!folder) return trouble(folder.error());
  for (const OutputFile& file : files)
    if (auto what = in_the_way(*folder, file.name)) return trouble(*what);
  if (auto what = in_the_way(*folder, kRecordName)) return trouble(*what);
  auto stage = Stage::open(*folder);
  if (!stage) return trouble(stage.error());
  if (auto written = write_all(*stage, files, interrupts); !written)
    return tl::unexpected(written.error());

  ::flock(folder->get(), LOCK_EX);  // so that two runs at the same time do not mix their files
  const auto before = recorded_in(*folder);
  if (!before) return trouble(before.error());
  const OldFiles old = plan_old_files(*before, record_of(files), makes);
  const std::vector<OutputFile> records = {{kRecordDuring, record_text(old.during)},
                                           {kRecordName, record_text(old.after)}};
  if (auto written = write_all(*stage, records, interrupts); !written)
    return tl::unexpected(written.error());
  folder->keep();
  // From here on files may be replaced: the record that has them all goes first, and reaches the
  // disk first.
  if (const int error = stage->move_over(kRecordDuring, kRecordName))
    return trouble(fmt::format("{} cannot be put in place: {}", folder->named(kRecordName),
                               std::strerror(error)));
  ::fsync(folder->get());
  if (auto moved = move_all(*stage, *folder, files); !moved) return tl::unexpected(moved.error());
  ::fsync(folder->get());
  Deleted deleted = delete_unchanged(*folder, old.to_delete);
  if (!deleted.all_known) return deleted;  // the next run may know: it needs the larger record
  if (const int error = stage->move_over(kRecordName))
    return trouble(fmt::format("{} cannot be put in place: {}", folder->named(kRecordName),
                               std::strerror(error)));
  ::fsync(folder->get());
  return deleted;
}

tl::expected<void, Trouble> replace_file(const std::string& path, const std::string& bytes) {
  const HeldInterrupts interrupts;
  std::error_code error;
  const std::filesystem::path whole = std::filesystem::canonical(path, error);
  if (error) return trouble(fmt::format("{} cannot be found: {}", path, error.message()));
  const std::string name = whole.filename().string();
  auto folder = Folder::make(whole.parent_path().string());
  if (!folder) return trouble(folder.error());
  if (auto what = in_the_way(*folder, name)) return trouble(*what);
  struct stat before {};
  if (::fstatat(folder->get(), name.c_str(), &before, AT_SYMLINK_NOFOLLOW) != 0)
    return trouble(fmt::format("{} cannot be found: {}", path, std::strerror(errno)));
  auto stage = Stage::open(*folder);
  if (!stage) return trouble(stage.error());
  if (auto written = write_all(*stage, {{name, bytes}}, interrupts); !written) return written;
  if (const int failed = stage->make_like(name, before))
    return trouble(fmt::format("{} cannot keep its permissions: {}", path, std::strerror(failed)));
  if (const int failed = stage->move_over(name))
    return trouble(fmt::format("{} cannot be put in place: {}", path, std::strerror(failed)));
  ::fsync(folder->get());
  return {};
}

tl::expected<void, Trouble> put_new_file(const std::string& path, const std::string& bytes) {
  const HeldInterrupts interrupts;
  const std::filesystem::path whole(path);
  const std::string name = whole.filename().string();
  if (name.empty() || name == "." || name == "..")
    return trouble(named(path) + " names a folder, a file was expected");
  auto folder = Folder::make(whole.parent_path().string());
  if (!folder) return trouble(folder.error());
  auto stage = Stage::open(*folder);
  if (!stage) return trouble(stage.error());
  if (auto written = write_all(*stage, {{name, bytes}}, interrupts); !written) return written;
  folder->keep();
  const int error = stage->move_new(name);
  if (error == EEXIST) return tl::unexpected(Trouble{named(path) + " is there already", true});
  if (error != 0)
    return trouble(fmt::format("{} cannot be put in place: {}", named(path), std::strerror(error)));
  ::fsync(folder->get());
  return {};
}

}  // namespace swathe::app
