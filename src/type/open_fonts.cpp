#include <algorithm>
#include <utility>

#include "swathe/type.hpp"

namespace swathe {

Outcome<OpenedFont> OpenFonts::open(std::string_view bytes,
                                    const std::map<std::string, double>& axes) {
  const auto known = std::ranges::find_if(
      kept_, [&](const Kept& kept) { return kept.axes == axes && *kept.font.bytes == bytes; });
  if (known != kept_.end()) {
    std::rotate(kept_.begin(), known, known + 1);
    return kept_.front().font;
  }
  ++opened_;
  auto own = std::make_shared<const std::string>(bytes);
  auto font = Font::open(*own, axes);
  if (!font) return tl::unexpected(std::move(font.error()));
  kept_.insert(kept_.begin(), {axes, {std::move(own), *std::move(font)}});
  if (kept_.size() > kMost) kept_.pop_back();
  return kept_.front().font;
}

}  // namespace swathe
