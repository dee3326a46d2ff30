#pragma once

#include <string>

#include "swathe/make/made.hpp"
#include "swathe/type/face.hpp"

// The example job and its stages, as each measurement starts from them.
namespace swathe::bench {

std::string example_text();
Made make_job(const std::string& text);
Made made_example();
Face labels();

}  // namespace swathe::bench
