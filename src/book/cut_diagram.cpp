#include "book/cut_diagram.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace swathe {
namespace {

constexpr double kDust = 0.01;  ///< mm; less is rounding, and needs no cut

CutStrip strip_of(const StockStick& stick, double kerf, const PieceSubjects& subjects) {
  CutStrip strip;
  double at = 0;
  for (const StockCut& cut : stick.cuts) {
    const auto shown = subjects.find(cut.label);
    strip.pieces.push_back(
        {cut.label, at, at + cut.length, shown == subjects.end() ? Subjects{} : shown->second});
    at += cut.length + kerf;
  }
  if (strip.pieces.empty()) return strip;
  const double left = stick.length - strip.pieces.back().to;
  if (left - kerf > kDust)
    strip.pieces.push_back({"", at, stick.length, {}});
  else
    strip.trimmed = left > kDust;
  return strip;
}

bool alike(const CutStrip& a, const CutStrip& b) {
  return std::ranges::equal(a.pieces, b.pieces, [](const CutPiece& p, const CutPiece& q) {
    return p.name == q.name && std::abs(p.length() - q.length()) < kDust;
  });
}

bool alike(const CutSheet& a, const CutSheet& b) {
  return std::abs(a.length - b.length) < kDust &&
         std::ranges::equal(a.strips, b.strips,
                            [](const CutStrip& p, const CutStrip& q) { return alike(p, q); });
}

bool alike(const CutStick& a, const CutStick& b) { return alike(a.strip, b.strip); }

/// Joins what is cut alike.
template <class Cut>
void add_or_count(std::vector<Cut>& all, Cut one) {
  for (Cut& other : all)
    if (alike(other, one)) {
      ++other.alike;
      return;
    }
  all.push_back(std::move(one));
}

}  // namespace

std::vector<CutSheet> sheets_to_cut(const Made& made) {
  const BoardKeys& keys = made.job.boards;
  const double both_sides = (keys.stock[0] + keys.stock[1]).mm();
  const PieceSubjects subjects = board_subjects(made);
  std::vector<CutSheet> sheets;
  auto stick = made.stock.boards.sticks.begin();
  for (const RippedSheet& ripped : made.stock.ripped) {
    CutSheet sheet;
    sheet.length = ripped.strip_length;
    sheet.width = both_sides - ripped.strip_length;
    sheet.strip = keys.height.mm();
    sheet.kerf = keys.kerf.mm();
    for (int k = 0; k < ripped.strips; ++k)
      sheet.strips.push_back(strip_of(*stick++, sheet.kerf, subjects));
    const double below = sheet.width - sheet.top_of(sheet.strips.size() - 1) - sheet.strip;
    sheet.last_rip = below > kDust;
    sheet.waste = below - sheet.kerf > kDust ? below - sheet.kerf : 0.0;
    add_or_count(sheets, std::move(sheet));
  }
  return sheets;
}

std::vector<CutStick> sticks_to_cut(const StockPlan& plan, double kerf,
                                    const PieceSubjects& subjects) {
  std::vector<CutStick> sticks;
  for (const StockStick& stick : plan.sticks)
    add_or_count(sticks, CutStick{stick.length, strip_of(stick, kerf, subjects), 1});
  return sticks;
}

}  // namespace swathe
