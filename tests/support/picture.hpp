#pragma once

#include <cctype>
#include <string>
#include <vector>

#include "support/commands.hpp"
#include "swathe/plane.hpp"

namespace swathe::test {

/// A picture in grays, as rastered by a program that is not ours.
struct Picture {
  int width = 0, height = 0;
  std::vector<unsigned char> grays;  ///< row by row from the top, 255 white
  double dots_per_mm = 0;

  int gray(int x, int y) const {
    return grays[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                 static_cast<std::size_t>(x)];
  }
  bool is_dark(int x, int y, int below = 128) const { return gray(x, y) < below; }
};

/// Reads a binary PGM file.
inline Picture read_pgm(const std::string& bytes, double dots_per_mm) {
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

/// One page of a PDF, by poppler's pdftoppm.
inline Picture raster(const std::string& pdf, int page, int dots_per_inch) {
  const TemporaryFolder folder;
  const std::string n = std::to_string(page);
  run("pdftoppm -gray -singlefile -r " + std::to_string(dots_per_inch) + " -f " + n + " -l " + n +
      " " + folder.write("sheet.pdf", pdf) + " " + folder.file("page"));
  return read_pgm(folder.read("page.pgm"), dots_per_inch / 25.4);
}

}  // namespace swathe::test
