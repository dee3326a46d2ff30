#pragma once

#include <string>
#include <string_view>

#include "swathe/sheet/drawing.hpp"
#include "swathe/type/face.hpp"

namespace swathe {

struct PdfOptions {
  std::string created = "2000-01-01T00:00:00Z";  ///< creation date in the file, ISO 8601
};

/// The sheet as a PDF 1.5 file at full size: 1 mm on the page is 1 mm in the drawing.
/// Holds: same sheet, same face, same options: same bytes.
std::string to_pdf(const Sheet& sheet, const Face& labels, const PdfOptions& options = {});

/// One page as a PNG picture.
std::string to_png(const Page& page, const Face& labels, double dots_per_mm);

}  // namespace swathe
