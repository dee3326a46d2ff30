#include "sheet/papers.hpp"

#include <algorithm>

#include "job/limits.hpp"
#include "tile/correction.hpp"

namespace swathe {
namespace {

PaperKeys paper_at_the_bench(const Job& job) {
  PaperKeys paper = job.paper;
  if (paper.sheet != kRoll) return paper;
  const Paper& office = office_paper(job.units);
  paper.sheet = office.name;
  paper.width = office.width;
  paper.height = office.height;
  return paper;
}

}  // namespace

Papers papers_of(const Job& job) {
  return {before_stretch(job.paper), before_stretch(paper_at_the_bench(job))};
}

bool fits_in_pdf(const Page& page) {
  return std::max(page.width_mm * page.print.x, page.height_mm * page.print.y) <=
         kPaperSize.most.mm();
}

}  // namespace swathe
