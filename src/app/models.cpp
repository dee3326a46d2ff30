#include "models.hpp"

#include <fmt/format.h>

#include <cmath>
#include <utility>

#include "swathe/sheet.hpp"
#include "text.hpp"

namespace swathe::app {

std::string smaller_model_text(const Made& made, const Font& labels, double scale) {
  const std::string& paper = made.job.paper.sheet;
  const auto fit = [&](double at) {
    for (std::size_t b = 0; b < made.patterns.size(); ++b)
      if (model_sheet(made, b, at, made.job.paper, labels).paper != paper) return false;
    return true;
  };
  if (fit(scale)) return "";
  const int most = static_cast<int>(1 / kLeastModel);
  for (int parts = static_cast<int>(1 / scale) + 1; parts <= most; ++parts)
    if (fit(1.0 / parts))
      return fmt::format("Models at {} need larger card than {}; at {} they fit on it.\n",
                         scale_words(scale), printable(paper), scale_words(1.0 / parts));
  return "";
}

namespace {

/// "expected a smaller scale, such as 1/8"
std::string smaller_scale(const Made& made, const Font& labels, double scale) {
  const int most = static_cast<int>(1 / kLeastModel);
  for (int parts = static_cast<int>(1 / scale) + 1; parts <= most; ++parts) {
    bool fit = true;
    for (std::size_t b = 0; fit && b < made.patterns.size(); ++b)
      fit = !model_sheet(made, b, 1.0 / parts, made.job.paper, labels).pages.empty();
    if (fit) return "expected a smaller scale, such as " + scale_words(1.0 / parts);
  }
  return "expected no --scale: models fit at no scale";
}

}  // namespace

std::optional<std::vector<Sheet>> models_of(Terminal& terminal, const Made& made,
                                            const Font& labels, double scale) {
  std::vector<Sheet> models;
  for (std::size_t b = 0; b < made.patterns.size(); ++b) {
    Sheet model = model_sheet(made, b, scale, made.job.paper, labels);
    if (model.pages.empty()) {
      terminal.complain(
          fmt::format("swathe: --scale {}: the model of bumper {} fits no sheet of card, {}",
                      scale_words(scale), printable(made.patterns[b].bumper),
                      smaller_scale(made, labels, scale)));
      return {};
    }
    models.push_back(std::move(model));
  }
  return models;
}

}  // namespace swathe::app
