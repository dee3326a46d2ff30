#include "book/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace swathe {

std::string counted(int number, std::string_view what) {
  return fmt::format("{} {}{}", number, what, number == 1 ? "" : "s");
}

std::string share_words(double share) { return plain_number(100.0 * share, 0) + " %"; }

std::string end_words(const EndCut& end) {
  const std::string angle =
      std::abs(end.angle_deg) < 0.05 ? "" : fmt::format(" {} deg", plain_number(end.angle_deg, 1));
  switch (end.kind) {
    case EndCut::Kind::Free:
      return "free" + angle;
    case EndCut::Kind::Laps:
      return "laps" + angle;
    case EndCut::Kind::Butts:
      return "butts" + angle;
    case EndCut::Kind::Mitred:
      return "mitre" + angle;
    case EndCut::Kind::Bent:
      return "bends on";
  }
  return "";
}

std::string padding_words(const Job& job) {
  const auto full = [&](Length length) { return exact(length, job.units); };
  if (job.padding.form == PaddingForm::Noodles)
    return fmt::format("round noodles, {} across", full(job.padding.diameter));
  return fmt::format("blocks, {} deep, {} high", full(job.padding.depth), full(job.padding.height));
}

std::string_view padding_noun(const Job& job) {
  return job.padding.form == PaddingForm::Noodles ? "noodle" : "block";
}

int cover_sets(const Made& made) {
  return std::max(1, static_cast<int>(made.job.cloth.colors.size()));
}

std::string color_words(const Made& made) {
  std::vector<std::string> names;
  for (const ClothColor& color : made.job.cloth.colors) names.push_back(color.name);
  return listed(names);
}

std::string listed(const std::vector<std::string>& names, std::string_view between) {
  std::string words;
  for (const std::string& name : names) {
    if (!words.empty()) words += between;
    words += name;
  }
  return words;
}

}  // namespace swathe
