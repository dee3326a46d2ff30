#include "book/piece_table.hpp"

#include "book/neighbors.hpp"
#include "book/texts.hpp"
#include "book/words.hpp"

namespace swathe {

namespace {

using book_texts::say;

constexpr double kNone = 0.05;  ///< mm; less is no length at all

}  // namespace

Table piece_table(const Made& made, const std::vector<bumper::Piece>& pieces, SizeWords size,
                  const std::vector<Overhang>& past) {
  Table table;
  table.columns = {{say("column.piece")},
                   {say("column.length"), draw::Anchor::Right},
                   {say("ends.column-one")},
                   {say("ends.column-other")},
                   {say("column.one-set"), draw::Anchor::Right},
                   {say("column.all-sets"), draw::Anchor::Right}};
  const auto words = [&](const bumper::Piece& piece, bool start, double beyond_mm) {
    const std::string end = end_words(start ? piece.start : piece.end, next_to(made, piece, start));
    if (beyond_mm < kNone) return end;
    return say("ends.beyond", {{"end", end}, {"length", dimension(mm(beyond_mm), made.job.units)}});
  };
  auto over = past.begin();
  for (const bumper::Piece& piece : pieces) {
    Overhang beyond;
    if (over != past.end() && over->bumper == piece.bumper && over->side == piece.side)
      beyond = *over++;
    table.rows.push_back({piece_name(piece), size(mm(piece.length_mm), made.job.units),
                          words(piece, true, beyond.at_start), words(piece, false, beyond.at_end),
                          std::to_string(piece.count),
                          std::to_string(piece.count * padded_sets(made.job))});
  }
  return table;
}

}  // namespace swathe
