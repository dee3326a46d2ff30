#pragma once

#include <string>
#include <vector>

#include "swathe/draw.hpp"
#include "swathe/type.hpp"

namespace swathe::test {

std::vector<TextMark> texts_of(const Drawing& drawing);

/// Every pair of texts whose boxes overlap, and every text that runs off the page; in words.
/// `slack`: ink keeps off the edge of its box by so much, mm.
std::vector<std::string> text_faults(const Page& page, const Font& labels, double slack = 0);

/// Every text that a line runs through, in words.
std::vector<std::string> lines_through_text(const Page& page, const Font& labels, double slack = 0);

bool says(const Drawing& drawing, const std::string& words);

int count_lines(const Drawing& drawing, LineKind kind);

}  // namespace swathe::test
