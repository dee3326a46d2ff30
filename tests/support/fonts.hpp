#pragma once

#include <string>
#include <vector>

#include "swathe/type.hpp"

namespace swathe::test {

/// The bundled fonts as they are set by default, and the narrow instance of the variable one.
const std::vector<BundledFont>& numeral_fonts();

const BundledFont& numeral_font(const std::string& name);

Font opened(const BundledFont& bundled);

}  // namespace swathe::test
