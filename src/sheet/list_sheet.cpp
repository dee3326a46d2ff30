#include "swathe/sheet/list_sheet.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <string_view>

#include "sheet/flow.hpp"
#include "sheet/running.hpp"
#include "swathe/base/embedded.hpp"
#include "swathe/bumper/voids.hpp"
#include "swathe/pattern/joins.hpp"

namespace swathe {
namespace {

constexpr double kSquareMm2 = 100.0;  ///< in a square centimetre
constexpr double kNone = 0.05;        ///< mm; less is no length at all

/// The lines of an embedded text.
std::vector<std::string> lines_of(std::string_view text) {
  std::vector<std::string> lines;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    if (end != 0) lines.emplace_back(text.substr(0, end));
    if (end == std::string_view::npos) break;
    text.remove_prefix(end + 1);
  }
  return lines;
}

/// The lists of one job, part by part.
class Lists {
 public:
  Lists(const Made& made, Flow& flow) : made_(made), flow_(flow), units_(made.job.units) {}

  void write() {
    shopping();
    boards();
    pencil_marks();
    padding();
    cloth();
    numerals();
    brackets();
    staples();
    strips();
    tools();
    order_of_work();
  }

 private:
  std::string fig(double length_mm) const { return figure(mm(length_mm), units_); }
  std::string full(Length length) const { return exact(length, units_); }
  int sets() const { return std::max(1, static_cast<int>(made_.job.cloth.colours.size())); }
  /// Of boards and padding: fewer than of covers, where these are changed.
  int padded() const { return padded_sets(made_.job); }
  static std::string count(int one) { return std::to_string(one); }
  static std::string counted(int number, const char* what) {
    return fmt::format("{} {}{}", number, what, number == 1 ? "" : "s");
  }

  static std::string end_words(const EndCut& end) {
    const std::string angle =
        std::abs(end.angle_deg) < 0.05
            ? ""
            : fmt::format(", {} deg off square", plain_number(end.angle_deg, 1));
    switch (end.kind) {
      case EndCut::Kind::Free:
        return "free" + angle;
      case EndCut::Kind::Laps:
        return "laps" + angle;
      case EndCut::Kind::Butts:
        return "butts" + angle;
      case EndCut::Kind::Mitred:
        return "mitre" + angle;
      case EndCut::Kind::Bent:
        return "bends on";
    }
    return "";
  }

  void shopping() {
    const Job& job = made_.job;
    const Stock& stock = made_.stock;
    flow_.heading("To buy, for all colours");
    Table table;
    table.columns = {{"what", Anchor::Left, 40}, {"how much"}, {"of", Anchor::Left, 100}};
    if (stock.sheets > 0)
      table.rows.push_back({"boards", counted(stock.sheets, "sheet"),
                            fmt::format("{} by {}, {} thick", full(job.backing.stock[0]),
                                        full(job.backing.stock[1]), full(job.backing.thickness))});
    if (!stock.padding.sticks.empty())
      table.rows.push_back({"padding",
                            counted(static_cast<int>(stock.padding.sticks.size()), "length"),
                            padding_words() + ", " + full(job.padding.stock) + " long"});
    for (const ClothLay& lay : stock.cloth)
      table.rows.push_back(
          {lay.colour + " cloth", full(mm(lay.length_to_buy)),
           fmt::format("roll {} wide inside the selvedges", full(mm(lay.roll_width)))});
    if (staple_count() > 0)
      table.rows.push_back({"staples", count(staple_count() * sets()),
                            "and some to spare; crown 10 mm, shorter than the board is thick"});
    if (strip_length() > 0)
      for (const bool soft : {true, false})
        table.rows.push_back(
            {soft ? "loop strip" : "hook strip",
             full(bought(strip_length() * (soft ? sets() : padded()))),
             fmt::format("{} wide, {}", full(job.cloth.quick_change.strip),
                         soft ? "the softer half, sewn on" : "the other half, for the boards")});
    flow_.table(table);
    for (const StockCut& cut : stock.boards.too_long)
      flow_.words(
          fmt::format("Too long for the board stock: {}, {}.", cut.label, full(mm(cut.length))));
    for (const StockCut& cut : stock.padding.too_long)
      flow_.words(fmt::format("Too long for the padding stock: {}, {}. Join two lengths.",
                              cut.label, full(mm(cut.length))));
  }

  std::string padding_words() const {
    const PaddingKeys& padding = made_.job.padding;
    if (padding.form == PaddingForm::Rods)
      return fmt::format("round rods, {} across", full(padding.diameter));
    return fmt::format("blocks, {} deep, {} high", full(padding.depth), full(padding.height));
  }

  Table pieces(const std::vector<Piece>& list) const {
    Table table;
    table.columns = {{"bumper"},
                     {"side"},
                     {"length", Anchor::Right},
                     {"left end", Anchor::Left, 36},
                     {"right end", Anchor::Left, 36},
                     {"one set", Anchor::Right},
                     {"all", Anchor::Right}};
    for (const Piece& piece : list)
      table.rows.push_back({piece.bumper, piece.side, fig(piece.length_mm), end_words(piece.start),
                            end_words(piece.end), count(piece.count),
                            count(piece.count * padded())});
    return table;
  }

  void cutting_plan(const StockPlan& plan, const char* stick) {
    if (plan.sticks.empty()) return;
    Table table;
    table.columns = {{stick, Anchor::Right}, {"cut from it, in this order", Anchor::Left, 150}};
    int number = 0;
    for (const StockStick& one : plan.sticks) {
      std::string cuts;
      for (const StockCut& cut : one.cuts)
        cuts += fmt::format("{}{} {}", cuts.empty() ? "" : ",  ", cut.label, fig(cut.length));
      table.rows.push_back({std::to_string(++number), cuts});
    }
    flow_.table(table);
  }

  void boards() {
    const BackingKeys& keys = made_.job.backing;
    flow_.heading("Boards");
    flow_.caution(caution("saw"));
    flow_.words(
        fmt::format("{} high, {} thick. Left and right as seen from outside the machine; "
                    "lengths along the longer face.",
                    full(keys.height), full(keys.thickness)));
    flow_.table(pieces(made_.boards));
    int sheet = 0;
    for (const RippedSheet& ripped : made_.stock.ripped)
      flow_.words(fmt::format("Rip sheet {} into {}, {} long; then cut all boards:", ++sheet,
                              counted(ripped.strips, "strip"), full(mm(ripped.strip_length))));
    cutting_plan(made_.stock.boards, "strip");
  }

  void pencil_marks() {
    flow_.heading("Pencil marks on the boards");
    flow_.words(
        "On the inside face, top and bottom edge, from its left end as seen from outside: the "
        "inside corner or the free end.");
    Table table;
    table.columns = {{"bumper"}, {"side"}, {"mark and distance", Anchor::Left, 120}};
    for (const Pattern& pattern : made_.patterns) {
      std::string last;
      for (const MatchMark& mark : pattern.marks) {
        if (!mark.top) continue;  // the bottom ones stand at the same places
        if (mark.side != last) table.rows.push_back({pattern.bumper, mark.side, ""});
        std::string& cell = table.rows.back().back();
        cell +=
            fmt::format("{}{}: {}", cell.empty() ? "" : ",   ", mark.name, fig(mark.from_left_mm));
        last = mark.side;
      }
    }
    flow_.table(table);
  }

  void padding() {
    flow_.heading("Padding");
    flow_.words(made_.job.padding.form == PaddingForm::Rods
                    ? fmt::format("Round rods, {} across.", full(made_.job.padding.diameter))
                    : fmt::format("Blocks, {} deep, {} high.", full(made_.job.padding.depth),
                                  full(made_.job.padding.height)));
    flow_.table(pieces(made_.padding));
    cutting_plan(made_.stock.padding, "length");
    overhanging();
    voids();
  }

  void overhanging() {
    Table past;
    past.columns = {{"bumper"},
                    {"side"},
                    {"past the left end", Anchor::Right},
                    {"past the right end", Anchor::Right}};
    const auto words = [&](double length_mm) { return length_mm < kNone ? "-" : fig(length_mm); };
    for (const Overhang& over : overhangs(made_.boards, made_.padding))
      if (std::max(over.at_start, over.at_end) >= kNone)
        past.rows.push_back({over.bumper, over.side, words(over.at_start), words(over.at_end)});
    if (past.rows.empty()) return;
    flow_.words(
        "Padding runs on past the end of its own board, where no board of its side is behind it; "
        "left and right as seen from outside:");
    flow_.table(past);
  }

  void voids() {
    Table fill;
    fill.columns = {{"bumper"},
                    {"corner", Anchor::Left},
                    {"strips", Anchor::Right},
                    {"length", Anchor::Right},
                    {"section, cm2", Anchor::Right},
                    {"all", Anchor::Right}};
    for (const Wrap& wrap : made_.wraps)
      for (const CornerVoid& hollow :
           corner_voids(made_.frame, made_.section, wrap.run(), made_.job.padding))
        fill.rows.push_back(
            {hollow.bumper, fmt::format("{} / {}", hollow.side_before, hollow.side_after),
             count(hollow.strips), fig(hollow.length),
             plain_number(hollow.section_area / kSquareMm2, 1), count(hollow.strips * padded())});
    if (fill.rows.empty()) return;
    flow_.words(
        "Where round padding butts at a corner, hollows stay open. Fill them with strips of the "
        "same padding, cut to wedge in:");
    flow_.table(fill);
  }

  void cloth() {
    flow_.heading("Cloth");
    flow_.caution(caution("blade"));
    Table table;
    table.columns = {{"colour"}, {"covers"}, {"buy", Anchor::Right}, {"roll used", Anchor::Right}};
    std::string covers;
    for (const Pattern& pattern : made_.patterns)
      covers += (covers.empty() ? "" : ", ") + pattern.bumper;
    for (const ClothLay& lay : made_.stock.cloth) {
      table.rows.push_back(
          {lay.colour, covers, full(mm(lay.length_to_buy)), full(mm(lay.roll_width)) + " wide"});
      for (const std::string& bumper : lay.does_not_fit)
        flow_.words(fmt::format("Cover {} is wider than the {} roll.", bumper, lay.colour));
    }
    if (!table.rows.empty()) flow_.table(table);
    Table cut;
    cut.columns = {{"cover"},
                   {"length", Anchor::Right},
                   {"width", Anchor::Right},
                   {"one set", Anchor::Right},
                   {"all", Anchor::Right}};
    bool joined = false;
    for (const Pattern& pattern : made_.patterns) {
      for (const ClothPart& part : cloth_parts(pattern))
        cut.rows.push_back(
            {part.name, fig(part.box.width()), fig(part.box.height()), "1", count(sets())});
      joined = joined || !pattern.joins.empty();
    }
    flow_.table(cut);
    if (has_joins())
      flow_.words(
          "Numbered pieces are sewn into one cover; their lengths have the seam allowances in.");
    shared_prints();
  }

  /// Covers that are cut from another's print: its words name the other's sides.
  void shared_prints() {
    Table table;
    table.columns = {{"cover"},
                     {"same as"},
                     {"laid", Anchor::Left, 28},
                     {"but for", Anchor::Left, 34},
                     {"what the print's sides are here", Anchor::Left, 70}};
    for (std::size_t k = 0; k < made_.same.size(); ++k) {
      if (!made_.same[k]) continue;
      const Sameness& same = *made_.same[k];
      std::string but_for, sides;
      for (const std::string& what : same.but_for) but_for += (but_for.empty() ? "" : ", ") + what;
      for (const auto& [there, here] : same.sides)
        sides += fmt::format("{}{} is {}", sides.empty() ? "" : ", ", there, here);
      table.rows.push_back({made_.patterns[k].bumper,
                            made_.patterns[static_cast<std::size_t>(same.other)].bumper,
                            laid(same.how), but_for.empty() ? "-" : but_for, sides});
    }
    if (table.rows.empty()) return;
    flow_.words(
        "Covers that one print serves. Its match marks have the same names on both bumpers' "
        "boards; other words on it name the first one's sides:");
    flow_.table(table);
  }

  static std::string laid(Sameness::How how) {
    switch (how) {
      case Sameness::How::Same:
        break;
      case Sameness::How::Turned:
        return "turned, not flipped";
      case Sameness::How::Mirrored:
        return "flipped left for right";
    }
    return "as it is";
  }

  void numerals() {
    if (!made_.numerals) return;
    flow_.heading(fmt::format("Numerals {}", made_.job.number));
    Table places;
    places.columns = {{"bumper"},
                      {"side"},
                      {"digits"},
                      {"height on the cloth", Anchor::Right},
                      {"width", Anchor::Right}};
    for (const PlacedNumeral& placed : made_.numerals->placed)
      places.rows.push_back({made_.patterns[static_cast<std::size_t>(placed.bumper)].bumper,
                             placed.side, placed.text, fig(placed.height), fig(placed.width)});
    flow_.table(places);
    if (!made_.numerals->change.empty())
      flow_.words("Changed to keep the rules: " + made_.numerals->change);
    Table digits;
    digits.columns = {{"digit"},
                      {"height", Anchor::Right},
                      {"width", Anchor::Right},
                      {"all colours, spares in", Anchor::Right}};
    for (const Digit& digit : made_.numerals->digits)
      digits.rows.push_back(
          {std::string(1, digit.digit), fig(digit.height), fig(digit.width), count(digit.count)});
    flow_.table(digits);
  }

  void brackets() {
    if (made_.job.brackets.empty()) return;
    flow_.heading("Brackets");
    flow_.words(
        "Fit them, and their bolts, before the padding. Nearer edge: from that end of the inside "
        "face, "
        "left and right as seen from outside; below the board's top edge.");
    Table table;
    table.columns = {{"bumper"},
                     {"side"},
                     {"nearer edge", Anchor::Left},
                     {"width", Anchor::Right},
                     {"height", Anchor::Right},
                     {"below the top", Anchor::Right},
                     {"cloth", Anchor::Left}};
    for (const BracketKeys& keys : made_.job.brackets)
      table.rows.push_back(
          {keys.bumper, keys.side,
           fmt::format("{} from the {}", fig(keys.at.mm()),
                       keys.from == FromEnd::Left ? "left" : "right"),
           fig(keys.width.mm()), fig(keys.height.mm()), fig(keys.down.mm()),
           keys.cloth == BracketCloth::Window ? "window, cut last" : "passes under"});
    flow_.table(table);
  }

  int staple_count() const {
    std::size_t all = 0;
    for (const Pattern& pattern : made_.patterns) all += pattern.staples.size();
    return static_cast<int>(all);
  }

  void staples() {
    if (staple_count() == 0) return;
    flow_.heading("Staples");
    flow_.caution(caution("staples"));
    Table table;
    table.columns = {{"bumper"}, {"staples", Anchor::Right}, {"all colours", Anchor::Right}};
    for (const Pattern& pattern : made_.patterns) {
      const int one = static_cast<int>(pattern.staples.size());
      table.rows.push_back({pattern.bumper, count(one), count(one * sets())});
    }
    table.rows.push_back({"together", count(staple_count()), count(staple_count() * sets())});
    flow_.table(table);
  }

  static double length_of(const Path& strip) {
    const Box box = bounds(strip);
    return std::max(box.width(), box.height());
  }

  /// Up to the next whole inch, or centimetre: what a shop measures off.
  Length bought(double length_mm) const {
    const double step = units_ == Units::Inches ? inches(1).mm() : 10.0;
    return mm(std::ceil(length_mm / step - 1e-6) * step);
  }

  double strip_length() const {
    double all = 0;
    for (const Pattern& pattern : made_.patterns)
      for (const Path& strip : pattern.strips) all += length_of(strip);
    return all;
  }

  void strips() {
    if (strip_length() == 0) return;
    flow_.heading("Hook-and-loop");
    flow_.words(
        fmt::format("{} wide. The softer half on the inside of the cover, the other on "
                    "the board's back. Strips of each cover, the longest first:",
                    full(made_.job.cloth.quick_change.strip)));
    Table table;
    table.columns = {{"bumper"},
                     {"length", Anchor::Right},
                     {"on the boards", Anchor::Right},
                     {"on all covers", Anchor::Right}};
    for (const Pattern& pattern : made_.patterns) {
      std::vector<double> lengths;
      for (const Path& strip : pattern.strips) lengths.push_back(length_of(strip));
      std::ranges::sort(lengths, std::greater<>());
      for (std::size_t k = 0, next = 0; k < lengths.size(); k = next) {
        const std::string words = fig(lengths[k]);  // alike where they are printed alike
        while (next < lengths.size() && fig(lengths[next]) == words) ++next;
        const int alike = static_cast<int>(next - k);
        table.rows.push_back({pattern.bumper, words, count(alike), count(alike * sets())});
      }
    }
    flow_.table(table);
  }

  void tools() {
    flow_.heading("Tools");
    std::string all;
    for (const std::string& line : lines_that_apply("sheet/tools.txt"))
      all += (all.empty() ? "" : "\n") + line;
    flow_.words(all);
  }

  void order_of_work() {
    flow_.heading("Order of work");
    flow_.steps(lines_that_apply("sheet/order_of_work.txt"));
  }

  /// "@windows ..." is only for covers that have them, "+windows ..." goes on with the line before.
  std::vector<std::string> lines_that_apply(const char* text) const {
    std::vector<std::string> lines;
    for (const std::string& line : lines_of(embedded(text))) {
      if (line.front() != '@' && line.front() != '+') {
        lines.push_back(line);
        continue;
      }
      const std::size_t gap = line.find(' ');
      if (!applies(line.substr(1, gap - 1))) continue;
      if (line.front() == '+')
        lines.back() += line.substr(gap);
      else
        lines.push_back(line.substr(gap + 1));
    }
    return lines;
  }

  bool has_corners() const {
    return std::ranges::any_of(made_.patterns,
                               [](const Pattern& pattern) { return !pattern.corners.empty(); });
  }

  bool has_joins() const {
    return std::ranges::any_of(made_.patterns,
                               [](const Pattern& pattern) { return !pattern.joins.empty(); });
  }

  bool has_voids() const {
    return std::ranges::any_of(made_.wraps, [&](const Wrap& wrap) {
      return !corner_voids(made_.frame, made_.section, wrap.run(), made_.job.padding).empty();
    });
  }

  bool applies(const std::string& to) const {
    const ClothKeys& cloth = made_.job.cloth;
    if (to == "numerals") return made_.numerals.has_value();
    if (to == "staples") return cloth.fixing == Fixing::Staples;
    if (to == "quick-change") return cloth.fixing == Fixing::QuickChange;
    if (to == "fold") return has_corners() && cloth.relief == Relief::Fold;
    if (to == "sewn") return has_corners() && cloth.relief == Relief::Sewn;
    if (to == "joined") return has_joins();
    if (to == "sewing") return applies("sewn") || applies("quick-change") || applies("joined");
    if (to == "voids") return has_voids();
    if (to == "holes")
      return std::ranges::any_of(made_.job.brackets,
                                 [](const BracketKeys& bracket) { return !bracket.holes.empty(); });
    if (to == "brackets") return !made_.job.brackets.empty();
    return std::ranges::any_of(made_.job.brackets, [](const BracketKeys& bracket) {
      return bracket.cloth == BracketCloth::Window;
    });
  }

  const Made& made_;
  Flow& flow_;
  Units units_;
};

}  // namespace

Sheet list_sheet(const Made& made, const Face& labels) {
  PageHead head;
  const bool inches = made.job.units == Units::Inches;
  std::string colours;
  for (const ClothColour& colour : made.job.cloth.colours)
    colours += (colours.empty() ? "" : ", ") + colour.name;
  head.title = {made.job.title,
                "lists and order of work",
                "",
                {fmt::format("All figures in {}; {}", inches ? "inches" : "mm",
                             made.job.cloth.fixing == Fixing::QuickChange
                                 ? "one set of boards and padding, its covers are changed"
                                 : "one set is one colour"),
                 fmt::format("colours: {}", colours),
                 inches ? "(+1/32): so much more than the figure says; (-1/32): less"
                        : "(+0.5): so much more than the figure says; (-0.5): less"}};
  Flow flow(made.job.paper, labels, head);
  Lists(made, flow).write();
  Sheet sheet;
  sheet.stem = "lists";
  sheet.title = head.title.subject;
  sheet.kind = SheetKind::Lists;
  sheet.paper = made.job.paper.sheet;
  sheet.pages = flow.pages();
  return sheet;
}

}  // namespace swathe
