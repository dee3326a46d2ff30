#include "sight.hpp"

#include <fmt/format.h>

#include "swathe/base/units.hpp"
#include "table.hpp"
#include "text.hpp"

namespace swathe::app {
std::string sight_text(const Made& made) {
  const Units units = made.job.units;
  Table table({{"distance", Column::Align::Right},
               {"eyes up", Column::Align::Right},
               {"reads", Column::Align::Right},
               {"nothing reads, deg", Column::Align::Left, true},
               {"misread, deg", Column::Align::Left, true}});
  for (const SightRing& ring : made.sight->rings)
    table.add({walked(ring.distance, units), exact(ring.eye_height, units),
               plain_number(100 * ring.fraction(Reads::Number), 0) + " %",
               arcs_in_words(ring.arcs, Reads::Nothing, made.sight->step),
               arcs_in_words(ring.arcs, Reads::Another, made.sight->step)});
  std::string text = table.to_text();
  text += "Bearings run counter-clockwise from straight ahead of the machine.\n";
  if (!made.sight->advice.empty()) text += paragraph("", "To mend it: " + made.sight->advice + ".");
  return text;
}

}  // namespace swathe::app
