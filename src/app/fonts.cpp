#include <fmt/format.h>

#include <filesystem>

#include "commands.hpp"
#include "creation_date.hpp"
#include "load.hpp"
#include "output.hpp"
#include "swathe/base.hpp"
#include "swathe/rules.hpp"
#include "swathe/sheet.hpp"
#include "swathe/type.hpp"
#include "swathe/write.hpp"
#include "table.hpp"

namespace swathe::app {
namespace {

/// What the fonts are measured for.
struct Wish {
  Season season;
  Units units = Units::Inches;
  std::string number;  ///< may be empty
  PaperKeys paper;
};

/// The job's season and number; the newest season without a job, or for one that has no season.
tl::expected<Wish, Exit> wish_of(Terminal& terminal, const std::string& job) {
  Wish wish;
  if (!job.empty()) {
    const auto made = load(terminal, job);
    if (!made) return tl::unexpected(made.error());
    wish.units = made->job.units;
    wish.number = made->job.number;
    wish.paper = made->job.paper;
    if (made->season && made->season->numerals_height) {
      wish.season = *made->season;
      return wish;
    }
  }
  const auto newest = bundled_season(newest_season());
  if (!newest) {
    terminal.complain(newest.error());
    return tl::unexpected(Exit::MachineFailed);
  }
  wish.season = *newest;
  return wish;
}

std::string axes_text(const BundledFont& font) {
  std::string text;
  for (const auto& [axis, value] : font.axes)
    text += fmt::format("{}{} {}", text.empty() ? "" : ", ", axis, plain_number(value, 2));
  return text;
}

std::string number_text(double millimeters, Units units) {
  return units == Units::Inches ? fmt::format("{:.2f}", mm(millimeters).inches())
                                : fmt::format("{:.1f}", millimeters);
}

/// "islands in 0, 4, 6, 8, 9; most alike: 6 and 8, 0 and 8"
std::string shape_words(const FontFigures& figures) {
  constexpr std::size_t kPairs = 2;
  std::string islands, alike;
  for (const DigitFigures& digit : figures.digits)
    if (digit.counters > 0)
      islands += fmt::format("{}{}", islands.empty() ? "" : ", ", digit.digit);
  for (std::size_t k = 0; k < std::min(kPairs, figures.alike.size()); ++k)
    alike += fmt::format("{}{} and {}", k == 0 ? "" : ", ", figures.alike[k].left,
                         figures.alike[k].right);
  return fmt::format("{}; most alike: {}", islands.empty() ? "no islands" : "islands in " + islands,
                     alike);
}

double median_of(const FontFigures& figures) {
  double median = 0, length = 0;
  for (const DigitFigures& digit : figures.digits) {
    median += digit.stroke_median * digit.stroke_length;
    length += digit.stroke_length;
  }
  return length > 0 ? median / length : 0;
}

Outcome<Table> measure(const Wish& wish) {
  const double height = wish.season.numerals_height->value.mm();
  const double stroke = wish.season.numerals_stroke ? wish.season.numerals_stroke->value.mm() : 0.0;
  std::vector<Column> columns = {
      {"font", Column::Align::Left, true},
      {"usual", Column::Align::Right},
      {"thinnest", Column::Align::Right},
      {"wide enough", Column::Align::Right},
      {"5 widest", Column::Align::Right},
      {wish.number.empty() ? "5 mean" : wish.number, Column::Align::Right}};
  Table table(std::move(columns));
  for (const BundledFont& bundled : bundled_fonts()) {
    const auto font = open_bundled(bundled);
    if (!font) return tl::unexpected(font.error());
    const auto figures = measure_font(*font, height, stroke);
    if (!figures) return tl::unexpected(figures.error());
    double last = figures->five_average;
    if (!wish.number.empty()) {
      const auto line = set_digits(*font, wish.number, height);
      if (!line) return tl::unexpected(line.error());
      last = line->ink.width();
    }
    const DigitFigures thinnest = figures->thinnest();
    table.add(
        {bundled.name, number_text(median_of(*figures), wish.units),
         fmt::format("{} ({})", number_text(thinnest.stroke_least, wish.units), thinnest.digit),
         fmt::format("{:.1f} %", 100.0 * figures->share_at_least()),
         number_text(figures->five_widest, wish.units), number_text(last, wish.units)});
    std::string note = axes_text(bundled);
    if (!bundled.note.empty()) note += (note.empty() ? "" : "; ") + bundled.note;
    note += (note.empty() ? "" : "; ") + ("stroke " + verdict(*figures));
    note += "; " + shape_words(*figures);
    table.add_note(note);
  }
  return table;
}

constexpr const char* kSpecimen = "20486";  ///< where no job has a number

/// A bundled font with the number in it.
Outcome<FontSpecimen> specimen_of(const BundledFont& bundled, const Wish& wish) {
  const double height = wish.season.numerals_height->value.mm();
  const double stroke = wish.season.numerals_stroke ? wish.season.numerals_stroke->value.mm() : 0.0;
  const std::string number = wish.number.empty() ? kSpecimen : wish.number;
  const auto font = open_bundled(bundled);
  if (!font) return tl::unexpected(font.error());
  const auto figures = measure_font(*font, height, stroke);
  if (!figures) return tl::unexpected(figures.error());
  auto line = set_digits(*font, number, height);
  if (!line) return tl::unexpected(line.error());
  FontSpecimen specimen{bundled.name, {}, std::move(*line), {}};
  for (const DigitOutline& shape : specimen.line.shapes)
    specimen.strokes.push_back(measure_stroke(shape.outline));
  const auto text = [&](double millimeters) { return measured(mm(millimeters), wish.units); };
  std::string about = axes_text(bundled);
  if (!bundled.note.empty()) about += (about.empty() ? "" : "; ") + bundled.note;
  if (!about.empty()) specimen.figures.push_back(about);
  const DigitFigures thinnest = figures->thinnest();
  specimen.figures.push_back(fmt::format("{} is {} wide; the widest digit five times {}", number,
                                         text(specimen.line.ink.width()),
                                         text(figures->five_widest)));
  specimen.figures.push_back(fmt::format("stroke: usual width {}, least {} (in the {}); {}",
                                         text(median_of(*figures)), text(thinnest.stroke_least),
                                         thinnest.digit, verdict(*figures)));
  specimen.figures.push_back(shape_words(*figures));
  return specimen;
}

/// The fonts on a sheet, put into the folder.
Exit write_sheet(Terminal& terminal, const Wish& wish, const std::string& folder,
                 const std::string& created) {
  std::vector<FontSpecimen> fonts;
  for (const BundledFont& bundled : bundled_fonts()) {
    auto specimen = specimen_of(bundled, wish);
    if (!specimen) {
      terminal.complain(specimen.error());
      return Exit::MachineFailed;
    }
    fonts.push_back(std::move(*specimen));
  }
  const auto labels = Font::open(label_font());
  if (!labels) {
    terminal.complain(labels.error());
    return Exit::MachineFailed;
  }
  const auto& stroke = wish.season.numerals_stroke;
  const Sheet sheet = font_sheet(
      fonts, "Bundled fonts for numerals",
      {fmt::format("shortest digit {} high, the least that {} allows; not at full size",
                   exact(wish.season.numerals_height->value, wish.units), wish.season.name)},
      stroke ? stroke->value.mm() : inches(0.5).mm(), wish.paper, wish.units, *labels);
  const PdfOptions options{created};
  const HeldInterrupts held;
  if (const auto put =
          put_files(folder, {{sheet.stem + ".pdf", to_pdf(sheet, *labels, options)}}, held);
      !put) {
    terminal.complain("swathe: " + put.error().sentence);
    return Exit::MachineFailed;
  }
  terminal.say(fmt::format("{}: each font with its number\n",
                           named((std::filesystem::path(folder) / "fonts.pdf").string())));
  return Exit::Done;
}

}  // namespace

Exit fonts(Terminal& terminal, const std::string& job, const std::string& folder) {
  const auto created =
      folder.empty() ? tl::expected<std::string, std::string>() : creation_date_asked_for();
  if (!created) {
    terminal.complain("swathe: " + created.error());
    return Exit::WrongInput;
  }
  const auto wish = wish_of(terminal, job);
  if (!wish) return wish.error();
  const auto table = measure(*wish);
  if (!table) {
    terminal.complain(table.error());
    return Exit::MachineFailed;
  }
  const Season& season = wish->season;
  std::string text = paragraph(
      "", fmt::format("Bundled fonts at the least height that {} allows, {}{}. Sizes in {}.",
                      season.name, exact(season.numerals_height->value, wish->units),
                      season.numerals_stroke
                          ? fmt::format("; the stroke has to be at least {} wide for more "
                                        "than half of its length",
                                        exact(season.numerals_stroke->value, wish->units))
                          : "",
                      wish->units == Units::Inches ? "inches" : "mm"));
  text += '\n' + table->to_text() + '\n';
  text +=
      paragraph("",
                "usual: the usual width of the strokes. thinnest: the least width, and in "
                "which digit. wide enough: how much of the strokes' length is as wide as it "
                "has to be. 5 widest: how wide five of the widest digit are. 5 mean: how wide "
                "five digits are on average. island: a middle that falls out of a stencil if no "
                "bridge holds it.");
  terminal.answer(text);
  return folder.empty() ? Exit::Done : write_sheet(terminal, *wish, folder, *created);
}

}  // namespace swathe::app
