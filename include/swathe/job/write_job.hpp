#pragma once

#include <string>

#include "swathe/job/job.hpp"

namespace swathe {

/// A job file that reads as this job: every key, lengths in millimeters to the last digit.
///
/// Holds: (1) read_job(job_text(job)) has no fault, for a job that was read without one
///        (2) job_text of what it reads is the same text
std::string job_text(const Job& job);

}  // namespace swathe
