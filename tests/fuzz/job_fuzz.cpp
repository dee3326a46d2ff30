// Any bytes as a job: refused, each fault with its place; or read, written, and read again to the
// same job.

#include <cstdint>
#include <string>
#include <string_view>

#include "fuzz/faults.hpp"
#include "swathe/job.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using swathe::fuzz::must;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const swathe::JobReading reading = swathe::read_job(text, "job.toml");
  if (!reading.faults.empty()) {
    swathe::fuzz::check_faults(reading.faults, text);
    return 0;
  }
  const std::string written = swathe::job_text(reading.job);
  const swathe::JobReading again = swathe::read_job(written, "job.toml");
  must(again.faults.empty(), "what a job is written as reads without a fault");
  must(swathe::job_text(again.job) == written, "and as the same job");
  return 0;
}
