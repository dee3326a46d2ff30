#include <fmt/format.h>

#include "commands.hpp"
#include "load.hpp"
#include "swathe/base/units.hpp"
#include "swathe/rules/season.hpp"
#include "swathe/type/digits.hpp"
#include "swathe/type/faces.hpp"
#include "swathe/type/figures.hpp"
#include "table.hpp"

namespace swathe::app {
namespace {

/// What the faces are measured for.
struct Wish {
  Season season;
  Units units = Units::Inches;
  std::string number;  ///< may be empty
};

/// The job's season and number; the newest season without a job, or for one that has no season.
tl::expected<Wish, Exit> wish_of(Terminal& terminal, const std::string& job) {
  Wish wish;
  if (!job.empty()) {
    const auto made = load(terminal, job);
    if (!made) return tl::unexpected(made.error());
    wish.units = made->job.units;
    wish.number = made->job.number;
    if (made->season && made->season->numerals_height) {
      wish.season = *made->season;
      return wish;
    }
  }
  const auto newest = bundled_season(season_names().front());
  if (!newest) {
    terminal.complain(newest.error());
    return tl::unexpected(Exit::MachineFailed);
  }
  wish.season = *newest;
  return wish;
}

std::string axes_text(const BundledFace& face) {
  std::string text;
  for (const auto& [axis, value] : face.axes)
    text += fmt::format("{}{} {}", text.empty() ? "" : ", ", axis, plain_number(value, 2));
  return text;
}

std::string number_text(double millimetres, Units units) {
  return units == Units::Inches ? fmt::format("{:.2f}", mm(millimetres).inches())
                                : fmt::format("{:.1f}", millimetres);
}

Outcome<Table> measure(const Wish& wish) {
  const double height = wish.season.numerals_height->value.mm();
  const double stroke = wish.season.numerals_stroke ? wish.season.numerals_stroke->value.mm() : 0.0;
  std::vector<Column> columns = {
      {"face", Column::Align::Left, true},
      {"median", Column::Align::Right},
      {"thinnest", Column::Align::Right},
      {"wide enough", Column::Align::Right},
      {"5 widest", Column::Align::Right},
      {wish.number.empty() ? "5 mean" : wish.number, Column::Align::Right}};
  Table table(std::move(columns));
  for (const BundledFace& bundled : bundled_faces()) {
    const auto face = open_bundled(bundled);
    if (!face) return tl::unexpected(face.error());
    const auto figures = measure_face(*face, height, stroke);
    if (!figures) return tl::unexpected(figures.error());
    double last = figures->five_average;
    if (!wish.number.empty()) {
      const auto line = set_digits(*face, wish.number, height);
      if (!line) return tl::unexpected(line.error());
      last = line->ink.width();
    }
    const DigitFigures& thinnest = figures->thinnest();
    double median = 0, length = 0;
    for (const DigitFigures& digit : figures->digits) {
      median += digit.stroke_median * digit.stroke_length;
      length += digit.stroke_length;
    }
    table.add(
        {bundled.name, number_text(median / length, wish.units),
         fmt::format("{} ({})", number_text(thinnest.stroke_least, wish.units), thinnest.digit),
         fmt::format("{:.1f} %", 100.0 * figures->share_at_least()),
         number_text(figures->five_widest, wish.units), number_text(last, wish.units)});
    std::string note = axes_text(bundled);
    if (!bundled.note.empty()) note += (note.empty() ? "" : "; ") + bundled.note;
    note += (note.empty() ? "" : "; ") + ("stroke " + verdict(*figures));
    table.add_note(note);
  }
  return table;
}

}  // namespace

Exit fonts(Terminal& terminal, const std::string& job) {
  const auto wish = wish_of(terminal, job);
  if (!wish) return wish.error();
  const auto table = measure(*wish);
  if (!table) {
    terminal.complain(table.error());
    return Exit::MachineFailed;
  }
  const Season& season = wish->season;
  std::string text =
      paragraph("", fmt::format("Bundled faces at the least height of {}, {}{}. Figures in {}.",
                                season.name, exact(season.numerals_height->value, wish->units),
                                season.numerals_stroke
                                    ? fmt::format("; stroke at least {} for most of its length",
                                                  exact(season.numerals_stroke->value, wish->units))
                                    : "",
                                wish->units == Units::Inches ? "inches" : "mm"));
  text += '\n' + table->to_text() + '\n';
  text += paragraph("",
                    "median: the stroke's usual width. thinnest: its least width, and in which "
                    "digit. wide enough: the share of the strokes' length that is. 5 widest: "
                    "ink of the widest digit five times.");
  terminal.answer(text);
  return Exit::Done;
}

}  // namespace swathe::app
