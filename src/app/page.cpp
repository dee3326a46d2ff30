#include <fmt/format.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <optional>
#include <system_error>

#include "commands.hpp"
#include "write_new.hpp"

namespace swathe::app {
namespace {

namespace fs = std::filesystem;

/// Where the page lies, from the command's own folder on: installed, or built beside it.
constexpr const char* kPlaces[] = {"../share/swathe/swathe.html", "../build-page/swathe.html"};

std::optional<std::string> page_bytes() {
  std::error_code none;
  const fs::path command = fs::read_symlink("/proc/self/exe", none);
  for (const char* place : kPlaces) {
    std::ifstream file(command.parent_path() / place, std::ios::binary);
    std::string bytes{std::istreambuf_iterator<char>(file), {}};
    if (file && !bytes.empty()) return bytes;
  }
  return std::nullopt;
}

}  // namespace

Exit page(Terminal& terminal, const std::string& path) {
  const auto bytes = page_bytes();
  if (bytes)
    return write_new(terminal, path, *bytes, "Open it in a browser: it needs nothing else");
  terminal.complain(
      "swathe: the page is not there, expected where swathe was installed, or built: run \"sh "
      "examples/page.sh\" in its source, which makes build-page/swathe.html");
  return Exit::MachineFailed;
}

}  // namespace swathe::app
