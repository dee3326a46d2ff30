#pragma once

#include <string>

#include "swathe/make.hpp"

// What to buy, in words: a line for each, with the share of it that is used.
namespace swathe::app {

/// "1 sheet of 48 x 96 in (27 % used)"
std::string boards_to_buy(const Made& made);
/// "16 wood screws, No. 8, 2 in, countersunk"
std::string screws_to_buy(const Made& made);
/// "11 noodles of 60 in (80 % used)"
std::string padding_to_buy(const Made& made);
/// "90 in (2 1/2 yd) of red, from a roll 58 in wide, 2 in of it for a crooked cut (39 % used)"
std::string cloth_to_buy(const Made& made, const ClothLay& lay);

/// All of it under one heading.
std::string shopping_text(const Made& made);

}  // namespace swathe::app
