#include "scale.hpp"

#include <string_view>

#include "swathe/base.hpp"
#include "swathe/sheet.hpp"

namespace swathe::app {

std::optional<double> read_scale(const std::string& words) {
  const std::string_view all = words;
  const std::size_t slash = all.find('/');
  const auto over = parse_number(all.substr(0, slash));
  const auto under = slash == std::string_view::npos ? 1.0 : parse_number(all.substr(slash + 1));
  if (!over || !under || !(*under > 0)) return std::nullopt;
  const double scale = *over / *under;
  if (!(scale >= kLeastModel && scale <= kMostModel)) return std::nullopt;
  return scale;
}

}  // namespace swathe::app
