#include "input.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <optional>
#include <string_view>
#include <utility>

#include "base/print.hpp"
#include "handle.hpp"
#include "text.hpp"

namespace swathe::app {
namespace {

constexpr const char* kStandardInput = "-";
constexpr std::size_t kMostTyped = 80;  // bytes of a name that is to be typed again

/// Which kinds of files are read: any that can be read to its end, or only a plain file. A pipe is
/// fine for the job, but a font behind a pipe could keep us waiting for ever.
enum class Accept { AnyFile, PlainFile };

std::string unreadable(int error) {
  return fmt::format("cannot be read: {}, expected a file that can be read", std::strerror(error));
}

Outcome<std::string> read_all(int file, const std::string& name) {
  std::string bytes;
  std::array<char, 1 << 16> part;
  while (true) {
    const ssize_t got = ::read(file, part.data(), part.size());
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return refuse(Why::Missing, unreadable(errno), {name});
    if (got == 0) return bytes;
    bytes.append(part.data(), static_cast<std::size_t>(got));
    if (bytes.size() > kLargestInput)
      return refuse(Why::TooLarge,
                    fmt::format("is larger than expected: at most {} MiB", kLargestInput >> 20),
                    {name});
  }
}

Outcome<std::string> read_file(const std::string& path, Accept accept) {
  const int flags =
      O_RDONLY | O_CLOEXEC | O_NOCTTY | (accept == Accept::PlainFile ? O_NONBLOCK : 0);
  const Handle file(::open(path.c_str(), flags));
  if (!file) return refuse(Why::Missing, unreadable(errno), {path});
  struct stat info {};
  if (::fstat(file.get(), &info) != 0) return refuse(Why::Missing, unreadable(errno), {path});
  if (S_ISDIR(info.st_mode))
    return refuse(Why::Missing, "is a folder, a file was expected", {path});
  if (accept == Accept::PlainFile && !S_ISREG(info.st_mode))
    return refuse(Why::Missing, "is a device or a pipe, a plain file was expected", {path});
  return read_all(file.get(), path);
}

bool exists(const std::string& path) {
  struct stat info {};
  return ::lstat(path.c_str(), &info) == 0 || errno != ENOENT;
}

/// The place of what is wrong with a file as a whole: no line is told.
Place of_whole(const std::string& name) { return {name, 0, 0}; }

/// What a file is that is no text; nothing where it may be one.
std::optional<std::string_view> kind_of_bytes(std::string_view bytes) {
  constexpr std::pair<std::string_view, std::string_view> kKinds[] = {
      {"%PDF-", "a PDF"},
      {"\x89PNG", "a picture"},
      {"\xff\xd8\xff", "a picture"},
      {"GIF8", "a picture"},
      {"PK\x03\x04", "an archive"},
      {"\x1f\x8b", "an archive"},
      {"\xff\xfe", "a text in UTF-16: save it as UTF-8"},
      {"\xfe\xff", "a text in UTF-16: save it as UTF-8"}};
  for (const auto& [start, kind] : kKinds)
    if (bytes.starts_with(start)) return kind;
  if (bytes.find('\0') != std::string_view::npos) return "a file of bytes";
  return std::nullopt;
}

}  // namespace

Outcome<JobText> read_job_text(const std::string& path) {
  const bool piped = path == kStandardInput;
  const std::string name = piped ? "standard input" : path;
  auto text = piped ? read_all(STDIN_FILENO, name) : read_file(path, Accept::AnyFile);
  if (!text) {
    if (!piped && !exists(path))
      return refuse(Why::Missing,
                    fmt::format("no such file; \"swathe new {}\" writes one",
                                path.size() <= kMostTyped ? quoted_name(path) : "JOB.toml"),
                    of_whole(name));
    for (Refusal& refusal : text.error()) refusal.place = of_whole(name);
    return tl::unexpected(std::move(text.error()));
  }
  if (const auto kind = kind_of_bytes(*text))
    return refuse(Why::Malformed,
                  fmt::format("this is not a job file but {}, expected a text such as \"swathe "
                              "new\" writes",
                              *kind),
                  of_whole(name));
  return JobText{std::move(*text), name};
}

NamedFiles read_files_beside(const std::string& job_path, const std::vector<std::string>& names) {
  const std::filesystem::path folder =
      job_path == kStandardInput ? "" : std::filesystem::path(job_path).parent_path();
  const std::string counted =
      folder.empty() ? "" : fmt::format("; paths count from {}", named(folder.string()));
  NamedFiles files;
  for (const std::string& path : names) {
    auto bytes = read_file((folder / path).string(), Accept::PlainFile);
    if (!bytes)  // it will stand at the key that names the file
      for (Refusal& refusal : bytes.error())
        refusal.sentence = fmt::format("{} {}{}", named(path), refusal.sentence, counted);
    files.emplace(path, std::move(bytes));
  }
  return files;
}

}  // namespace swathe::app
