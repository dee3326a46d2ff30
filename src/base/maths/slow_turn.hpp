#pragma once

#include "base/maths/wide.hpp"

namespace swathe::maths::slow {

struct SineCosine {
  Wide sine, cosine;
};

/// Of any finite angle.
SineCosine sine_cosine(double radians);

}  // namespace swathe::maths::slow
