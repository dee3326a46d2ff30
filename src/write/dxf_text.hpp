#pragma once

#include <string>
#include <string_view>

namespace swathe {

/// Words as a text of a DXF file, in plain ASCII: other characters by their number in Unicode,
/// control characters left out, and nothing that its readers take for a code: "%%d" stands as "%
/// %d".
std::string dxf_text(std::string_view words);

}  // namespace swathe
