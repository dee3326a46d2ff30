#include "stock/splice.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <string_view>

#include "rules/practice.hpp"
#include "stock/sticks.hpp"

namespace swathe {
namespace {

/// A stretch of a piece on which no joint may lie, its ends not in it.
struct Barred {
  double from = 0, to = 0;
};

/// Round every bend and both ends; those that run into one another are one.
std::vector<Barred> barred(const bumper::Piece& piece) {
  constexpr double kClear = practice::kJointFromCorner.mm();
  std::vector<double> turns = {0.0};
  turns.insert(turns.end(), piece.bends.begin(), piece.bends.end());
  turns.push_back(piece.length_mm);
  std::vector<Barred> all;
  for (const double at : turns) {
    const Barred one{std::max(0.0, at - kClear), std::min(piece.length_mm, at + kClear)};
    if (!all.empty() && one.from < all.back().to)
      all.back().to = std::max(all.back().to, one.to);
    else
      all.push_back(one);
  }
  return all;
}

/// "A front to back" of "A front + left + back": all the sides of a long piece are too many to name
/// on each of its parts.
std::string first_to_last(const std::string& label) {
  constexpr std::string_view kAnd = " + ";
  const std::size_t first = label.find(kAnd), last = label.rfind(kAnd);
  if (first == std::string::npos) return label;
  return fmt::format("{} to {}", label.substr(0, first), label.substr(last + kAnd.size()));
}

}  // namespace

std::optional<Splice> splice_of(const bumper::Piece& piece, double stock_mm) {
  if (fits_stick({"", piece.length_mm}, stock_mm)) return std::nullopt;
  Splice splice{piece_name(piece), piece.length_mm, {}};
  const std::vector<Barred> bars = barred(piece);
  double start = 0;
  while (!fits_stick({"", piece.length_mm - start}, stock_mm)) {
    double at = start + stock_mm;
    for (const Barred& bar : bars)
      if (at > bar.from && at < bar.to) at = bar.from;
    if (at <= start) return std::nullopt;
    splice.joints.push_back(at);
    start = at;
  }
  return splice;
}

std::vector<StockCut> parts_of(const Splice& splice) {
  std::vector<StockCut> parts;
  const std::string name = first_to_last(splice.label);
  const bool digit = name.back() >= '0' && name.back() <= '9';
  double from = 0;
  const auto add = [&](double to) {
    parts.push_back({fmt::format("{}{}{}", name, digit ? "-" : " ", parts.size() + 1), to - from});
    from = to;
  };
  for (const double joint : splice.joints) add(joint);
  add(splice.length);
  return parts;
}

double least_to_splice(const bumper::Piece& piece) {
  double least = 0;
  for (const Barred& bar : barred(piece)) least = std::max(least, bar.to - bar.from);
  return least;
}

}  // namespace swathe
