#include "base/maths/slow.hpp"
#include "base/maths/wide.hpp"

namespace swathe::maths::slow {

// A root may be a short number, or the middle between two doubles: snapped, it is just that.

double hypotenuse(double x, double y) {
  return root(Wide(x) * Wide(x) + Wide(y) * Wide(y), 2).snapped().rounded();
}

double power(double base, int over, int under) {
  return root(whole_power(Wide(base), over), under).snapped().rounded();
}

}  // namespace swathe::maths::slow
