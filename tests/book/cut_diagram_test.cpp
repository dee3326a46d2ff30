#include "book/cut_diagram.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <iterator>
#include <map>

#include "book/book_sheet.hpp"
#include "support/examples.hpp"
#include "support/jobs.hpp"
#include "support/label_font.hpp"
#include "support/made_by_hand.hpp"
#include "support/made_examples.hpp"
#include "support/overlaps.hpp"

// The cut diagrams read back as a person with a rule would: rectangles and words.
namespace swathe {
namespace {

constexpr double kWide = 190.0;  // mm across the page

/// Rectangles drawn in the pieces' line, by their height on the page.
std::map<long, std::vector<plane::Box>> strips_of(const Drawing& drawing) {
  std::map<long, std::vector<plane::Box>> strips;
  for (const draw::Mark& mark : drawing.marks())
    if (const auto* line = std::get_if<LineMark>(&mark);
        line && line->kind == LineKind::Outline && line->path.closed) {
      const plane::Box box = bounds(line->path);
      strips[std::lround(1e3 * box.lo.y)].push_back(box);
    }
  return strips;
}

/// How often a text names the piece: "A left" alone, with its length behind it, or so in a list.
int names(const std::string& text, const std::string& piece) {
  if (text == piece) return 1;
  int count = 0;
  for (std::size_t at = text.find(piece + " "); at != std::string::npos;
       at = text.find(piece + " ", at + 1)) {
    const bool starts = at == 0 || (at > 1 && text.substr(at - 2, 2) == ": ");
    const char next = at + piece.size() + 1 < text.size() ? text[at + piece.size() + 1] : ' ';
    count += starts && next >= '0' && next <= '9' ? 1 : 0;
  }
  return count;
}

std::vector<int> numbers_of(const Drawing& drawing) {
  std::vector<int> numbers;
  for (const TextMark& text : test::texts_of(drawing))
    if (text.text.find_first_not_of("0123456789") == std::string::npos &&
        text.anchor == draw::Anchor::Middle && text.text.size() < 4)
      numbers.push_back(std::stoi(text.text));
  return numbers;
}

TEST_CASE("sheets to cut (1): what is drawn of a sheet adds up to the sheet") {
  const Font face = test::label_font();
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made_example(path);
    const BoardKeys& keys = made.job.boards;
    for (const CutSheet& sheet : sheets_to_cut(made)) {
      // Ripped along one side of the stock or the other.
      const double length = sheet.length, width = (keys.stock[0] + keys.stock[1]).mm() - length;
      CHECK((length == keys.stock[0].mm() || length == keys.stock[1].mm()));
      const Picture picture = draw_sheet_cuts(sheet, face, made.job.units, kWide);
      plane::Box whole;
      const auto strips = strips_of(picture.drawing);
      for (const auto& [y, boxes] : strips)
        for (const plane::Box& box : boxes) whole.cover(box);
      const double along = length / whole.width(), across = width / whole.height();
      double down = -keys.kerf.mm();
      for (const auto& [y, boxes] : strips) {
        double sum = -keys.kerf.mm();
        for (const plane::Box& box : boxes) sum += along * box.width() + keys.kerf.mm();
        // A rest narrower than the blade is no piece of waste.
        CHECK(sum <= length + 1e-6);
        CHECK(sum > length - keys.kerf.mm() - 0.02);
        down += across * boxes.front().height() + keys.kerf.mm();
      }
      CHECK(down <= width + 1e-6);
      CHECK(down > width - keys.kerf.mm() - 0.02);
    }
  }
}

TEST_CASE("sheets to cut (2): every board of every set is cut once, by numbered cuts") {
  const Font face = test::label_font();
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made_example(path);
    std::map<std::string, int> drawn, wanted;
    int sheets = 0;
    for (const bumper::Piece& board : made.boards)
      wanted[piece_name(board)] += padded_sets(made.job);
    for (const CutSheet& sheet : sheets_to_cut(made)) {
      const Picture picture = draw_sheet_cuts(sheet, face, made.job.units, kWide);
      sheets += sheet.alike;
      for (const TextMark& text : test::texts_of(picture.drawing))
        for (const auto& [name, count] : wanted)
          drawn[name] += names(text.text, name) * sheet.alike;
      std::vector<int> numbers = numbers_of(picture.drawing);
      std::ranges::sort(numbers);
      REQUIRE_FALSE(numbers.empty());
      CHECK(numbers.back() == static_cast<int>(numbers.size()));
      CHECK(std::ranges::adjacent_find(numbers) == numbers.end());
      CHECK(numbers.back() >= sheet.rips());
    }
    CHECK(drawn == wanted);
    CHECK(sheets == made.stock.sheets);
  }
}

/// A name as subjects spell it: of the examples' names only blanks are escaped.
std::string spelled(std::string name) {
  for (std::size_t at = name.find(' '); at != std::string::npos; at = name.find(' '))
    name.replace(at, 1, "%20");
  return name;
}

/// How often a piece's outline shows each part of the model.
void count_shown(const Drawing& drawing, int alike, std::map<std::string, int>& shown) {
  for (const draw::Mark& mark : drawing.marks())
    if (const auto* line = std::get_if<LineMark>(&mark);
        line && line->kind == LineKind::Outline && line->path.closed)
      shown[to_text(line->shows)] += alike;
}

TEST_CASE("sheets to cut: every board cut shows its subject, and so do the words that name it") {
  const Font face = test::label_font();
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made_example(path);
    const auto subject_of = [](const bumper::Piece& board) {
      return "bumper." + spelled(board.bumper) + ".board." + spelled(board.side);
    };
    std::map<std::string, int> shown, wanted;
    for (const bumper::Piece& board : made.boards)
      wanted[subject_of(board)] += board.count * padded_sets(made.job);
    for (const CutSheet& sheet : sheets_to_cut(made)) {
      const Picture picture = draw_sheet_cuts(sheet, face, made.job.units, kWide);
      count_shown(picture.drawing, sheet.alike, shown);
      for (const draw::Mark& mark : picture.drawing.marks()) CHECK_FALSE(shown_by(mark).empty());
      for (const TextMark& text : test::texts_of(picture.drawing)) {
        CAPTURE(text.text);
        const std::string subjects = " " + to_text(text.shows) + " ";
        for (const bumper::Piece& board : made.boards)
          if (names(text.text, piece_name(board)) > 0)
            CHECK(subjects.find(" " + subject_of(board) + " ") != std::string::npos);
      }
    }
    shown.erase("boards");  // waste
    CHECK(shown == wanted);
  }
}

TEST_CASE("sticks to cut: every piece of padding cut shows its subject, each part of a long one") {
  const Font face = test::label_font();
  std::size_t joined = 0;
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made_example(path);
    std::map<std::string, int> shown, wanted;
    for (const bumper::Piece& piece : made.padding) {
      // Bent padding is named by all its sides: "front + left".
      std::string subjects, rest = piece.side + " + ";
      while (!rest.empty()) {
        const std::size_t end = rest.find(" + ");
        subjects += (subjects.empty() ? "" : " ") +
                    ("bumper." + spelled(piece.bumper) + ".padding.") +
                    spelled(rest.substr(0, end));
        rest.erase(0, end + 3);
      }
      const auto& splices = made.stock.padding.splices;
      const auto splice = std::ranges::find(splices, piece_name(piece), &Splice::label);
      const std::size_t parts = splice == splices.end() ? 1 : splice->joints.size() + 1;
      joined += parts - 1;
      wanted[subjects] += static_cast<int>(parts) * piece.count * padded_sets(made.job);
    }
    for (const CutStick& stick : sticks_to_cut(made.stock.padding, 0, padding_subjects(made))) {
      const Picture picture = draw_stick_cuts(stick, face, made.job.units, kWide);
      count_shown(picture.drawing, stick.alike, shown);
      for (const draw::Mark& mark : picture.drawing.marks()) CHECK_FALSE(shown_by(mark).empty());
    }
    shown.erase("padding");  // waste
    CHECK(shown == wanted);
  }
  CHECK(joined > 0);
}

TEST_CASE("sheets to cut: a sheet worked by hand") {
  // A sheet 100 by 1000 mm, boards 30 high, blade 2: common arithmetic, no source. Strips take
  // 30 + 2 + 30 + 2 + 30 = 94, and the next cut 2 more: 4 are left. 300, 300, 300 and three cuts
  // take 906 of a strip: 94 are left.
  Made made = test::made_by_hand(test::c_halves(700, 820));
  made.job.boards.stock = {mm(100), mm(1000)};
  made.job.boards.height = mm(30);
  made.job.boards.kerf = mm(2);
  made.stock.ripped = {{1000, 3}};
  made.stock.boards.sticks = {{1000, {{"P", 300}, {"Q", 300}, {"R", 300}}},
                              {1000, {{"S", 1000}}},
                              {1000, {{"T", 499}, {"U", 499}}}};
  const std::vector<CutSheet> sheets = sheets_to_cut(made);
  REQUIRE(sheets.size() == 1);
  const CutSheet& sheet = sheets[0];
  CHECK(sheet.waste == doctest::Approx(4));
  CHECK(sheet.rips() == 3);
  REQUIRE(sheet.strips[0].pieces.size() == 4);
  CHECK(sheet.strips[0].pieces[3].is_waste());
  CHECK(sheet.strips[0].pieces[3].length() == doctest::Approx(94));
  CHECK(sheet.strips[1].pieces.size() == 1);
  CHECK_FALSE(sheet.strips[1].trimmed);
  CHECK(sheet.strips[2].pieces.size() == 2);
  const Picture picture = draw_sheet_cuts(sheet, test::label_font(), Units::Millimeters, kWide);
  // Three rips, three cuts of the first strip, none, one.
  CHECK(numbers_of(picture.drawing).size() == 7);
}

TEST_CASE("sticks to cut: what is cut alike is drawn once and counted") {
  StockPlan plan;
  plan.sticks = {{100, {{"A", 40}, {"B", 60}}}, {100, {{"A", 40}, {"B", 60}}}, {100, {{"A", 40}}}};
  const std::vector<CutStick> sticks = sticks_to_cut(plan, 0);
  REQUIRE(sticks.size() == 2);
  CHECK(sticks[0].alike == 2);
  CHECK(sticks[0].strip.pieces.size() == 2);
  CHECK(sticks[1].strip.pieces.size() == 2);  // and waste
  CHECK(test::says(draw_stick_cuts(sticks[0], test::label_font(), Units::Millimeters, 190).drawing,
                   "x 2"));
}

TEST_CASE("cuts and labels: padding is told to the nearest 1/16 in, boards rounded down to it") {
  const Font face = test::label_font();
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made_example(path);
    const auto is_a_piece = [&](const std::string& figure, const std::string& name) {
      const auto length = parse_length(figure, made.job.units);
      if (!length) return false;
      constexpr double kSixteenth = 25.4 / 16;
      for (const auto* pieces : {&made.boards, &made.padding})
        for (const bumper::Piece& piece : *pieces) {
          if (!name.empty() && piece_name(piece) != name) continue;
          const double over = piece.length_mm - length->mm();
          const bool told =
              pieces == &made.boards
                  ? over > -0.011 && over < kSixteenth  // 0.01 mm is rounding, not wood
                  : std::abs(over) <= 0.5 * kSixteenth + 1e-6;
          if (told) return true;
        }
      return false;
    };
    int read = 0;
    for (const Page& page : book_sheet(made, made.job.paper, face).pages)
      for (const TextMark& text : test::texts_of(page.drawing)) {
        if (page.name == "build book: labels" && text.text.ends_with(" long")) {
          CHECK_MESSAGE(is_a_piece(text.text.substr(0, text.text.size() - 5), ""), text.text);
          ++read;
        }
        if (page.name != "build book: boards and padding" || text.anchor != draw::Anchor::Middle)
          continue;
        for (const bumper::Piece& board : made.boards) {
          const std::string name = piece_name(board);
          if (names(text.text, name) == 0 || text.text == name) continue;
          CHECK_MESSAGE(is_a_piece(text.text.substr(name.size() + 1), name), text.text);
          ++read;
        }
      }
    CHECK(read > std::ssize(made.boards));
  }
}

TEST_CASE("labels: every board of every set has one, and so has every cover of every color") {
  const Font face = test::label_font();
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    const Made made = test::made_example(path);
    std::map<std::string, int> labels, wanted;
    const bool colored = made.job.cloth.fixing != Fixing::HookAndLoop;
    for (const ClothColor& color : made.job.cloth.colors) {
      if (!colored && &color != &made.job.cloth.colors.front()) break;  // one set for all covers
      for (const bumper::Piece& board : made.boards)
        ++wanted["board" + (colored ? ", " + color.name : "") + ": " + piece_name(board)];
    }
    for (const Page& page : book_sheet(made, made.job.paper, face).pages) {
      if (page.name != "build book: labels") continue;
      const std::vector<TextMark> texts = test::texts_of(page.drawing);
      for (const TextMark& text : texts) {
        if (!text.text.starts_with("board")) continue;
        // The name stands above it, in larger letters and as many lines as it takes.
        std::map<double, std::string, std::greater<>> lines;
        for (const TextMark& other : texts)
          if (std::abs(other.at.x - text.at.x) < 0.1 && other.height_mm > text.height_mm + 0.1 &&
              other.at.y > text.at.y && other.at.y < text.at.y + 20)
            lines[other.at.y] = other.text;
        REQUIRE_FALSE(lines.empty());
        std::string name;
        for (const auto& [y, line] : lines) name += (name.empty() ? "" : " ") + line;
        ++labels[text.text + ": " + name];
      }
      for (const TextMark& text : texts)
        if (text.text.starts_with("cover ")) ++labels["covers"];
    }
    int covers = 0;
    for (const ClothLay& lay : made.stock.cloth)
      covers += static_cast<int>(lay.placements.size() + lay.does_not_fit.size());
    wanted["covers"] = covers;
    CHECK(labels == wanted);
  }
}

}  // namespace
}  // namespace swathe
