#include "creation_date.hpp"

#include <fmt/format.h>

#include <charconv>
#include <chrono>
#include <cstdlib>

#include "swathe/write.hpp"
#include "text.hpp"

namespace swathe::app {

namespace {

constexpr long long kYear10000 = 253402300800;  // the first second that needs five digits

}  // namespace

std::optional<std::string> creation_date(std::string_view epoch) {
  if (epoch.empty()) return PdfOptions{}.created;
  long long seconds = 0;
  const char* end = epoch.data() + epoch.size();
  const auto [stop, error] = std::from_chars(epoch.data(), end, seconds);
  if (error != std::errc{} || stop != end || seconds < 0 || seconds >= kYear10000)
    return std::nullopt;
  using namespace std::chrono;
  const sys_seconds when{std::chrono::seconds(seconds)};
  const year_month_day day(floor<days>(when));
  const hh_mm_ss time(when - floor<days>(when));
  return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}Z", static_cast<int>(day.year()),
                     static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()),
                     time.hours().count(), time.minutes().count(), time.seconds().count());
}

tl::expected<std::string, std::string> creation_date_asked_for() {
  const char* epoch = std::getenv("SOURCE_DATE_EPOCH");
  const std::string_view text = epoch == nullptr ? "" : epoch;
  if (const auto date = creation_date(text)) return *date;
  return tl::unexpected(fmt::format(
      "SOURCE_DATE_EPOCH is \"{}\", expected whole seconds since 1970, 0 to {}, or unset it",
      named(text), kYear10000 - 1));
}

}  // namespace swathe::app
