#pragma once

#include <string>
#include <string_view>

#include "swathe/draw/drawing.hpp"
#include "swathe/type/font.hpp"

// Both throw std::runtime_error where the drawing library fails (out of memory, or more dots than
// it can hold): the machine's fault, not the user's.
namespace swathe {

struct PdfOptions {
  std::string created = "2000-01-01T00:00:00Z";  ///< creation date in the file, ISO 8601
};

/// The sheet as a PDF 1.5 file at full size: 1 mm on the page is 1 mm in the drawing. Its text can
/// be searched.
///
/// Requires: at least one page; no side over 5080 mm (ISO 32000-1, annex C.2: 14 400 units); text
/// in UTF-8.
/// Holds (pdf_test.cpp): (1) same sheet, same font, same options: same bytes; (2) pages have the
///   size asked for, and what is drawn on them its true size.
std::string to_pdf(const Sheet& sheet, const Font& labels, const PdfOptions& options = {});

/// One page as a PNG picture.
/// Requires: at least one dot each way, and no side over 32 767 dots.
std::string to_png(const Page& page, const Font& labels, double dots_per_mm);

}  // namespace swathe
