#include "input.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>

#include "handle.hpp"
#include "text.hpp"

namespace swathe::app {
namespace {

constexpr const char* kStandardInput = "-";

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

}  // namespace

Outcome<JobText> read_job_text(const std::string& path) {
  const bool piped = path == kStandardInput;
  const std::string name = piped ? "standard input" : path;
  auto text = piped ? read_all(STDIN_FILENO, name) : read_file(path, Accept::AnyFile);
  if (!text) return tl::unexpected(std::move(text.error()));
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
