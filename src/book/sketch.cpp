#include <algorithm>

#include "book/chapters.hpp"
#include "book/texts.hpp"
#include "sheet/plan_picture.hpp"
#include "sheet/section_picture.hpp"

namespace swathe {
namespace {

using book_texts::say;

constexpr double kSection = 96.0;  ///< height
constexpr double kAbove = 22.0;    ///< what the words above the plan take
constexpr double kLeast = 100.0;   ///< height for the plan, however small the paper

}  // namespace

void add_sketch(const Made& made, Flow& flow) {
  flow.chapter(say("chapter.built"));
  flow.words(say("sketch.plan"));
  flow.picture(
      plan_picture(made, flow.labels(), flow.width(), std::max(kLeast, flow.height() - kAbove)));
  flow.words(say("sketch.cut-through"));
  flow.picture(section_picture(made, flow.labels(), flow.width(), kSection));
}

}  // namespace swathe
