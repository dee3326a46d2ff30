#pragma once

#include "swathe/job/job.hpp"
#include "swathe/job/read_job.hpp"

namespace swathe {

/// A job built in code, written as its text and read back: judged as a job file is. Its places are
/// those in job_text(job), of a file named as Job::source says, or "job".
JobReading read_again(const Job& job);

/// What is wrong with a job's keys and values, each at its place in job_text(job): all that
/// read_job() refuses. Whether its parts fit one another is make()'s to say.
Refusals check_job(const Job& job);

}  // namespace swathe
