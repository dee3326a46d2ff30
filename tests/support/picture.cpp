#include "support/picture.hpp"

#include <doctest/doctest.h>

#include <cctype>

#include "support/commands.hpp"

namespace swathe::test {
namespace {

/// Reads a binary PGM file.
Picture read_pgm(const std::string& bytes, double dots_per_mm) {
  Picture picture;
  picture.dots_per_mm = dots_per_mm;
  std::size_t at = 0;
  const auto word = [&] {
    while (at < bytes.size() && std::isspace(static_cast<unsigned char>(bytes[at]))) ++at;
    const std::size_t from = at;
    while (at < bytes.size() && !std::isspace(static_cast<unsigned char>(bytes[at]))) ++at;
    return bytes.substr(from, at - from);
  };
  REQUIRE(word() == "P5");
  picture.width = std::stoi(word());
  picture.height = std::stoi(word());
  REQUIRE(word() == "255");
  ++at;
  picture.grays.assign(bytes.begin() + static_cast<std::ptrdiff_t>(at), bytes.end());
  REQUIRE(picture.grays.size() ==
          static_cast<std::size_t>(picture.width) * static_cast<std::size_t>(picture.height));
  return picture;
}

}  // namespace

Picture raster(const std::string& pdf, int page, int dots_per_inch) {
  const TemporaryFolder folder;
  const std::string n = std::to_string(page);
  run("pdftoppm -gray -singlefile -r " + std::to_string(dots_per_inch) + " -f " + n + " -l " + n +
      " " + folder.write("sheet.pdf", pdf) + " " + folder.file("page"));
  return read_pgm(folder.read("page.pgm"), dots_per_inch / 25.4);
}

}  // namespace swathe::test
