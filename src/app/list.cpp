#include <fmt/format.h>

#include <algorithm>

#include "base/workshop.hpp"
#include "book/neighbors.hpp"
#include "book/words.hpp"
#include "commands.hpp"
#include "load.hpp"
#include "shopping.hpp"
#include "swathe/base.hpp"
#include "swathe/bumper.hpp"
#include "table.hpp"

namespace swathe::app {
namespace {

constexpr auto kRight = Column::Align::Right;

/// A list on the terminal, in the job's units.
class ListText {
 public:
  explicit ListText(const Made& made) : made_(made) {}

  std::string text() const {
    return heading() + boards() + padding() + cloth() + numerals() + fasteners() + weight();
  }

 private:
  std::string size(Length length) const { return dimension(length, made_.job.units); }
  std::string size_unit(Length length) const {
    return dimension_with_unit(length, made_.job.units);
  }
  std::string exact_size(Length length) const { return exact(length, made_.job.units); }
  /// Of boards and padding.
  std::size_t sets() const { return static_cast<std::size_t>(padded_sets(made_.job)); }

  std::string heading() const {
    std::string colors;
    for (const ClothColor& color : made_.job.cloth.colors)
      colors += (colors.empty() ? "" : ", ") + color.name;
    return paragraph(
        "", fmt::format("{}: what to cut and buy for {} ({}{}). Lengths in {}.",
                        job_words(made_.job), count_of(sets(), "set", "sets"),
                        made_.job.cloth.fixing == Fixing::HookAndLoop ? "covers " : "",
                        printable(colors), made_.job.units == Units::Inches ? "inches" : "mm"));
  }

  /// The sides that the two ends of a side lie next to; empty for padding bent round corners.
  std::string side_before(const std::string& side) const {
    const auto at = made_.frame.side(side);
    return at ? side_name(made_.frame.previous(*at)) : "";
  }
  std::string side_after(const std::string& side) const {
    const auto at = made_.frame.side(side);
    return at ? side_name(made_.frame.next(*at)) : "";
  }
  std::string side_name(int side) const {
    return made_.frame.sides()[static_cast<std::size_t>(side)].name;
  }

  /// How a length is told: sawn() of a board, dimension() of padding.
  using SizeWords = std::string (*)(Length, Units);

  Table pieces(const std::vector<bumper::Piece>& pieces, SizeWords length) const {
    Table table({{"bumper"},
                 {"side"},
                 {"length", kRight},
                 {"ends", Column::Align::Left, true},
                 {"a set", kRight},
                 {"in all", kRight}});
    for (const bumper::Piece& piece : pieces)
      table.add({piece.bumper, side_words(piece), length(mm(piece.length_mm), made_.job.units),
                 end_words(piece.start, next_to(made_, piece, true)) + "; " +
                     end_words(piece.end, next_to(made_, piece, false)),
                 std::to_string(piece.count),
                 std::to_string(static_cast<std::size_t>(piece.count) * sets())});
    return table;
  }

  /// Of two boards of a bumper on one side, each is named by the side it lies next to, too.
  static std::string side_words(const bumper::Piece& piece) {
    return piece.next_to.empty() ? piece.side : piece.side + " by " + piece.next_to;
  }

  /// The sticks of a plan, one for each line.
  std::string plan(const StockPlan& plan, const char* stick, SizeWords length) const {
    std::string text;
    for (std::size_t k = 0; k < plan.sticks.size(); ++k) {
      std::string cuts;
      for (const StockCut& cut : plan.sticks[k].cuts)
        cuts += fmt::format("{}{} {}", cuts.empty() ? "" : "; ", cut.label,
                            length(mm(cut.length), made_.job.units));
      text += paragraph(fmt::format("  {} {}: ", stick, k + 1), cuts);
    }
    return text;
  }

  std::string boards() const {
    const BoardKeys& keys = made_.job.boards;
    return fmt::format("\nBoards, {} thick, {} high\n{}", exact_size(keys.thickness),
                       exact_size(keys.height), pieces(made_.boards, sawn).to_text(2)) +
           ends_explained() + paragraph("", "Buy " + boards_to_buy(made_)) + ripping() +
           plan(made_.stock.boards, "strip", sawn) + screws();
  }

  /// What joins the boards at their corners, besides glue.
  std::string screws() const {
    const Screws& screws = made_.stock.screws;
    if (screws.count == 0) return "";
    return paragraph("", fmt::format("Buy {}: {} in each corner, besides glue",
                                     screws_to_buy(made_), screws.a_joint));
  }

  /// Of the words for ends, those that this job's boards or padding need explained.
  std::string ends_explained() const {
    const auto any = [&](EndCut::Kind kind) {
      const auto has = [&](const bumper::Piece& piece) {
        return piece.start.kind == kind || piece.end.kind == kind;
      };
      return std::ranges::any_of(made_.boards, has) || std::ranges::any_of(made_.padding, has);
    };
    std::string words;
    if (any(EndCut::Kind::Laps) || any(EndCut::Kind::Butts) || any(EndCut::Kind::Mitred))
      words += fmt::format("{0}: the end by the {0} side. ", side_name(1));
    if (any(EndCut::Kind::Laps)) words += "runs past: it covers its neighbor's end. ";
    if (any(EndCut::Kind::Butts)) words += "stops: it ends against its neighbor. ";
    if (any(EndCut::Kind::Mitred)) words += "mitered: both ends of the corner are cut slanted. ";
    if (any(EndCut::Kind::Free)) words += "open: nothing touches it.";
    return paragraph("  ", words);
  }

  /// Which strips each sheet is ripped into.
  std::string ripping() const {
    std::string text;
    for (std::size_t k = 0; k < made_.stock.ripped.size(); ++k) {
      const RippedSheet& sheet = made_.stock.ripped[k];
      const auto strips = static_cast<std::size_t>(sheet.strips);
      text += paragraph(
          fmt::format("  saw sheet {}: ", k + 1),
          fmt::format("{}, {} wide, {} long", count_of(strips, "strip", "strips"),
                      exact_size(made_.job.boards.height), size_unit(mm(sheet.strip_length))));
    }
    return text;
  }

  std::string padding() const {
    const PaddingKeys& padding = made_.job.padding;
    const bool noodles = padding.form == PaddingForm::Noodles;
    return (noodles ? fmt::format("\nPadding, noodles of {}, {} in a stack\n",
                                  exact_size(padding.diameter), padding.stack)
                    : fmt::format("\nPadding, blocks {} deep, {} high\n", exact_size(padding.depth),
                                  exact_size(padding.height))) +
           pieces(made_.padding, dimension).to_text(2) +
           paragraph("", "Buy " + padding_to_buy(made_)) +
           plan(made_.stock.padding, noodles ? "noodle" : "block", dimension) + splices() +
           overhanging() + voids();
  }

  /// Pieces that are longer than they are sold.
  std::string splices() const {
    std::string text;
    for (const Splice& splice : made_.stock.padding.splices) {
      const auto piece = std::ranges::find(made_.padding, splice.label, piece_name);
      std::string joints;
      for (const double joint : splice.joints)
        joints += (joints.empty() ? "" : " and ") + size_unit(mm(joint));
      text += paragraph(
          "  ", fmt::format("{}, {} long, is longer than one: glue it from {}, joined {} from its "
                            "{}, never at a corner",
                            splice.label, size_unit(mm(splice.length)),
                            count_of(splice.joints.size() + 1, "part", "parts"), joints,
                            start_words(*piece)));
    }
    return text;
  }

  /// "end by front"; one that lies next to no side is told by the side it is on, or the bumper that
  /// it lies next to.
  std::string start_words(const bumper::Piece& piece) const {
    if (!piece.bends.empty()) return "end on " + piece.side.substr(0, piece.side.find(" + "));
    if (piece.start.kind == EndCut::Kind::Free)
      return fmt::format("end by bumper {}", bumper_before(piece.bumper));
    return "end by " + side_before(piece.side);
  }
  std::string bumper_before(const std::string& name) const {
    const auto at = static_cast<std::size_t>(
        std::ranges::find(made_.patterns, name, &Pattern::bumper) - made_.patterns.begin());
    const std::size_t count = made_.patterns.size();
    return made_.patterns[(at + count - 1) % count].bumper;
  }

  /// Padding past the end of its own board.
  std::string overhanging() const {
    constexpr double kNone = 0.05;  // mm
    Table table({{"bumper"}, {"side"}, {"past its board"}});
    bool any = false;
    for (const Overhang& over : overhangs(made_.boards, made_.padding)) {
      std::string words;
      const auto add = [&](double past, const std::string& neighbor) {
        if (past < kNone) return;
        words += fmt::format("{}by {}: {}", words.empty() ? "" : "; ", neighbor, size(mm(past)));
      };
      add(over.at_start, side_before(over.side));
      add(over.at_end, side_after(over.side));
      if (words.empty()) continue;
      table.add({over.bumper, over.side, words});
      any = true;
    }
    return any ? "Padding that runs past its own board\n" + table.to_text(2) : "";
  }

  /// Hollows at the corners, to be filled.
  std::string voids() const {
    Table table(
        {{"bumper"}, {"corner"}, {"strips", kRight}, {"length", kRight}, {"sides", kRight}});
    bool any = false;
    for (const Wrap& wrap : made_.wraps)
      for (const CornerVoid& hollow :
           corner_voids(made_.frame, made_.section, wrap.run(), made_.job.padding)) {
        table.add({hollow.bumper, fmt::format("{} / {}", hollow.side_before, hollow.side_after),
                   std::to_string(hollow.strips), size(mm(hollow.length)), size(mm(hollow.leg))});
        any = true;
      }
    return any ? "Strips that fill the hollows at corners, for each set\n" + table.to_text(2) +
                     paragraph("",
                               "Each strip is half of a square one, cut from corner to corner: "
                               "\"sides\" are its two short sides.")
               : "";
  }

  std::string cloth() const {
    Table covers({{"bumper"}, {"cover length", kRight}, {"cover width", kRight}});
    for (const Pattern& pattern : made_.patterns)
      covers.add({pattern.bumper, size(mm(pattern.cloth_length)), size(mm(pattern.cloth_width))});
    std::string text = "\nCloth\n" + covers.to_text(2);
    for (const ClothLay& lay : made_.stock.cloth)
      text += paragraph("", "Buy " + cloth_to_buy(made_, lay));
    return text;
  }

  std::string numerals() const {
    if (!made_.numerals) return "";
    const Numerals& numerals = *made_.numerals;
    Table table({{"digit"},
                 {"height", kRight},
                 {"width", kRight},
                 {"pieces", kRight},
                 {"bridges", kRight}});
    for (const Digit& digit : numerals.digits)
      table.add({std::string(1, digit.digit), size(mm(digit.height)), size(mm(digit.width)),
                 std::to_string(digit.count), std::to_string(digit.bridges.size())});
    std::string text =
        fmt::format("\nNumerals, {}, {} in {}\n", printable(made_.job.number), numerals.font,
                    count_of(static_cast<std::size_t>(numerals.showings()), "place", "places")) +
        table.to_text(2);
    for (const NumeralMisfit& misfit : numerals.misfits)
      text += paragraph("  ", fmt::format("not on {}: {}", misfit.side, misfit.advice));
    return text;
  }

  std::string fasteners() const {
    if (made_.job.cloth.fixing == Fixing::HookAndLoop) return strips();
    Table table({{"bumper"}, {"staples", kRight}, {"bracket holes", kRight}});
    std::size_t staples = 0;
    for (const Pattern& pattern : made_.patterns) {
      std::size_t holes = 0;
      for (const BracketOnPattern& bracket : pattern.brackets) holes += bracket.holes.size();
      table.add({pattern.bumper, std::to_string(pattern.staples.size()), std::to_string(holes)});
      staples += pattern.staples.size();
    }
    return fmt::format("\nFasteners, for each set\n{}{} staples for {}\n", table.to_text(2),
                       staples * sets(), count_of(sets(), "set", "sets"));
  }

  /// Hook-and-loop in place of staples.
  std::string strips() const {
    Table table({{"bumper"}, {"strips", kRight}, {"together", kRight}, {"bracket holes", kRight}});
    double all = 0;
    for (const Pattern& pattern : made_.patterns) {
      double along = 0;
      for (const plane::Path& strip : pattern.strips)
        along += std::max(bounds(strip).width(), bounds(strip).height());
      all += along;
      std::size_t holes = 0;
      for (const BracketOnPattern& bracket : pattern.brackets) holes += bracket.holes.size();
      table.add({pattern.bumper, std::to_string(pattern.strips.size()), size(mm(along)),
                 std::to_string(holes)});
    }
    const std::size_t covers = made_.job.cloth.colors.size();
    const auto halves = [&](const char* half, std::size_t count, const std::string& of) {
      return fmt::format("{} half: {} for {}\n", half,
                         size_unit(mm(all * static_cast<double>(count))), of);
    };
    return fmt::format(
        "\nHook-and-loop, {} wide, for each cover and its boards\n{}",
        exact_size(made_.job.cloth.hook_and_loop.strip),
        table.to_text(2) +
            halves("Loop", covers, count_of(covers, "set of covers", "sets of covers")) +
            halves("Hook", sets(), count_of(sets(), "set of boards", "sets of boards")));
  }

  std::string weight() const {
    Table table({{"bumper"},
                 {"boards", kRight},
                 {"padding", kRight},
                 {"cloth", kRight},
                 {"fasteners", kRight}});
    for (const BumperWeight& bumper : made_.stock.weights)
      table.add({bumper.bumper, mass(bumper.boards_g), mass(bumper.padding_g), mass(bumper.cloth_g),
                 mass(bumper.fasteners_g)});
    std::string text = fmt::format("\nWeight\n{}One set: {}\n", table.to_text(2),
                                   mass(made_.stock.set.together_g()));
    if (made_.stock.set.unknown_brackets > 0)
      text += paragraph(
          "  ", fmt::format("not counting {}: add mass, in g, to each [[bracket]]",
                            count_of(static_cast<std::size_t>(made_.stock.set.unknown_brackets),
                                     "bracket", "brackets")));
    return text;
  }

  std::string mass(double grams) const {
    return made_.job.units == Units::Inches
               ? fmt::format("{:.2f} lb", grams / rules::Mass::kGramsPerPound)
               : fmt::format("{:.2f} kg", grams / 1000.0);
  }

  const Made& made_;
};

}  // namespace

Exit list(Terminal& terminal, const std::string& job) {
  const auto made = load(terminal, job);
  if (!made) return made.error();
  terminal.answer(ListText(*made).text());
  return Exit::Done;
}

}  // namespace swathe::app
