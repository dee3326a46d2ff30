#include "stock/bin_completion.hpp"

#include <algorithm>

namespace swathe {
namespace {

constexpr long kSteps = 100'000;     // budget of one start
constexpr std::size_t kTries = 400;  // completions looked at for one bin

}  // namespace

std::optional<std::vector<FilledBin>> BinCompletion::into(const std::vector<Bins>& bins) {
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

bool BinCompletion::fill(Size spare) {
  const auto first = static_cast<std::size_t>(
      std::ranges::find_if(left_, [](int n) { return n > 0; }) - left_.begin());
  if (first == left_.size()) return true;
  if (steps_left_ < 0 || hopeless_.contains(state())) return false;

  candidates_ = {};
  open_ = BinFill(left_.size(), 0);
  open_[first] = 1;
  --left_[first];
  for (size_ = 0; size_ < bins_.size(); ++size_) {
    const Size room = bins_[size_].capacity - kinds_.size[first];
    if (bins_[size_].count > 0 && room >= 0) complete(first, room, spare, first);
  }
  ++left_[first];
  std::vector<Candidate> tries = std::move(candidates_);
  for (Candidate& next : tries) next.rank = next.waste + static_cast<Size>(dice_() % (noise_ + 1));
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
std::vector<int> BinCompletion::state() const {
  std::vector<int> state = left_;
  for (const Bins& some : bins_) state.push_back(static_cast<int>(some.count));
  return state;
}

void BinCompletion::take(const BinFill& fill, int sign) {
  for (std::size_t k = 0; k < fill.size(); ++k) left_[k] += sign * fill[k];
}

/// Every way to go on with the open bin from kind `k` downwards that wastes at most `spare`.
void BinCompletion::complete(std::size_t k, Size room, Size spare, std::size_t first) {
  if (--steps_left_ < 0 || candidates_.size() >= kTries) {
    everywhere_ = false;
    return;
  }
  while (k < left_.size() && (left_[k] == 0 || kinds_.size[k] > room)) ++k;
  if (k == left_.size()) {
    if (room <= spare && !dominated(room, first)) candidates_.push_back({{open_, size_}, room, 0});
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
bool BinCompletion::dominated(Size room, std::size_t first) const {
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

}  // namespace swathe
