#include "sheet/cautions.hpp"

#include <fmt/format.h>

#include <cassert>
#include <string_view>

#include "base/embedded.hpp"
#include "base/texts.hpp"

namespace swathe {

std::string caution(const std::string& name) {
  const std::string_view all = embedded(fmt::format("sheet/{}/cautions.txt", kLanguage));
  const std::string head = "[" + name + "]\n";
  const std::size_t at = all.find(head);
  assert(at != std::string_view::npos);
  const std::string_view rest = all.substr(at + head.size());
  std::string_view words = rest.substr(0, rest.find("\n["));
  while (!words.empty() && words.back() == '\n') words.remove_suffix(1);
  return std::string(words);
}

}  // namespace swathe
