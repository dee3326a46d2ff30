#include "support/made.hpp"

#include <doctest/doctest.h>

#include <utility>

namespace swathe::test {

Outcome<Made> make_text(std::string_view text, const std::string& file) { return make(text, file); }

Made made(std::string_view text, const std::string& file) {
  auto made = make_text(text, file);
  REQUIRE_MESSAGE(made.has_value(), to_text(made.error().front()));
  return *std::move(made);
}

}  // namespace swathe::test
