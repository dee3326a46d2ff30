#include "stock/bin_packing.hpp"

#include <algorithm>
#include <cassert>
#include <functional>
#include <map>
#include <numeric>
#include <optional>
#include <random>
#include <set>

namespace swathe {
namespace {

using Size = std::int64_t;

/// Items of one size are alike: only their number counts.
struct Kinds {
  std::vector<Size> size;  ///< falling
  std::vector<int> count;
};

/// One bin's content: how many of each kind.
using Fill = std::vector<int>;

Kinds kinds_of(const std::vector<Size>& sizes) {
  std::map<Size, int, std::greater<>> counted;
  for (const Size size : sizes) ++counted[size];
  Kinds kinds;
  for (const auto& [size, count] : counted) {
    kinds.size.push_back(size);
    kinds.count.push_back(count);
  }
  return kinds;
}

std::vector<Fill> first_fit(const Kinds& kinds, Size capacity) {
  std::vector<Fill> bins;
  std::vector<Size> room;
  for (std::size_t k = 0; k < kinds.size.size(); ++k) {
    std::size_t bin = 0;  // items of one kind never fit an earlier bin than the one before
    for (int n = 0; n < kinds.count[k]; ++n) {
      while (bin < bins.size() && room[bin] < kinds.size[k]) ++bin;
      if (bin == bins.size()) {
        bins.emplace_back(kinds.size.size(), 0);
        room.push_back(capacity);
      }
      ++bins[bin][k];
      room[bin] -= kinds.size[k];
    }
  }
  return bins;
}

/// One bin filled.
struct Filled {
  Fill fill;
  std::size_t size = 0;  ///< which of the sizes of bins it is
};

/// Looks for a packing into given bins, completing one bin after another round the largest item
/// left, fullest completions first.
class Completion {
 public:
  Completion(Kinds kinds, int starts) : kinds_(std::move(kinds)), starts_(starts) {}

  /// A packing into `bins`; nothing where there is none or the budget is spent.
  std::optional<std::vector<Filled>> into(const std::vector<Bins>& bins) {
    Size spare = 0, largest = 0;
    for (const Bins& some : bins) {
      spare += static_cast<Size>(some.count) * some.capacity;
      largest = std::max(largest, some.capacity);
    }
    for (std::size_t k = 0; k < kinds_.size.size(); ++k) spare -= kinds_.count[k] * kinds_.size[k];
    everywhere_ = true;
    for (int start = 0; spare >= 0 && start < starts_; ++start) {
      bins_ = bins;
      left_ = kinds_.count;
      chosen_.clear();
      hopeless_.clear();
      steps_left_ = kSteps;
      everywhere_ = true;
      noise_ = start == 0 ? 0 : static_cast<std::uint32_t>(std::min<Size>(largest / 20, 1 << 30));
      dice_.seed(static_cast<std::mt19937::result_type>(start));
      if (fill(spare)) return chosen_;
      if (everywhere_) break;
    }
    return std::nullopt;
  }
  /// The last search left nothing out: what it did not find is not there.
  bool looked_everywhere() const { return everywhere_; }

 private:
  static constexpr long kSteps = 100'000;     // budget of one start
  static constexpr std::size_t kTries = 400;  // completions looked at for one bin

  struct Candidate {
    Filled bin;
    Size waste = 0;
    Size rank = 0;  ///< waste with a little noise
  };

  bool fill(Size spare) {
    const auto first = static_cast<std::size_t>(
        std::ranges::find_if(left_, [](int n) { return n > 0; }) - left_.begin());
    if (first == left_.size()) return true;
    if (steps_left_ < 0 || hopeless_.contains(state())) return false;

    candidates_ = {};
    open_ = Fill(left_.size(), 0);
    open_[first] = 1;
    --left_[first];
    for (size_ = 0; size_ < bins_.size(); ++size_) {
      const Size room = bins_[size_].capacity - kinds_.size[first];
      if (bins_[size_].count > 0 && room >= 0) complete(first, room, spare, first);
    }
    ++left_[first];
    std::vector<Candidate> tries = std::move(candidates_);
    for (Candidate& next : tries)
      next.rank = next.waste + static_cast<Size>(dice_() % (noise_ + 1));
    std::ranges::stable_sort(tries, {}, &Candidate::rank);

    for (const Candidate& next : tries) {
      take(next.bin.fill, -1);
      --bins_[next.bin.size].count;
      chosen_.push_back(next.bin);
      if (fill(spare - next.waste)) return true;
      chosen_.pop_back();
      ++bins_[next.bin.size].count;
      take(next.bin.fill, +1);
    }
    if (steps_left_ >= 0) hopeless_.insert(state());
    return false;
  }

  /// Items and bins left.
  std::vector<int> state() const {
    std::vector<int> state = left_;
    for (const Bins& some : bins_) state.push_back(static_cast<int>(some.count));
    return state;
  }

  void take(const Fill& fill, int sign) {
    for (std::size_t k = 0; k < fill.size(); ++k) left_[k] += sign * fill[k];
  }

  /// Every way to go on with the open bin from kind `k` downwards that wastes at most `spare`.
  void complete(std::size_t k, Size room, Size spare, std::size_t first) {
    if (--steps_left_ < 0 || candidates_.size() >= kTries) {
      everywhere_ = false;
      return;
    }
    while (k < left_.size() && (left_[k] == 0 || kinds_.size[k] > room)) ++k;
    if (k == left_.size()) {
      if (room <= spare && !dominated(room, first))
        candidates_.push_back({{open_, size_}, room, 0});
      return;
    }
    const int most = static_cast<int>(std::min<Size>(left_[k], room / kinds_.size[k]));
    for (int n = most; n >= 0; --n) {
      open_[k] += n;
      left_[k] -= n;
      complete(k + 1, room - n * kinds_.size[k], spare, first);
      left_[k] += n;
      open_[k] -= n;
    }
  }

  /// Another completion does at least as well: one with a left-over item put in, or put in for one
  /// or two smaller ones that fit where it was.
  bool dominated(Size room, std::size_t first) {
    const auto inside = [&](std::size_t k) { return open_[k] - (k == first ? 1 : 0); };
    for (std::size_t large = 0; large < left_.size(); ++large) {
      if (left_[large] == 0) continue;
      const Size size = kinds_.size[large];
      if (size <= room) return true;
      for (std::size_t a = large + 1; a < left_.size(); ++a) {
        if (inside(a) == 0) continue;
        if (kinds_.size[a] + room >= size) return true;
        for (std::size_t b = a; b < left_.size(); ++b) {
          if (inside(b) < (a == b ? 2 : 1)) continue;
          const Size both = kinds_.size[a] + kinds_.size[b];
          if (both <= size && both + room >= size) return true;
        }
      }
    }
    return false;
  }

  Kinds kinds_;
  int starts_;              ///< the first fullest bins first, others nearly so
  std::vector<Bins> bins_;  ///< left
  std::vector<int> left_;
  Fill open_;
  std::size_t size_ = 0;  ///< of the open bin
  std::vector<Filled> chosen_;
  std::vector<Candidate> candidates_;
  std::set<std::vector<int>> hopeless_;
  long steps_left_ = 0;
  bool everywhere_ = true;
  std::uint32_t noise_ = 0;
  std::mt19937 dice_;  // the same numbers on every machine
};

/// Numbers of the items for each bin's kinds.
std::vector<std::vector<std::size_t>> named(const std::vector<Fill>& bins, const Kinds& kinds,
                                            const std::vector<Size>& sizes) {
  std::vector<std::vector<std::size_t>> items(kinds.size.size());
  for (std::size_t i = sizes.size(); i-- > 0;) {  // backwards, so that the first comes off first
    const auto k = static_cast<std::size_t>(
        std::ranges::lower_bound(kinds.size, sizes[i], std::ranges::greater()) -
        kinds.size.begin());
    items[k].push_back(i);
  }
  std::vector<std::vector<std::size_t>> result;
  for (const Fill& fill : bins) {
    auto& bin = result.emplace_back();
    for (std::size_t k = 0; k < fill.size(); ++k) {
      for (int n = 0; n < fill[k]; ++n) {
        bin.push_back(items[k].back());
        items[k].pop_back();
      }
    }
  }
  return result;
}

}  // namespace

BinPacking pack_bins(const std::vector<Size>& sizes, Size capacity) {
  for (const Size size : sizes) assert(size > 0 && size <= capacity);
  const Kinds kinds = kinds_of(sizes);
  std::vector<Fill> best = first_fit(kinds, capacity);
  std::size_t at_least = bins_at_least(sizes, capacity);
  Completion completion(kinds, 60);
  while (best.size() > at_least) {
    const auto better = completion.into({{capacity, best.size() - 1}});
    if (!better) {
      if (completion.looked_everywhere()) at_least = best.size();
      break;
    }
    best.clear();
    for (const Filled& bin : *better) best.push_back(bin.fill);
  }
  return {named(best, kinds, sizes), at_least};
}

std::optional<std::vector<std::vector<std::size_t>>> pack_into(const std::vector<Size>& sizes,
                                                               const std::vector<Bins>& bins) {
  const Kinds kinds = kinds_of(sizes);
  const auto filled = Completion(kinds, 4).into(bins);
  if (!filled) return std::nullopt;
  std::vector<Fill> all;
  for (std::size_t size = 0; size < bins.size(); ++size) {
    const std::size_t before = all.size();
    for (const Filled& bin : *filled)
      if (bin.size == size) all.push_back(bin.fill);
    all.resize(before + bins[size].count, Fill(kinds.size.size(), 0));
  }
  return named(all, kinds, sizes);
}

}  // namespace swathe
