// Any bytes as a rule file: refused, each fault with its place; or read to values that can be said.

#include <cstdint>
#include <string_view>

#include "fuzz/faults.hpp"
#include "swathe/rules.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using swathe::fuzz::must;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto season = swathe::read_season(text, "rules.toml");
  if (!season) {
    swathe::fuzz::check_faults(season.error(), text);
    return 0;
  }
  must(!season->name.empty(), "a season has a name");
  for (const swathe::SeasonEntry& entry : swathe::entries(*season)) {
    must(!entry.value.empty() && !entry.rule.empty(), "a value has words and a rule");
    must(entry.value.find('\n') == std::string::npos, "in one line");
    must(entry.value.find("nan") == std::string::npos, "and is a number");
  }
  if (const auto& zone = season->zone_filled)
    must(zone->value.from < zone->value.to, "a zone runs upwards");
  if (const auto& height = season->numerals_height)
    must(height->value >= swathe::Length(), "no length is negative");
  return 0;
}
