#pragma once

#include <cstddef>
#include <string>

#include "swathe/make.hpp"

namespace swathe {

/// An end of a bumper by what it lies on or next to, whichever way up the cloth is and wherever one
/// stands: "end on front" if the bumper goes on to another side, "end next to bumper B" if it stays
/// on one side, "end on front, by left" where neither would tell it from the other end.
std::string cover_end_words(const Made& made, std::size_t bumper, bool start);

}  // namespace swathe
