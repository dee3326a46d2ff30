#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

namespace swathe::app {

/// SHA-256 of bytes that come in parts.
/// Source: FIPS 180-4, Secure Hash Standard, sections 4.1.2, 4.2.2, 5.1.1, 5.3.3 and 6.2.
class Sha256 {
 public:
  void add(std::string_view bytes);
  /// Of all that was added, as 64 hexadecimal digits. Nothing is added afterwards.
  std::string hex();

 private:
  void take_block();

  std::array<std::uint32_t, 8> state_{0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a,
                                      0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19};
  std::array<unsigned char, 64> block_{};
  std::size_t filled_ = 0;    ///< bytes of the block
  std::uint64_t length_ = 0;  ///< bytes
};

std::string sha256(std::string_view bytes);

}  // namespace swathe::app
