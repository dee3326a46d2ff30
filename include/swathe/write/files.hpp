#pragma once

#include <cstddef>
#include <deque>
#include <optional>
#include <string>
#include <vector>

#include "swathe/draw/drawing.hpp"
#include "swathe/make/made.hpp"
#include "swathe/type/font.hpp"
#include "swathe/write/pdf.hpp"
#include "swathe/write/sheets.hpp"

namespace swathe {

/// Which of a job's files are to be made.
enum class Wanted { Everything, Patterns, Numerals, Views };

/// Whether sheets of that kind are among them.
bool wants(Wanted wanted, SheetKind kind);

struct FileOptions {
  Wanted wanted = Wanted::Everything;
  std::string created = PdfOptions{}.created;  ///< the date in PDF files, ISO 8601
  std::vector<Sheet> models;                   ///< proof models, written after the job's own sheets
};

/// A file with its bytes, and the words beside its name.
struct MadeFile {
  std::string name;
  std::string bytes;
  std::size_t pages = 0;  ///< 0 where it has none: meshes, the report
  std::string paper, what;
};

/// A job's files, one after another in the order of work: of each sheet its PDF, and of what is cut
/// or looked at each page for drawing programs (SVG), plotters and cutters (DXF), and as dots
/// (PNG) where views alone are wanted; with everything the covers in space (OBJ) and the report.
///
/// A sheet is drawn when its first file is asked for and put away after its last, and no more than
/// one file's bytes are held.
///
/// Requires: `made` and `labels` outlive it.
/// Holds (files_test.cpp): (1) its sheets' files have the bytes that the writers make of
///   all_sheets(); (2) of some kinds only, they are those of everything (PNG beside them).
class JobFiles {
 public:
  JobFiles(const Made& made, const Font& labels, FileOptions options = {});

  /// Whether there is no file at all.
  bool none() const;
  /// Makes the next file; nothing after the last. Throws as the writers of PDF and PNG do.
  std::optional<MadeFile> next();
  /// Every sheet that was drawn so far.
  const std::vector<ToldSheet>& sheets() const { return told_; }

 private:
  enum class Format { Pdf, Svg, Png, Dxf };
  struct Part {
    Format format;
    std::size_t page;  ///< none of a PDF
  };

  bool draw_next();
  void plan_parts();
  MadeFile made_part(Part part) const;
  std::optional<MadeFile> next_beside_sheets();

  const Made& made_;
  const Font& labels_;
  FileOptions options_;
  std::vector<ListedSheet> list_;
  std::size_t listed_ = 0, models_ = 0;  ///< drawn so far
  Sheet sheet_;                          ///< whose files are made now
  std::deque<Part> parts_;               ///< of it, still to be made
  std::vector<ToldSheet> told_;
  std::size_t meshes_ = 0;
  bool reported_ = false;
};

}  // namespace swathe
