#include "sha256.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <bit>

namespace swathe::app {
namespace {

constexpr std::array<std::uint32_t, 64> kRound = {
    0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
    0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
    0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
    0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
    0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
    0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
    0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
    0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2};

}  // namespace

void Sha256::take_block() {
  std::array<std::uint32_t, 64> w;
  for (std::size_t t = 0; t < 16; ++t)
    w[t] = std::uint32_t{block_[4 * t]} << 24 | std::uint32_t{block_[4 * t + 1]} << 16 |
           std::uint32_t{block_[4 * t + 2]} << 8 | std::uint32_t{block_[4 * t + 3]};
  for (std::size_t t = 16; t < 64; ++t) {
    const std::uint32_t early = std::rotr(w[t - 15], 7) ^ std::rotr(w[t - 15], 18) ^ w[t - 15] >> 3;
    const std::uint32_t late = std::rotr(w[t - 2], 17) ^ std::rotr(w[t - 2], 19) ^ w[t - 2] >> 10;
    w[t] = late + w[t - 7] + early + w[t - 16];
  }
  auto [a, b, c, d, e, f, g, h] = state_;
  for (std::size_t t = 0; t < 64; ++t) {
    const std::uint32_t big_e = std::rotr(e, 6) ^ std::rotr(e, 11) ^ std::rotr(e, 25);
    const std::uint32_t one = h + big_e + ((e & f) ^ (~e & g)) + kRound[t] + w[t];
    const std::uint32_t big_a = std::rotr(a, 2) ^ std::rotr(a, 13) ^ std::rotr(a, 22);
    const std::uint32_t two = big_a + ((a & b) ^ (a & c) ^ (b & c));
    h = g;
    g = f;
    f = e;
    e = d + one;
    d = c;
    c = b;
    b = a;
    a = one + two;
  }
  const std::array<std::uint32_t, 8> worked = {a, b, c, d, e, f, g, h};
  for (std::size_t k = 0; k < state_.size(); ++k) state_[k] += worked[k];
  filled_ = 0;
}

void Sha256::add(std::string_view bytes) {
  length_ += bytes.size();
  while (!bytes.empty()) {
    const std::size_t part = std::min(bytes.size(), block_.size() - filled_);
    std::copy_n(bytes.begin(), part, block_.begin() + static_cast<std::ptrdiff_t>(filled_));
    filled_ += part;
    bytes.remove_prefix(part);
    if (filled_ == block_.size()) take_block();
  }
}

std::string Sha256::hex() {
  const std::uint64_t bits = 8 * length_;
  add("\x80");
  while (filled_ != block_.size() - 8) add(std::string_view("\0", 1));
  std::string length;
  for (int shift = 56; shift >= 0; shift -= 8) length += static_cast<char>(bits >> shift & 0xffu);
  add(length);
  std::string digits;
  for (const std::uint32_t word : state_) digits += fmt::format("{:08x}", word);
  return digits;
}

std::string sha256(std::string_view bytes) {
  Sha256 sum;
  sum.add(bytes);
  return sum.hex();
}

}  // namespace swathe::app
