#include "old_files.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstring>
#include <optional>
#include <set>

#include "folder_name.hpp"
#include "handle.hpp"
#include "sha256.hpp"
#include "text.hpp"

namespace swathe::app {
namespace {

constexpr off_t kMostRecord = 1 << 20;  ///< bytes; ours have some thousands
constexpr std::size_t kMostNamed = 4;   ///< files in a message

Handle open_plain(const Folder& folder, const std::string& name) {
  // A pipe must not hold us up.
  return Handle(
      ::openat(folder.get(), name.c_str(), O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC));
}

/// Hands on what is in the file, part by part. False where it cannot be read.
template <class Take>
bool read_all(const Handle& file, Take take) {
  std::array<char, 1 << 14> part;
  for (;;) {
    const ssize_t got = ::read(file.get(), part.data(), part.size());
    if (got < 0 && errno == EINTR) continue;
    if (got <= 0) return got == 0;
    take(std::string_view(part.data(), static_cast<std::size_t>(got)));
  }
}

enum class State { Gone, NotOurs, Ours, Unknown };

/// Whether the name still has what a run wrote there.
State state_of(const Folder& folder, const std::string& name, const Record& record) {
  struct stat named {};
  if (::fstatat(folder.get(), name.c_str(), &named, AT_SYMLINK_NOFOLLOW) != 0)
    return errno == ENOENT ? State::Gone : State::Unknown;
  constexpr mode_t kAnyWrite = S_IWUSR | S_IWGRP | S_IWOTH;
  if (!S_ISREG(named.st_mode) || (named.st_mode & kAnyWrite) == 0) return State::NotOurs;
  const Handle file = open_plain(folder, name);
  if (!file) return State::Unknown;
  Sha256 sum;
  if (!read_all(file, [&](std::string_view part) { sum.add(part); })) return State::Unknown;
  const std::string hash = sum.hex();
  const bool known = std::ranges::any_of(record, [&](const RecordedFile& recorded) {
    return recorded.name == name && recorded.sha256 == hash;
  });
  if (!known) return State::NotOurs;
  // Somebody may have put another file there while this one was read.
  struct stat read {};
  const bool same = ::fstat(file.get(), &read) == 0 &&
                    ::fstatat(folder.get(), name.c_str(), &named, AT_SYMLINK_NOFOLLOW) == 0 &&
                    read.st_dev == named.st_dev && read.st_ino == named.st_ino;
  return same ? State::Ours : State::NotOurs;
}

std::string some_of(const std::vector<std::string>& names) {
  std::string words;
  for (std::size_t k = 0; k < std::min(names.size(), kMostNamed); ++k)
    words += (k == 0 ? "" : ", ") + named(names[k]);
  if (names.size() > kMostNamed) words += fmt::format(" and {} more", names.size() - kMostNamed);
  return words;
}

}  // namespace

tl::expected<Record, std::string> recorded_in(const Folder& folder) {
  const Handle file = open_plain(folder, kRecordName);
  const auto fault = [&] {
    return tl::unexpected(
        fmt::format("{} cannot be read: {}", folder.named(kRecordName), std::strerror(errno)));
  };
  if (!file) {
    if (errno == ENOENT) return Record();
    return fault();
  }
  struct stat info {};
  if (::fstat(file.get(), &info) != 0) return fault();
  if (!S_ISREG(info.st_mode) || info.st_size > kMostRecord) return Record();
  std::string text;
  if (!read_all(file, [&](std::string_view part) { text += part; })) return fault();
  return read_record(text).value_or(Record());
}

OldFiles plan_old_files(const Record& before, const Record& fresh,
                        const std::function<bool(const std::string&)>& makes) {
  // A disk may take two names for one.
  std::set<std::u32string> taken;
  for (const RecordedFile& file : fresh) taken.insert(folder_name_key(file.name));
  OldFiles plan{fresh, fresh, {}};
  for (const RecordedFile& file : before) {
    if (std::ranges::count(plan.during, file) == 0) plan.during.push_back(file);
    if (taken.contains(folder_name_key(file.name))) continue;
    (makes(file.kind) ? plan.to_delete : plan.after).push_back(file);
  }
  return plan;
}

Deleted delete_unchanged(const Folder& folder, const Record& files) {
  Deleted result;
  std::set<std::string> seen;
  for (const RecordedFile& file : files) {
    if (!seen.insert(file.name).second) continue;
    switch (state_of(folder, file.name, files)) {
      case State::Gone:
        break;
      case State::NotOurs:
        result.changed.push_back(file.name);
        break;
      case State::Ours:
        if (::unlinkat(folder.get(), file.name.c_str(), 0) == 0) {
          result.deleted.push_back(file.name);
          break;
        }
        [[fallthrough]];
      case State::Unknown:
        result.all_known = false;
    }
  }
  return result;
}

std::string deleted_text(const Deleted& deleted) {
  std::string words;
  if (!deleted.deleted.empty())
    words =
        fmt::format("Deleted {} of an earlier run that this one does not make: {}.",
                    count_of(deleted.deleted.size(), "file", "files"), some_of(deleted.deleted));
  if (!deleted.changed.empty())
    words += fmt::format(
        "{}Kept {} of an earlier run that somebody has changed: {}.", words.empty() ? "" : " ",
        count_of(deleted.changed.size(), "file", "files"), some_of(deleted.changed));
  return words.empty() ? "" : words + "\n";
}

}  // namespace swathe::app
