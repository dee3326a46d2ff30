#pragma once

#include <string>
#include <vector>

#include "swathe/screen.hpp"

namespace swathe::test {

/// A picture with what it is of, for messages.
struct NamedPicture {
  std::string name;
  ScreenPicture picture;
};

/// Every kind of picture of a job at one size.
std::vector<NamedPicture> screen_pictures(const Made& made, const Font& labels,
                                          const ScreenOptions& options);

}  // namespace swathe::test
