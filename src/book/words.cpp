#include "book/words.hpp"

#include <algorithm>
#include <cmath>

#include "book/texts.hpp"

namespace swathe {

using book_texts::say;

std::string counted_sheets(int number) {
  if (number == 1) return say("count.one-sheet");
  return say("count.sheets", {{"number", std::to_string(number)}});
}

std::string counted_padding(int number, const Job& job) {
  const bool noodles = job.padding.form == PaddingForm::Noodles;
  if (number == 1) return say(noodles ? "count.one-noodle" : "count.one-block");
  return say(noodles ? "count.noodles" : "count.blocks", {{"number", std::to_string(number)}});
}

std::string percent(double share) { return plain_number(100.0 * share, 0); }

std::string end_words(EndCut::Kind kind, const std::string& neighbor) {
  switch (kind) {
    case EndCut::Kind::Free:
      break;
    case EndCut::Kind::Laps:
      return say("end.past", {{"neighbor", neighbor}});
    case EndCut::Kind::Butts:
      return say("end.stops", {{"neighbor", neighbor}});
    case EndCut::Kind::Mitred:
      return say("end.mitered", {{"neighbor", neighbor}});
    case EndCut::Kind::Bent:
      return say("end.bends", {{"neighbor", neighbor}});
  }
  return say("end.open", {{"neighbor", neighbor}});
}

std::string end_words(const EndCut& end, const std::string& neighbor) {
  const std::string words = end_words(end.kind, neighbor);
  if (end.kind == EndCut::Kind::Bent || std::abs(end.angle_deg) < 0.05) return words;
  return say("end.with-angle", {{"end", words}, {"angle", plain_number(end.angle_deg, 1)}});
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
