#pragma once

#include <string>

#include "swathe/make.hpp"
#include "swathe/type.hpp"

// The example job and its stages, as each measurement starts from them.
namespace swathe::bench {

std::string example_text();
Made make_job(const std::string& text);
Made made_example();
Font labels();

}  // namespace swathe::bench
