#include <doctest/doctest.h>

#include <algorithm>
#include <array>

#include "support/drawn.hpp"
#include "swathe/stock.hpp"

namespace swathe {
namespace {

BoardKeys backing(double height, double width, double length, double kerf) {
  BoardKeys keys;
  keys.height = mm(height);
  keys.stock = {mm(width), mm(length)};
  keys.kerf = mm(kerf);
  return keys;
}

std::vector<StockCut> boards(const std::vector<double>& lengths) {
  std::vector<StockCut> cuts;
  for (const double length : lengths) cuts.push_back({"A front", length});
  return cuts;
}

/// Every strip's boards and kerfs fit on it, every sheet's strips and kerfs on it, every board
/// comes out once.
void check_sound(const SheetPlan& plan, std::vector<double> lengths, const BoardKeys& keys) {
  const double slack = 2e-3, kerf = keys.kerf.mm();
  std::size_t stick = 0;
  std::vector<double> cut;
  for (const RippedSheet& sheet : plan.sheets) {
    const bool first_side = std::abs(sheet.strip_length - keys.stock[0].mm()) < slack;
    const bool second_side = std::abs(sheet.strip_length - keys.stock[1].mm()) < slack;
    CHECK((first_side || second_side));
    const double across = keys.stock[first_side ? 1 : 0].mm();
    CHECK(sheet.strips * keys.height.mm() + (sheet.strips - 1) * kerf <= across + slack);
    for (int strip = 0; strip < sheet.strips; ++strip, ++stick) {
      REQUIRE(stick < plan.boards.sticks.size());
      CHECK(plan.boards.sticks[stick].length == doctest::Approx(sheet.strip_length));
      double used = -kerf;
      for (const StockCut& board : plan.boards.sticks[stick].cuts) {
        used += board.length + kerf;
        cut.push_back(board.length);
      }
      CHECK(used <= sheet.strip_length + slack);
    }
  }
  CHECK(stick == plan.boards.sticks.size());
  for (const StockCut& board : plan.boards.too_long) cut.push_back(board.length);
  std::ranges::sort(cut);
  std::ranges::sort(lengths);
  CHECK(cut == lengths);
}

/// The slow truth: fewest sheets, by every board on every strip of sheets ripped every way.
class Exhaustive {
 public:
  Exhaustive(std::vector<int> boards, std::array<int, 2> sides, int height, int kerf)
      : boards_(std::move(boards)), kerf_(kerf) {
    for (const std::size_t way : {0U, 1U})
      for (int used = height; used <= sides[1 - way]; used += height + kerf)
        strips_[way].push_back(sides[way]);
  }
  int fewest() {
    for (int sheets = 1;; ++sheets)
      for (int turned = 0; turned <= sheets; ++turned) {
        room_.clear();
        for (int sheet = 0; sheet < sheets; ++sheet)
          for (const int strip : strips_[sheet < turned ? 1 : 0]) room_.push_back(strip + kerf_);
        if (fits(0)) return sheets;
      }
  }

 private:
  bool fits(std::size_t board) {
    if (board == boards_.size()) return true;
    for (std::size_t strip = 0; strip < room_.size(); ++strip) {
      // An equal strip before this one was tried already.
      if (std::find(room_.begin(), room_.begin() + static_cast<std::ptrdiff_t>(strip),
                    room_[strip]) != room_.begin() + static_cast<std::ptrdiff_t>(strip))
        continue;
      const int needed = boards_[board] + kerf_;
      if (room_[strip] < needed) continue;
      room_[strip] -= needed;
      if (fits(board + 1)) return true;
      room_[strip] += needed;
    }
    return false;
  }
  std::vector<int> boards_, room_;
  std::array<std::vector<int>, 2> strips_;
  int kerf_;
};

}  // namespace

// Worked by hand, a saw that takes nothing. A 500 by 1200 sheet gives two strips of 1200 along,
// each one board of 700: a third needs a second sheet. Across it gives six strips of 500.
TEST_CASE("a sheet is ripped along its shorter side where that takes fewer") {
  const BoardKeys keys = backing(200, 500, 1200, 0);
  CHECK(rip_sheets(boards({700, 700, 700}), keys).sheets.size() == 2);
  const SheetPlan six = rip_sheets(boards({480, 480, 480, 480, 480, 480}), keys);
  REQUIRE(six.sheets.size() == 1);  // along: two to a strip, four to a sheet
  CHECK(six.sheets[0].strip_length == doctest::Approx(500));
  CHECK(six.sheets[0].strips == 6);
  CHECK(six.used_fraction == doctest::Approx(6 * 480 * 200 / (500.0 * 1200)));
  const SheetPlan four = rip_sheets(boards({480, 480, 480, 480}), keys);
  REQUIRE(four.sheets.size() == 1);  // as few along: so it is
  CHECK(four.sheets[0].strip_length == doctest::Approx(1200));
  CHECK(four.strips_per_sheet == 2);
  // Two long boards take a sheet along, six short ones a sheet across; all along take three.
  const std::vector<double> mixed = {1190, 1190, 480, 480, 480, 480, 480, 480};
  const SheetPlan both = rip_sheets(boards(mixed), keys);
  CHECK(both.sheets.size() == 2);
  check_sound(both, mixed, keys);
}

TEST_CASE("boards longer than any strip are named, the others are cut") {
  const std::vector<double> lengths = {1300, 700};
  const SheetPlan plan = rip_sheets(boards(lengths), backing(200, 500, 1200, 3));
  REQUIRE(plan.boards.too_long.size() == 1);
  CHECK(plan.boards.too_long[0].length == 1300);
  check_sound(plan, lengths, backing(200, 500, 1200, 3));
}

TEST_CASE("a sheet too narrow for strips along it gives them across") {
  const std::vector<double> lengths = {90, 95, 60};
  const BoardKeys keys = backing(127, 100, 2000, 3);
  const SheetPlan plan = rip_sheets(boards(lengths), keys);
  CHECK(plan.sheets.size() == 1);
  CHECK(plan.strips_per_sheet == 0);
  check_sound(plan, lengths, keys);
}

TEST_CASE("as few sheets as every way to rip and to cut them") {
  int turned = 0, mixed = 0;
  test::for_drawn_cases("rip-sheets", 1000, [&](std::mt19937_64& rng) {
    const auto whole = [&](int least, int most) {
      return least + static_cast<int>(rng() % static_cast<std::uint64_t>(most - least + 1));
    };
    const int kerf = whole(0, 2), height = whole(10, 25);
    const std::array<int, 2> sides = {whole(60, 100), whole(height, 60)};
    std::vector<int> whole_lengths;
    std::vector<double> lengths;
    const bool long_ones = rng() % 2 == 0;
    for (int count = whole(1, 9); count > 0; --count) {
      whole_lengths.push_back(whole(10, long_ones ? sides[0] : sides[1]));
      lengths.push_back(whole_lengths.back());
    }
    const BoardKeys keys = backing(height, sides[0], sides[1], kerf);
    const SheetPlan plan = rip_sheets(boards(lengths), keys);
    check_sound(plan, lengths, keys);
    const int fewest = Exhaustive(whole_lengths, sides, height, kerf).fewest();
    CHECK(static_cast<int>(plan.sheets.size()) == fewest);
    const auto across = std::ranges::count_if(
        plan.sheets, [&](const RippedSheet& sheet) { return sheet.strip_length < sides[0] - 0.5; });
    turned += across > 0 ? 1 : 0;
    mixed += across > 0 && across < static_cast<long>(plan.sheets.size()) ? 1 : 0;
  });
  CHECK(turned > 20);
  CHECK(mixed > 5);
}

}  // namespace swathe
