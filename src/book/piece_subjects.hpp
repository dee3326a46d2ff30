#pragma once

#include <map>
#include <string>

#include "swathe/make.hpp"

namespace swathe {

/// What each piece that is cut from stock shows of the model, by the name that it has in the plan.
using PieceSubjects = std::map<std::string, Subjects>;

PieceSubjects board_subjects(const Made& made);
/// A part of a piece that is glued together shows the whole of it.
PieceSubjects padding_subjects(const Made& made);

}  // namespace swathe
