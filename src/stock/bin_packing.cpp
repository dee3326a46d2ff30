#include "stock/bin_packing.hpp"

#include <algorithm>
#include <cassert>
#include <functional>
#include <map>

#include "stock/bin_completion.hpp"

namespace swathe {
namespace {

using Size = std::int64_t;

ItemKinds kinds_of(const std::vector<Size>& sizes) {
  std::map<Size, int, std::greater<>> counted;
  for (const Size size : sizes) ++counted[size];
  ItemKinds kinds;
  for (const auto& [size, count] : counted) {
    kinds.size.push_back(size);
    kinds.count.push_back(count);
  }
  return kinds;
}

std::vector<BinFill> first_fit(const ItemKinds& kinds, Size capacity) {
  std::vector<BinFill> bins;
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

/// Numbers of the items for each bin's kinds.
std::vector<std::vector<std::size_t>> named(const std::vector<BinFill>& bins,
                                            const ItemKinds& kinds,
                                            const std::vector<Size>& sizes) {
  std::vector<std::vector<std::size_t>> items(kinds.size.size());
  for (std::size_t i = sizes.size(); i-- > 0;) {  // backwards, so that the first comes off first
    const auto k = static_cast<std::size_t>(
        std::ranges::lower_bound(kinds.size, sizes[i], std::ranges::greater()) -
        kinds.size.begin());
    items[k].push_back(i);
  }
  std::vector<std::vector<std::size_t>> result;
  for (const BinFill& fill : bins) {
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
  const ItemKinds kinds = kinds_of(sizes);
  std::vector<BinFill> best = first_fit(kinds, capacity);
  std::size_t at_least = bins_at_least(sizes, capacity);
  BinCompletion completion(kinds, 60);
  while (best.size() > at_least) {
    const auto better = completion.into({{capacity, best.size() - 1}});
    if (!better) {
      if (completion.looked_everywhere()) at_least = best.size();
      break;
    }
    best.clear();
    for (const FilledBin& bin : *better) best.push_back(bin.fill);
  }
  return {named(best, kinds, sizes), at_least};
}

std::optional<std::vector<std::vector<std::size_t>>> pack_into(const std::vector<Size>& sizes,
                                                               const std::vector<Bins>& bins) {
  const ItemKinds kinds = kinds_of(sizes);
  const auto filled = BinCompletion(kinds, 4).into(bins);
  if (!filled) return std::nullopt;
  std::vector<BinFill> all;
  for (std::size_t size = 0; size < bins.size(); ++size) {
    const std::size_t before = all.size();
    for (const FilledBin& bin : *filled)
      if (bin.size == size) all.push_back(bin.fill);
    all.resize(before + bins[size].count, BinFill(kinds.size.size(), 0));
  }
  return named(all, kinds, sizes);
}

}  // namespace swathe
