#include "shopping.hpp"

#include <fmt/format.h>

#include "swathe/base.hpp"
#include "text.hpp"

namespace swathe::app {
namespace {

std::string used(double fraction) {
  return fmt::format("({} % used)", plain_number(100.0 * fraction, 0));
}

}  // namespace

std::string boards_to_buy(const Made& made) {
  const BoardKeys& keys = made.job.boards;
  const Units units = made.job.units;
  return fmt::format("{} of {} x {} {}",
                     count_of(static_cast<std::size_t>(made.stock.sheets), "sheet", "sheets"),
                     dimension(keys.stock[0], units), dimension_with_unit(keys.stock[1], units),
                     used(made.stock.sheets_used));
}

std::string screws_to_buy(const Made& made) {
  const Screws& screws = made.stock.screws;
  const Units units = made.job.units;
  const std::string size =
      units == Units::Inches ? fmt::format("No. {}, {}", screws.number, exact(screws.length, units))
                             : fmt::format("{} x {}", plain_number(screws.across.mm(), 1),
                                           exact(screws.length, units));
  return fmt::format("{}, {}, countersunk",
                     count_of(static_cast<std::size_t>(screws.count), "wood screw", "wood screws"),
                     size);
}

std::string padding_to_buy(const Made& made) {
  const PaddingKeys& padding = made.job.padding;
  const bool noodles = padding.form == PaddingForm::Noodles;
  return fmt::format("{} of {} {}",
                     count_of(made.stock.padding.sticks.size(), noodles ? "noodle" : "block",
                              noodles ? "noodles" : "blocks"),
                     dimension_with_unit(padding.stock, made.job.units),
                     used(made.stock.padding.used_fraction));
}

std::string cloth_to_buy(const Made& made, const ClothLay& lay) {
  const Units units = made.job.units;
  std::string length = dimension_with_unit(mm(lay.length_to_buy), units);
  // Cloth is sold by the yard where it is measured in inches.
  if (units == Units::Inches) length += fmt::format(" ({})", yards(mm(lay.length_to_buy)));
  const std::string crooked = lay.shop_cut > 0
                                  ? fmt::format(", {} of it for a crooked cut",
                                                dimension_with_unit(mm(lay.shop_cut), units))
                                  : "";
  return fmt::format("{} of {}, from a roll {} wide{} {}", length, printable(lay.color),
                     dimension_with_unit(mm(lay.roll_width), units), crooked,
                     used(lay.used_fraction));
}

std::string shopping_text(const Made& made) {
  std::string text = "To buy, for all colors:\n" + paragraph("  boards:  ", boards_to_buy(made));
  if (made.stock.screws.count > 0) text += paragraph("  screws:  ", screws_to_buy(made));
  text += paragraph("  padding: ", padding_to_buy(made));
  for (const ClothLay& lay : made.stock.cloth)
    text += paragraph("  cloth:   ", cloth_to_buy(made, lay));
  return text;
}

}  // namespace swathe::app
