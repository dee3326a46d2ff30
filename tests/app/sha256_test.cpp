#include "app/sha256.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

using swathe::app::Sha256;
using swathe::app::sha256;

// Source: NIST, Cryptographic Standards and Guidelines, Example Values, SHA-256 (one block, two
// blocks); the SHA-256 of nothing and of a million "a" from NIST's earlier examples (FIPS 180-2,
// appendix B.3), held against sha256sum of GNU coreutils 9.1.
TEST_CASE("sha256: the standard's own examples") {
  CHECK(sha256("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  CHECK(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq") ==
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  CHECK(sha256("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
  CHECK(sha256(std::string(1000000, 'a')) ==
        "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST_CASE("sha256: parts of any length come to the same as the whole") {
  std::string bytes;
  for (int k = 0; k < 300; ++k) bytes += static_cast<char>(k * 37);
  for (std::size_t length = 50; length < 140; ++length)
    for (const std::size_t part : {1, 7, 63, 64, 65}) {
      Sha256 sum;
      for (std::size_t at = 0; at < length; at += part)
        sum.add(std::string_view(bytes).substr(at, std::min(part, length - at)));
      CHECK(sum.hex() == sha256(std::string_view(bytes).substr(0, length)));
    }
}
