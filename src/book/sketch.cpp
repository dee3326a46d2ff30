#include <algorithm>

#include "book/chapters.hpp"
#include "sheet/plan_picture.hpp"
#include "sheet/section_picture.hpp"

namespace swathe {
namespace {

constexpr double kSection = 96.0;    ///< height
constexpr double kFirstPage = 40.0;  ///< what its longer head and the words above the plan take
constexpr double kLeast = 100.0;     ///< height for the plan, however small the paper

}  // namespace

void add_sketch(const Made& made, Flow& flow) {
  flow.words(
      "From above, the machine's front at the top. A board's length is that of its longer face; "
      "over all with the cloth on. Brackets are numbered as in their list.");
  flow.picture(plan_picture(made, flow.labels(), flow.width(),
                            std::max(kLeast, flow.height() - kFirstPage)));
  flow.words(
      "A cut through a bumper: heights from the floor, depths from the board's back. The cloth is "
      "drawn clear of what it lies on.");
  flow.picture(section_picture(made, flow.labels(), flow.width(), kSection));
}

}  // namespace swathe
