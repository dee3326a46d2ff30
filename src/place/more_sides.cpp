#include "place/more_sides.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "job/key_path.hpp"

namespace swathe {

std::vector<KeyChange> put_there_too(const std::vector<OneMore>& more,
                                     const std::vector<std::string>& now, const Job& job) {
  const NumeralKeys& keys = job.numerals;
  std::vector<KeyChange> mend;
  if (!keys.places.empty()) {
    std::size_t place = keys.places.size();
    for (const OneMore& one : more) {
      ++place;
      mend.push_back({fmt::format("numerals.place.{}.side", place), quoted_text(one.side)});
      mend.push_back({fmt::format("numerals.place.{}.bumper", place), quoted_text(one.bumper)});
    }
    return mend;
  }
  std::string list;
  const auto add = [&](const std::string& side) {
    list += (list.empty() ? "" : ", ") + quoted_text(side);
  };
  std::ranges::for_each(keys.sides ? *keys.sides : now, add);
  for (const OneMore& one : more) add(one.side);
  return {{"numerals.sides", "[" + list + "]"}};
}

}  // namespace swathe
