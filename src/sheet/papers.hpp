#pragma once

#include "swathe/draw.hpp"
#include "swathe/job.hpp"

namespace swathe {

/// What a job's sheets are composed on: pages that fill the true paper once they are stretched.
struct Papers {
  PaperKeys own;     ///< the job's
  PaperKeys office;  ///< of what is read at the bench and not at full size: that needs no roll
};
Papers papers_of(const Job& job);

/// Whether the page, as it is printed, is no larger than a PDF's reader need take.
bool fits_in_pdf(const Page& page);

}  // namespace swathe
