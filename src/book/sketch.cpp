#include <algorithm>

#include "book/chapters.hpp"
#include "book/texts.hpp"
#include "sheet/plan_picture.hpp"
#include "sheet/section_picture.hpp"

namespace swathe {
namespace {

using book_texts::say;

constexpr double kSection = 96.0;    ///< height
constexpr double kFirstPage = 40.0;  ///< what its longer head and the words above the plan take
constexpr double kLongerHead = 7.0;  ///< what one set with covers to change takes more to tell
constexpr double kLeast = 100.0;     ///< height for the plan, however small the paper

}  // namespace

void add_sketch(const Made& made, Flow& flow) {
  flow.words(say("sketch.plan"));
  const double above =
      kFirstPage + (made.job.cloth.fixing == Fixing::HookAndLoop ? kLongerHead : 0.0);
  flow.picture(
      plan_picture(made, flow.labels(), flow.width(), std::max(kLeast, flow.height() - above)));
  flow.words(say("sketch.cut-through"));
  flow.picture(section_picture(made, flow.labels(), flow.width(), kSection));
}

}  // namespace swathe
