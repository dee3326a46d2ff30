// A drawn job, changed by the input's bytes, through everything: refused, each fault with its
// place; or made, composed on sheets, and written.

#include <cmath>
#include <cstdint>
#include <cstdio>
#include <nlohmann/json.hpp>
#include <string>

#include "fuzz/drawn_text.hpp"
#include "fuzz/faults.hpp"
#include "job/limits.hpp"
#include "swathe/make.hpp"
#include "swathe/pattern.hpp"
#include "swathe/sheet.hpp"
#include "swathe/write.hpp"

namespace swathe {
namespace {

using fuzz::must;

/// How many there were of each, told at the end.
struct Tally {
  long made = 0, refused = 0;
  ~Tally() { std::fprintf(stderr, "# %ld made, %ld refused\n", made, refused); }
} tally;

const Font& labels() {
  static const Font font = *Font::open(label_font());
  return font;
}

/// A mark within its page, or the fault with the page and the mark.
void must_hold(const Page& page, const plane::Box& mark, const char* promise) {
  constexpr double kPen = 0.5;  // mm: half of the thickest line, and to spare
  if (plane::Box{{0, 0}, {page.width_mm, page.height_mm}}.grown(kPen).holds(mark)) return;
  std::fprintf(stderr, "page \"%s\", %g x %g: %g %g to %g %g\n", page.name.c_str(), page.width_mm,
               page.height_mm, mark.lo.x, mark.lo.y, mark.hi.x, mark.hi.y);
  must(false, promise);
}

void check_page(const Page& page) {
  must(page.width_mm > 0 && page.height_mm > 0 && std::isfinite(page.width_mm * page.height_mm),
       "a page has a size");
  for (const draw::Mark& mark : page.drawing.marks()) {
    if (const auto* const line = std::get_if<LineMark>(&mark)) {
      for (const plane::Vertex& vertex : line->path.vertices)
        must(std::isfinite(vertex.at.x + vertex.at.y + vertex.bulge), "a line is finite");
      must_hold(page, bounds(line->path), "a line lies on its page");
    }
    if (const auto* const fill = std::get_if<FillMark>(&mark))
      for (const plane::Path& outline : fill->outlines)
        must_hold(page, bounds(outline), "a shape lies on its page");
    if (const auto* const text = std::get_if<TextMark>(&mark)) {
      must_hold(page, {text->at, text->at}, "a text begins on its page");
      must(std::isfinite(text->turn) && text->height_mm > 0, "and has a height");
    }
  }
}

void write_pdf(const Sheet& sheet) {
  for (const Page& page : sheet.pages)
    if (std::max(page.width_mm * page.print.x, page.height_mm * page.print.y) >
        kPaperSize.most.mm())
      return;  // no PDF is made of it
  const std::string pdf = to_pdf(sheet, labels());
  must(pdf.starts_with("%PDF-") && pdf.ends_with("%%EOF\n"), "a PDF is whole");
}

enum Writer { kPdf, kSvg, kDxf, kReport, kObj, kModel, kWriters };

void write_sheet(const Sheet& sheet, int writer) {
  if (writer == kPdf) write_pdf(sheet);
  for (const Page& page : sheet.pages) {
    if (writer == kSvg)
      must(to_svg(page, sheet.title, labels()).ends_with("</svg>\n"), "SVG is whole");
    if (writer == kDxf) must(to_dxf(page, labels()).ends_with("EOF\n"), "DXF is whole");
  }
}

void write(const Made& made, const std::vector<Sheet>& sheets, int writer) {
  for (const Sheet& sheet : sheets) write_sheet(sheet, writer);
  if (writer == kReport) {
    const std::string text = report_json(made, told(sheets));
    const auto report = nlohmann::json::parse(text, nullptr, false);
    must(!report.is_discarded(), "the report is JSON");
    must(report.at("bumpers").size() == made.job.bumpers.size(), "and has every bumper");
    // A side that nobody reads has no bearings; a number that is none would be null too.
    for (auto at = text.find("null"); at != std::string::npos; at = text.find("null", at + 1))
      must(text.substr(0, at).ends_with("_deg\": "), "and every number in it is one");
  }
  for (std::size_t b = 0; b < made.wraps.size(); ++b) {
    if (writer == kObj) {
      const Mesh mesh = make_mesh(made.wraps[b], made.job.cloth);
      for (const SpacePoint p : mesh.points)
        must(std::isfinite(p.x + p.y + p.z), "a mesh is finite");
      must(!to_obj(mesh).empty(), "OBJ is written");
    }
    if (writer == kModel) {
      const Sheet model = model_sheet(made, b, 0.25, made.job.paper, labels());
      for (const Page& page : model.pages) check_page(page);
      if (!model.pages.empty()) write_pdf(model);
    }
  }
}

}  // namespace
}  // namespace swathe

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace swathe;
  const fuzz::DrawnInput input = fuzz::drawn_input(data, size);
  const auto made = make(input.text, "job.toml");
  if (!made) {
    ++tally.refused;
    fuzz::check_faults(made.error(), input.text);
    return 0;
  }
  ++tally.made;
  const std::vector<Sheet> sheets = all_sheets(*made, labels());
  must(!sheets.empty(), "a job has sheets");
  for (const Sheet& sheet : sheets) {
    must(!sheet.pages.empty(), "a sheet has pages");
    for (const Page& page : sheet.pages) check_page(page);
  }
  for (int writer = 0; writer < kWriters; ++writer)
    if (input.writer < 0 || input.writer % kWriters == writer) write(*made, sheets, writer);
  return 0;
}
