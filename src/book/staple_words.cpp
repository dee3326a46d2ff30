#include "book/staple_words.hpp"

#include <algorithm>
#include <vector>

#include "book/texts.hpp"
#include "book/words.hpp"

namespace swathe {
namespace {

using book_texts::say;

/// They follow one another: the first and the last tell them all.
std::string range_words(int first, int last) {
  if (first == last) return std::to_string(first);
  return say("staples.range", {{"first", std::to_string(first)}, {"last", std::to_string(last)}});
}

template <class Is>
std::string words_where(const Made& made, Is is) {
  std::vector<std::string> of_bumpers, ranges;
  for (const Pattern& pattern : made.patterns) {
    const auto first = std::ranges::find_if(pattern.staples, is);
    if (first == pattern.staples.end()) continue;
    const auto last = std::ranges::find_if(pattern.staples.rbegin(), pattern.staples.rend(), is);
    ranges.push_back(range_words(first->order, last->order));
    of_bumpers.push_back(
        say("staples.of-bumper", {{"bumper", pattern.bumper}, {"range", ranges.back()}}));
  }
  const bool alike =
      ranges.size() == made.patterns.size() &&
      std::ranges::adjacent_find(ranges, std::ranges::not_equal_to()) == ranges.end();
  if (ranges.empty()) return "";
  return alike ? ranges.front() : listed(of_bumpers);
}

}  // namespace

int corners_on_the_way(const Made& made) {
  long most = 0;
  for (const Pattern& pattern : made.patterns) {
    const double from = pattern.staples.empty() ? 0.0 : pattern.staples.front().at.x;
    const auto before = std::ranges::count_if(
        pattern.corners, [&](const PatternCorner& corner) { return corner.s < from; });
    most = std::max({most, static_cast<long>(before),
                     static_cast<long>(pattern.corners.size()) - static_cast<long>(before)});
  }
  return static_cast<int>(most);
}

std::string staples_of(const Made& made, Staple::On on, int corners) {
  return words_where(made, [&](const Staple& staple) {
    return staple.on == on && (on != Staple::On::Flap || staple.corners == corners);
  });
}

std::string flap_staples(const Made& made) {
  return words_where(made, [](const Staple& staple) { return staple.on == Staple::On::Flap; });
}

}  // namespace swathe
