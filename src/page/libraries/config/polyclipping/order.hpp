// For libpolyclipping 6.4.2-7
//
// Clipper sorts crossings and low points by their height alone. In which order those of one height
// come out hangs on the library's std::sort, and with it what Clipper makes of them: here they come
// out as they do with that of Debian's g++, which the command has.
//
// Source: D. R. Musser, "Introspective Sorting and Selection Algorithms", Software: Practice and
// Experience 27 (1997); pivot, partition and the last pass as libstdc++ 12 has them. Held against
// the command by tests/page/bytes_test.mjs.
#pragma once

#include <algorithm>
#include <iterator>
#include <utility>

namespace swathe_order {

constexpr std::ptrdiff_t kFew = 16;

template <class At, class Before>
void put_in_unguarded(At last, Before before) {
  auto value = std::move(*last);
  for (At next = last - 1; before(value, *next); --next) {
    *last = std::move(*next);
    last = next;
  }
  *last = std::move(value);
}

template <class At, class Before>
void put_in(At first, At last, Before before) {
  if (first == last) return;
  for (At at = first + 1; at != last; ++at) {
    if (before(*at, *first))
      std::rotate(first, at, at + 1);
    else
      put_in_unguarded(at, before);
  }
}

template <class At, class Before>
void median_to(At to, At a, At b, At c, Before before) {
  if (before(*a, *b))
    std::iter_swap(to, before(*b, *c) ? b : before(*a, *c) ? c : a);
  else
    std::iter_swap(to, before(*a, *c) ? a : before(*b, *c) ? c : b);
}

template <class At, class Before>
At parted(At first, At last, Before before) {
  median_to(first, first + 1, first + (last - first) / 2, last - 1, before);
  const At pivot = first;
  ++first;
  while (true) {
    while (before(*first, *pivot)) ++first;
    --last;
    while (before(*pivot, *last)) --last;
    if (!(first < last)) return first;
    std::iter_swap(first, last);
    ++first;
  }
}

template <class At, class Before>
void part(At first, At last, int depth, Before before) {
  while (last - first > kFew) {
    if (depth == 0) return std::partial_sort(first, last, last, before);  // never seen
    --depth;
    const At cut = parted(first, last, before);
    part(cut, last, depth, before);
    last = cut;
  }
}

template <class At, class Before>
void sort(At first, At last, Before before) {
  int depth = 0;
  for (auto count = last - first; count > 1; count /= 2) depth += 2;
  part(first, last, depth, before);
  if (last - first <= kFew) return put_in(first, last, before);
  put_in(first, first + kFew, before);
  for (At at = first + kFew; at != last; ++at) put_in_unguarded(at, before);
}

}  // namespace swathe_order
