#include <doctest/doctest.h>

#include "book/words.hpp"

namespace swathe {

// Expected: the words for ends that a reader is told in the book's first table; there is no source
// outside the project for them.
TEST_CASE("end words: one for each way that an end can be cut") {
  CHECK(end_words(EndCut{EndCut::Kind::Free, 0, 0, 0}, "bumper B") == "bumper B: open");
  CHECK(end_words(EndCut{EndCut::Kind::Laps, 0, 0, 0}, "left") == "left: runs past");
  CHECK(end_words(EndCut{EndCut::Kind::Butts, 0, 0, 0}, "left") == "left: stops");
  CHECK(end_words(EndCut{EndCut::Kind::Bent, 0, 0, 0}, "left") == "left: bends on");
}

TEST_CASE("end words: an angle is told where the cut is slanted, and a bend has none") {
  CHECK(end_words(EndCut{EndCut::Kind::Mitred, 45, 0, 0}, "back") == "back: mitered, 45 deg");
  CHECK(end_words(EndCut{EndCut::Kind::Butts, -22.5, 0, 0}, "back") == "back: stops, -22.5 deg");
  CHECK(end_words(EndCut{EndCut::Kind::Butts, 0.04, 0, 0}, "back") == "back: stops");
  CHECK(end_words(EndCut{EndCut::Kind::Bent, 30, 0, 0}, "back") == "back: bends on");
}

}  // namespace swathe
