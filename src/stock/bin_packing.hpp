#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

// Items of given sizes in bins. Whole numbers only: callers choose the grid.
namespace swathe {

struct BinPacking {
  std::vector<std::vector<std::size_t>> bins;  ///< numbers of the items, large ones first
  std::size_t at_least = 0;                    ///< no packing has fewer bins than this
};

/// Requires: every size positive and no more than `capacity`.
/// Holds: (1) every item is in one bin, no bin is overfull; (2) never more bins than first fit in
///   falling order of size; (3) fewest possible where the search ends within its budget, which it
///   does for the couple of dozen pieces of a job.
/// Source: Martello and Toth, Knapsack Problems (1990), chapter 8 (bound L2, dominance); bins
///   completed one after another as in Korf, A New Algorithm for Optimal Bin Packing (AAAI 2002).
BinPacking pack_bins(const std::vector<std::int64_t>& sizes, std::int64_t capacity);

/// Bins of one size.
struct Bins {
  std::int64_t capacity = 0;
  std::size_t count = 0;
};

/// Numbers of the items in each of so many bins, size after size; empty bins stay in the list.
/// Nothing where they do not fit, or no way was found within the search's budget.
///
/// Requires: every size positive and no more than the largest capacity.
std::optional<std::vector<std::vector<std::size_t>>> pack_into(
    const std::vector<std::int64_t>& sizes, const std::vector<Bins>& bins);

/// Martello and Toth's bound L2 on the number of bins.
std::size_t bins_at_least(std::vector<std::int64_t> sizes, std::int64_t capacity);

}  // namespace swathe
