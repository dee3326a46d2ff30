#include "swathe/job.hpp"

namespace swathe {

JobReading read_again(const Job& job) {
  return read_job(job_text(job), job.source.empty() ? "job" : job.source);
}

Refusals check_job(const Job& job) { return read_again(job).faults; }

}  // namespace swathe
