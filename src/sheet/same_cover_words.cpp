#include "sheet/same_cover_words.hpp"

#include <algorithm>
#include <cassert>
#include <iterator>
#include <string_view>
#include <utility>

#include "sheet/texts.hpp"

namespace swathe {
namespace {

using sheet_texts::listed;
using sheet_texts::say;

/// One of three texts, by the way that a cover is laid on the print.
const char* by_way(Sameness::How how, const char* same, const char* turned, const char* flipped) {
  switch (how) {
    case Sameness::How::Same:
      return same;
    case Sameness::How::Turned:
      return turned;
    case Sameness::How::Mirrored:
      return flipped;
  }
  return same;
}

std::string repeats(const Made& made, std::size_t bumper) {
  const Sameness& same = *made.same[bumper];
  const std::string& other = made.patterns[static_cast<std::size_t>(same.other)].bumper;
  // It has a print of its own: nothing is turned, whichever way the two are alike.
  if (!same.but_for.empty())
    return say("same.but-for", {{"own", made.patterns[bumper].bumper},
                                {"bumper", other},
                                {"parts", listed(difference_words(same.but_for))}});
  return say(by_way(same.how, "same.print", "same.print-turned", "same.print-flipped"),
             {{"bumper", other}, {"count", std::to_string(made.job.cloth.colors.size())}});
}

std::string repeated_by(const Made& made, std::size_t bumper) {
  std::vector<std::string> words;
  for (const auto& [how, text] : {std::pair{Sameness::How::Same, "same.again"},
                                  {Sameness::How::Turned, "same.again-turned"},
                                  {Sameness::How::Mirrored, "same.again-flipped"}}) {
    std::vector<std::string> names;
    for (std::size_t k = 0; k < made.same.size(); ++k)
      if (is_cut_from_another(made, k) && made.same[k]->other == static_cast<int>(bumper) &&
          made.same[k]->how == how)
        names.push_back(made.patterns[k].bumper);
    if (!names.empty()) words.push_back(say(text, {{"bumpers", listed(names)}}));
  }
  // A cover that is like an earlier one but has a print of its own has said so above.
  if (!words.empty() && !made.same[bumper])
    words.insert(words.begin(), say("same.as-it-is", {{"bumper", made.patterns[bumper].bumper}}));
  std::string all;
  for (const std::string& sentence : words) all += (all.empty() ? "" : ". ") + sentence;
  return all;
}

}  // namespace

std::vector<std::string> difference_words(const std::vector<std::string>& differences) {
  static constexpr std::pair<std::string_view, std::string_view> kWords[] = {
      {"outline", "differs.outline"},         {"windows", "differs.windows"},
      {"punch holes", "differs.punch-holes"}, {"brackets", "differs.brackets"},
      {"pleats", "differs.pleats"},           {"seams", "differs.seams"},
      {"match marks", "differs.match-marks"}, {"numerals", "differs.numerals"},
  };
  std::vector<std::string> words;
  for (const std::string& what : differences) {
    const auto* const found = std::ranges::find(kWords, what, [](auto pair) { return pair.first; });
    assert(found != std::end(kWords) && "every difference has its words");
    words.push_back(say(found->second));
  }
  return words;
}

bool is_cut_from_another(const Made& made, std::size_t bumper) {
  return bumper < made.same.size() && made.same[bumper] && made.same[bumper]->but_for.empty();
}

std::string same_words(const Made& made, std::size_t bumper) {
  if (bumper >= made.same.size()) return "";
  const std::string ours = made.same[bumper] ? repeats(made, bumper) : "";
  const std::string theirs = repeated_by(made, bumper);
  return ours.empty() || theirs.empty() ? ours + theirs : ours + ". " + theirs;
}

}  // namespace swathe
