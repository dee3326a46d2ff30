#pragma once

namespace swathe {

/// Of the library and the command alike; CMake reads it here.
inline constexpr const char* kVersion = "0.1.0";

}  // namespace swathe
