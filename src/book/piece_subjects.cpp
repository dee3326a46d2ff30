#include "book/piece_subjects.hpp"

#include <algorithm>

#include "sheet/shown_subjects.hpp"
#include "stock/splice.hpp"
#include "swathe/bumper.hpp"

namespace swathe {

PieceSubjects board_subjects(const Made& made) {
  PieceSubjects subjects;
  for (const bumper::Piece& board : made.boards)
    subjects[piece_name(board)] = Subject::board(board.bumper, board.side);
  return subjects;
}

PieceSubjects padding_subjects(const Made& made) {
  PieceSubjects subjects;
  for (const bumper::Piece& piece : made.padding) {
    const std::string name = piece_name(piece);
    const Subjects shows = padding_subjects(made, piece);
    subjects[name] = shows;
    const auto& splices = made.stock.padding.splices;
    if (const auto splice = std::ranges::find(splices, name, &Splice::label);
        splice != splices.end())
      for (const StockCut& part : parts_of(*splice)) subjects[part.label] = shows;
  }
  return subjects;
}

}  // namespace swathe
