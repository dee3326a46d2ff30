#include "creation_date.hpp"

#include <fmt/format.h>

#include <charconv>
#include <chrono>

#include "swathe/write/pdf.hpp"

namespace swathe::app {

std::string creation_date(std::string_view epoch) {
  constexpr long long kYear10000 = 253402300800;  // the first second that needs five digits
  long long seconds = 0;
  const char* end = epoch.data() + epoch.size();
  const auto [stop, error] = std::from_chars(epoch.data(), end, seconds);
  if (epoch.empty() || error != std::errc{} || stop != end || seconds < 0 || seconds >= kYear10000)
    return PdfOptions{}.created;
  using namespace std::chrono;
  const sys_seconds when{std::chrono::seconds(seconds)};
  const year_month_day day(floor<days>(when));
  const hh_mm_ss time(when - floor<days>(when));
  return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}Z", static_cast<int>(day.year()),
                     static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()),
                     time.hours().count(), time.minutes().count(), time.seconds().count());
}

}  // namespace swathe::app
