#pragma once

#include <string>

#include "swathe/draw.hpp"
#include "swathe/job.hpp"

// A printer that stretches what it prints, made up for. Its error belongs to its own two ways, so
// it is told along the paper's shorter and longer edge, whichever way a page lies.
namespace swathe {

/// The paper as it is before its pages are stretched: what is composed on it fills the true one.
PaperKeys before_stretch(const PaperKeys& paper);

/// What a page composed on it is to be stretched by.
draw::Stretch stretch_of(const Page& page, const PaperKeys& paper);

/// That a correction is on and for what; empty where none is.
std::string correction_words(const PaperKeys& paper);

}  // namespace swathe
