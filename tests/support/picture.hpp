#pragma once

#include <cstddef>
#include <string>
#include <vector>

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

/// One page of a PDF, by poppler's pdftoppm.
Picture raster(const std::string& pdf, int page, int dots_per_inch);

}  // namespace swathe::test
