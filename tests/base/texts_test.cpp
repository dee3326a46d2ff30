#include "base/texts.hpp"

#include <doctest/doctest.h>
#include <fmt/args.h>
#include <fmt/format.h>

#include <set>

#include "base/embedded.hpp"

namespace swathe {
namespace {

/// Rooms that have a file of texts.
std::set<std::string> rooms_with_texts() {
  std::set<std::string> rooms;
  for (const Embedded& file : all_embedded())
    if (const auto at = file.name.find(fmt::format("/{}/texts.toml", kLanguage));
        at != std::string_view::npos)
      rooms.emplace(file.name.substr(0, at));
  return rooms;
}

std::string with_longest(const Texts::Text& text, std::string_view but_for = "") {
  fmt::dynamic_format_arg_store<fmt::format_context> store;
  for (const auto& [name, longest] : text.longest)
    if (name != but_for) store.push_back(fmt::arg(name.c_str(), longest));
  return fmt::vformat(text.words, store);
}

TEST_CASE("texts: each says every value that it declares, and no other") {
  const std::set<std::string> rooms = rooms_with_texts();
  REQUIRE(!rooms.empty());
  for (const std::string& room : rooms) {
    const Texts texts = Texts::of_room(room);
    for (const auto& entry : texts.all()) {
      const Texts::Text& text = entry.second;
      CAPTURE(room);
      CAPTURE(entry.first);
      REQUIRE_NOTHROW(with_longest(text));
      for (const auto& value : text.longest) {
        CAPTURE(value.first);
        CHECK(!value.second.empty());
        CHECK_THROWS_AS(with_longest(text, value.first), fmt::format_error);
      }
      const std::string printed = with_longest(text);
      CHECK(printed.find_first_of("{}\n\t") == std::string::npos);
      CHECK(printed.find("  ") == std::string::npos);
    }
  }
}

}  // namespace
}  // namespace swathe
