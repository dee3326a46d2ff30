#pragma once

// The one pass, from a job to everything that is made of it.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "swathe/base.hpp"
#include "swathe/bumper.hpp"
#include "swathe/job.hpp"
#include "swathe/numeral.hpp"
#include "swathe/pattern.hpp"
#include "swathe/rules.hpp"
#include "swathe/sight.hpp"
#include "swathe/stock.hpp"
#include "swathe/type.hpp"

namespace swathe {

/// Everything one job comes to: what the sheets, the report and the views are made from.
/// Vectors named for bumpers run in the job's order.
struct Made {
  Job job;
  std::optional<Season> season;  ///< nothing for "none"
  Frame frame;
  Section section;
  std::vector<Wrap> wraps;
  std::vector<Pattern> patterns;
  std::vector<std::vector<ClothJoin>> joins;  ///< the seams of each pattern that is cut in pieces
  /// Of each pattern's match marks, as they are printed: on a cover that is cut from another's
  /// print, the other's.
  std::vector<std::vector<std::string>> mark_names;
  std::vector<double> bare_gaps, covered_gaps;  ///< from each bumper to the next, counter-clockwise
  std::vector<std::vector<ClearStretch>> clear;  ///< of each bumper, on the cover in place
  std::vector<bumper::Piece> boards, padding;    ///< of one set
  std::optional<Numerals> numerals;  ///< where the job has a number; placed on the covers in place
  std::optional<Sight> sight;        ///< where the job has a number
  std::vector<std::optional<Sameness>> same;  ///< the earlier bumper each one repeats, if any
  Stock stock;
  std::vector<Finding> findings;  ///< worst first
  std::vector<Notice> notices;    ///< keys that the job gives in vain, by place

  /// From the covers in place to their patterns.
  ClothMap cloth_map() const { return ClothMap(job.cloth); }
  /// The numbers as they go on the patterns; none where the job has no number.
  std::vector<PlacedNumeral> numerals_on_patterns() const;
};

/// The files that a job names besides itself (a rule file, a font), as it names them: what make()
/// wants the bytes of. Empty where the job cannot be read.
std::vector<std::string> files_named(std::string_view job_text);

/// The bytes of each such file by its name, or a refusal that says why they are not to be had. The
/// library itself reads no files.
using NamedFiles = std::map<std::string, Outcome<std::string>>;

/// What a caller may leave out of the pass.
struct MakeOptions {
  /// In words, what would mend each thing that is wanting: Finding::advice, NumeralMisfit::advice,
  /// Sight::advice, and the changes of keys with them. They are empty without it, all else is the
  /// same, and no other numeral, place or font is tried for them.
  bool advice = true;
  /// Digits of an earlier job (kept_digits()): those that come to the same are taken from here, the
  /// others made anew. The result is the same bit for bit.
  const KeptDigits* kept = nullptr;
  /// Fonts that are open from earlier jobs, which those of this one join: none whose bytes are the
  /// same is opened again. The result is the same bit for bit.
  OpenFonts* fonts = nullptr;
};

/// What to hand in to the next make(); no digits where the job has no number.
KeptDigits kept_digits(const Made& made);

/// The one pass from a job file's text to everything made of it.
///
/// Refuses: a syntax error alone; otherwise every fault of keys, values and geometry that can be
/// judged in one run, by place: what hangs on a faulty table is not judged. A file that the job
/// names and `files` lacks: Missing, at its key.
Outcome<Made> make(std::string_view job_text, const std::string& job_file,
                   const NamedFiles& files = {}, const MakeOptions& options = {});

/// The same from a job built in code: judged as its text job_text(job) is, with places in that text
/// (job/check_job.hpp), in which every key counts as given, and a share of a side is kept to 12
/// decimals of a percent.
Outcome<Made> make(const Job& job, const NamedFiles& files = {}, const MakeOptions& options = {});

}  // namespace swathe
