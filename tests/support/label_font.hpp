#pragma once

#include "swathe/type.hpp"

namespace swathe::test {

/// The font that sheets are lettered in.
Font label_font();

}  // namespace swathe::test
