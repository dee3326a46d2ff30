#include <string>

#include "swathe/draw.hpp"

namespace swathe {

std::string to_text(SheetKind kind) {
  switch (kind) {
    case SheetKind::Start:
      return "start";
    case SheetKind::TestPage:
      return "test-page";
    case SheetKind::Pattern:
      return "pattern";
    case SheetKind::Tiles:
      return "tiles";
    case SheetKind::Fold:
      return "fold";
    case SheetKind::Measures:
      return "measures";
    case SheetKind::Templates:
      return "templates";
    case SheetKind::Model:
      return "model";
    case SheetKind::Numerals:
      return "numerals";
    case SheetKind::Placing:
      return "placing";
    case SheetKind::Book:
      return "book";
    case SheetKind::Views:
      return "views";
    case SheetKind::Lay:
      return "lay";
  }
  return {};
}

bool is_at_full_size(SheetKind kind) {
  switch (kind) {
    case SheetKind::TestPage:
    case SheetKind::Pattern:
    case SheetKind::Tiles:
    case SheetKind::Fold:
    case SheetKind::Templates:
    case SheetKind::Model:
    case SheetKind::Numerals:
    case SheetKind::Placing:
      return true;
    case SheetKind::Start:
    case SheetKind::Measures:
    case SheetKind::Book:
    case SheetKind::Views:
    case SheetKind::Lay:
      return false;
  }
  return false;
}

}  // namespace swathe
