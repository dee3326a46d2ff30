#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/bumper.hpp"
#include "swathe/job.hpp"
#include "swathe/sight.hpp"

namespace swathe {

/// One change of the numbers that would let them be read, or two together.
struct SightChange {
  std::string words;
  std::vector<SightNumber> numbers{};  ///< then: those there are, in their order, and added ones
  std::optional<std::size_t> moved{};  ///< which of them stands elsewhere
  std::optional<Length> height{};      ///< of the digits, where it is another
};

/// Whether its digits stand on two bumpers.
bool is_split(const SightNumber& number);

/// The change as the job's keys say it; `places` has the place of each number that there is, as
/// PlacedNumeral has it. Nothing where keys alone cannot say it: beside split numbers, and where
/// one that `numerals.sides` puts in the middle of its side is to stand elsewhere.
std::vector<KeyChange> keys_of(const SightChange& change, const std::vector<Wrap>& wraps,
                               const std::vector<int>& places, const Job& job);

}  // namespace swathe
