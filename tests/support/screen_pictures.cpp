#include "support/screen_pictures.hpp"

#include <cstddef>

namespace swathe::test {

std::vector<NamedPicture> screen_pictures(const Made& made, const Font& labels,
                                          const ScreenOptions& options) {
  std::vector<NamedPicture> all;
  all.push_back({"plan", screen_plan(made, labels, options)});
  all.push_back({"cut-through", screen_cut_through(made, labels, options)});
  for (std::size_t k = 0; k < made.patterns.size(); ++k) {
    const std::string name = "cover " + made.patterns[k].bumper;
    all.push_back({name, screen_cover(made, k, labels, options)});
    all.push_back(
        {name + " as printed", screen_cover(made, k, labels, options, CoverShown::AsPrinted)});
  }
  const Observer near = first_observer(made, degrees(35));
  all.push_back({"view", screen_view(made, labels, near, options, ViewSize::AllRound)});
  for (const PlaceVerdict& side : side_verdicts(made))
    all.push_back({"view from " + side.way, screen_view(made, labels, side.from, options)});
  all.push_back({"chart", screen_chart(made, labels, near, options)});
  const Observer between{degrees(200), inches(500), inches(40), 0};  // a height that no job asks of
  all.push_back({"chart between", screen_chart(made, labels, between, options)});
  return all;
}

}  // namespace swathe::test
