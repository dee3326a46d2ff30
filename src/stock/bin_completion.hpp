#pragma once

#include <cstdint>
#include <optional>
#include <random>
#include <set>
#include <vector>

#include "stock/bin_packing.hpp"

namespace swathe {

/// Items by size: those of one size are alike, only their number counts.
struct ItemKinds {
  std::vector<std::int64_t> size;  ///< falling
  std::vector<int> count;
};

/// One bin's content: how many of each kind.
using BinFill = std::vector<int>;

/// One bin filled.
struct FilledBin {
  BinFill fill;
  std::size_t size = 0;  ///< which of the sizes of bins it is
};

/// Looks for a packing into given bins, completing one bin after another round the largest item
/// left, fullest completions first.
class BinCompletion {
 public:
  /// `starts`: the first takes the fullest bins first, each other one nearly so.
  BinCompletion(ItemKinds kinds, int starts) : kinds_(std::move(kinds)), starts_(starts) {}

  /// A packing into `bins`; nothing where there is none or the budget is spent.
  std::optional<std::vector<FilledBin>> into(const std::vector<Bins>& bins);
  /// The last search left nothing out: what it did not find is not there.
  bool looked_everywhere() const { return everywhere_; }

 private:
  using Size = std::int64_t;
  struct Candidate {
    FilledBin bin;
    Size waste = 0;
    Size rank = 0;  ///< waste with a little noise
  };

  bool fill(Size spare);
  std::vector<int> state() const;
  void take(const BinFill& fill, int sign);
  void complete(std::size_t k, Size room, Size spare, std::size_t first);
  bool dominated(Size room, std::size_t first) const;

  ItemKinds kinds_;
  int starts_;
  std::vector<Bins> bins_;  ///< left
  std::vector<int> left_;
  BinFill open_;
  std::size_t size_ = 0;  ///< of the open bin
  std::vector<FilledBin> chosen_;
  std::vector<Candidate> candidates_;
  std::set<std::vector<int>> hopeless_;
  long steps_left_ = 0;
  bool everywhere_ = true;
  std::uint32_t noise_ = 0;
  std::mt19937 dice_;  // the same numbers on every machine
};

}  // namespace swathe
