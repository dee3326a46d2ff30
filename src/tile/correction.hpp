#pragma once

#include <string>

#include "swathe/draw.hpp"
#include "swathe/job.hpp"

// Making up for a printer that stretches what it prints. Its error belongs to the paper's edges: it
// is told along the shorter and the longer one, whichever way a page lies.
namespace swathe {

/// The paper to compose pages on: once they are stretched, they fill the true paper.
PaperKeys before_stretch(const PaperKeys& paper);

/// What a page composed on it is to be stretched by.
draw::Stretch stretch_of(const Page& page, const PaperKeys& paper);

/// That a correction is on and for what; empty where none is.
std::string correction_words(const PaperKeys& paper);

}  // namespace swathe
