#include <stdexcept>

#include "page/core/asks.hpp"

namespace swathe::page {

Outcome<Answer> label_letters(Session&, const Json&) {
  return Answer{"", std::string(label_font())};
}

Outcome<Answer> look_at_font(Session& session, const Json& request) {
  constexpr double kAnyHeight = 100;  // mm
  const std::string name = request.at("name");
  const auto given = session.files.find(name);
  if (given == session.files.end()) throw std::runtime_error("no file \"" + name + "\" was given");
  const auto opened = session.fonts.open(given->second);
  if (!opened) return tl::unexpected(opened.error());
  if (const auto digits = set_digits(opened->font, "0123456789", kAnyHeight); !digits)
    return tl::unexpected(digits.error());
  Json axes = Json::array();
  for (const FontAxis& axis : opened->font.axes())
    axes.push_back(
        {{"tag", axis.tag}, {"least", axis.least}, {"most", axis.most}, {"value", axis.value}});
  return said({{"name", opened->font.name()}, {"axes", std::move(axes)}});
}

}  // namespace swathe::page
