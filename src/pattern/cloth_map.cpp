#include "swathe/pattern.hpp"

namespace swathe {

ClothMap::ClothMap(const ClothKeys& cloth)
    : along_(1.0 - cloth.stretch_along),
      around_(1.0 - (cloth.fixing == Fixing::Staples ? cloth.stretch_around
                                                     : cloth.hook_and_loop.stretch)) {}

}  // namespace swathe
