#include "book/piece_table.hpp"

#include <fmt/format.h>

#include "book/words.hpp"
#include "sheet/running.hpp"

namespace swathe {

namespace {

constexpr double kNone = 0.05;  ///< mm; less is no length at all

}  // namespace

Table piece_table(const Made& made, const std::vector<Piece>& pieces,
                  const std::vector<Overhang>& past) {
  const auto past_words = [&](double length_mm) {
    return length_mm < kNone ? "-" : dimension(mm(length_mm), made.job.units);
  };
  Table table;
  table.columns = {{"bumper"},
                   {"side"},
                   {"length", Anchor::Right},
                   {"left"},
                   {"right"},
                   {"a set", Anchor::Right},
                   {"all", Anchor::Right}};
  if (!past.empty())
    for (const char* const heading : {"past left", "past right"})
      table.columns.push_back({heading, Anchor::Right});
  auto over = past.begin();
  for (const Piece& piece : pieces) {
    std::vector<std::string> row = {piece.bumper,
                                    piece.side,
                                    figure(mm(piece.length_mm), made.job.units),
                                    end_words(piece.start),
                                    end_words(piece.end),
                                    std::to_string(piece.count),
                                    std::to_string(piece.count * padded_sets(made.job))};
    if (over != past.end() && over->bumper == piece.bumper && over->side == piece.side) {
      row.push_back(past_words(over->at_start));
      row.push_back(past_words(over->at_end));
      ++over;
    }
    table.rows.push_back(std::move(row));
  }
  return table;
}

void add_too_long(const Made& made, const StockPlan& plan, std::string_view stock, Flow& flow) {
  for (const StockCut& cut : plan.too_long)
    flow.words(fmt::format("Too long for the {}: {}, {}.", stock, cut.label,
                           exact(mm(cut.length), made.job.units)));
}

}  // namespace swathe
