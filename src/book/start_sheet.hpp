#pragma once

#include <string>

#include "draw/page_head.hpp"
#include "swathe/draw.hpp"
#include "swathe/make.hpp"
#include "swathe/sheet.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// Where to start: the frame with its bumpers, whether the rules are met, what to print first and
/// the ways to print the rest, the order of work in short. The book's first page is the same.
Sheet start_sheet(const Made& made, const PrintWays& ways, const PaperKeys& paper,
                  const Font& labels);
SheetName start_name(const PaperKeys& paper);

/// The head of its page, under that subject.
PageHead start_head(const Made& made, const std::string& subject);

}  // namespace swathe
