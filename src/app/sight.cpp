#include "sight.hpp"

#include <fmt/format.h>

#include "swathe/base.hpp"
#include "table.hpp"
#include "text.hpp"

namespace swathe::app {
std::string sight_text(const Made& made) {
  const Units units = made.job.units;
  Table table({{"distance", Column::Align::Right},
               {"eye height", Column::Align::Right},
               {"can be read", Column::Align::Right},
               {"cannot be read, deg", Column::Align::Left, true},
               {"looks like another number, deg", Column::Align::Left, true}});
  for (const SightRing& ring : made.sight->rings)
    table.add({walked(ring.distance, units), exact(ring.eye_height, units),
               plain_number(100 * ring.fraction(Reads::Number), 0) + " %",
               arcs_in_words(ring.arcs, Reads::Nothing, made.sight->step),
               arcs_in_words(ring.arcs, Reads::Another, made.sight->step)});
  std::string text = table.to_text();
  text += paragraph("",
                    "deg: where somebody stands. 0 is straight ahead of the machine, 90 is to its "
                    "left, 180 behind it.");
  if (!made.sight->advice.empty()) text += paragraph("", "To mend it: " + made.sight->advice + ".");
  return text;
}

}  // namespace swathe::app
