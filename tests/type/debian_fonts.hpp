#pragma once

#include <cstddef>
#include <fstream>
#include <iterator>
#include <string>

namespace swathe::test {

/// The font files of Debian 12 whose figures the tests hold against; in the order of the package:
/// fonts-dejavu-core 2.37-6, fonts-liberation 1:1.07.4-11, fonts-roboto-unhinted 2:0~20170802-3,
/// fonts-lato 2.0-2.1, fonts-freefont-ttf 20120503-10, fonts-urw-base35 20200910-7,
/// fonts-cantarell 0.303.1-1, fonts-inter 4.0~beta7+ds-1.
inline const std::string kDejaVu = "/usr/share/fonts/truetype/dejavu/DejaVuSans-Bold.ttf";
inline const std::string kLiberation =
    "/usr/share/fonts/truetype/liberation/LiberationSans-Bold.ttf";
inline const std::string kRoboto =
    "/usr/share/fonts/truetype/roboto/unhinted/RobotoTTF/Roboto-Bold.ttf";
inline const std::string kLato = "/usr/share/fonts/truetype/lato/Lato-Bold.ttf";
inline const std::string kFreeSans = "/usr/share/fonts/truetype/freefont/FreeSansBold.ttf";
inline const std::string kNimbus = "/usr/share/fonts/opentype/urw-base35/NimbusSans-Bold.otf";
inline const std::string kCantarell = "/usr/share/fonts/opentype/cantarell/Cantarell-Bold.otf";
inline const std::string kInter = "/usr/share/fonts/opentype/inter/Inter-Bold.otf";

/// Empty where there is no such file: every test that reads one then fails.
inline std::string file_bytes(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

/// The revision that a TrueType or OpenType file gives itself, a 16.16 number; 0 where there is
/// none. Source: OpenType specification, table directory and "head" (fontRevision, at byte 4).
inline long font_revision(const std::string& bytes) {
  const auto number = [&](std::size_t at) {
    unsigned long value = 0;
    for (std::size_t i = at; i < at + 4; ++i) {
      value = value << 8 | (i < bytes.size() ? static_cast<unsigned char>(bytes[i]) : 0u);
    }
    return value;
  };
  for (std::size_t entry = 12; entry + 16 <= bytes.size() && entry < 12 + 16 * 64; entry += 16) {
    if (bytes.compare(entry, 4, "head") == 0) {
      return static_cast<long>(number(number(entry + 8) + 4));
    }
  }
  return 0;
}

}  // namespace swathe::test
