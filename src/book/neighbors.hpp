#pragma once

#include <string>

#include "swathe/make.hpp"

// What ends lie next to, and are named by: left and right would change with where one stands.
namespace swathe {

/// Next to an end of a bumper's side, its first or its last seen from outside: the side that goes
/// on there, "front", or the bumper that follows, "bumper B".
std::string next_to(const Made& made, std::size_t bumper, std::size_t leg, bool start);

/// Next to an end of a board or of padding.
std::string next_to(const Made& made, const bumper::Piece& piece, bool start);

/// The number of a bumper, by its name.
std::size_t bumper_of(const Made& made, const std::string& name);

/// The board on a bumper's leg: "A front", or "A front by left" where it has two on that side.
std::string board_name(const Made& made, std::size_t bumper, std::size_t leg);

}  // namespace swathe
