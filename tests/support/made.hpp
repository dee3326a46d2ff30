#pragma once

#include <doctest/doctest.h>

#include <string>
#include <string_view>
#include <utility>

#include "swathe/make.hpp"

namespace swathe::test {

/// The whole pass over a job's text, which names no file.
inline Outcome<Made> make_text(std::string_view text, const std::string& file = "job.toml") {
  return make(text, file);
}

/// The same of a job that can be made.
inline Made made(std::string_view text, const std::string& file = "job.toml") {
  auto made = make_text(text, file);
  REQUIRE_MESSAGE(made.has_value(), to_text(made.error().front()));
  return *std::move(made);
}

}  // namespace swathe::test
