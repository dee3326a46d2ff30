#include "app/folder_name.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace swathe::app;

TEST_CASE("folder names: what is fine on every disk") {
  for (const char* name : {"heron", "job-1", "a.b", "Tin Heron (spring)", "console", "com10",
                           "coma", "nulls", "über", "保险杠", "-rf", "aux-2", "lpt"})
    CHECK_MESSAGE(!folder_name_fault(name), name);
}

// Source: Microsoft, "Naming Files, Paths, and Namespaces"; POSIX, "." and "..".
TEST_CASE("folder names: what leaves the folder, hides, or is another thing elsewhere") {
  CHECK(folder_name_fault("") == "is empty");
  for (const char* name : {".", "..", "...", ".hidden", ".swathe-stage-1-0"})
    CHECK(folder_name_fault(name) == "begins with a dot");
  CHECK(folder_name_fault("a.") == "ends with a dot");
  CHECK(folder_name_fault("a ") == "ends with a space");
  CHECK(folder_name_fault("a:b") == "has a : in it");
  for (const char c : std::string("<>:\"/\\|?*"))
    CHECK(folder_name_fault(std::string("a") + c) == std::string("has a ") + c + " in it");
  CHECK(folder_name_fault("a\nb") == "has the character U+000A in it");
  CHECK(folder_name_fault("a\u202eb") == "has the character U+202E in it");
  for (const char* name : {"con", "CON", "Nul", "aux", "prn", "com1", "COM9", "com0", "lpt3",
                           "com¹", "LPT³", "con.txt", "nul .x", "aux.tar.gz", "CONIN$", "conout$"})
    CHECK_MESSAGE(folder_name_fault(name) == "is a device on Windows", name);
}

TEST_CASE("folder names: one key for names that a disk takes for one") {
  const auto same = [](const char* a, const char* b) {
    return folder_name_key(a) == folder_name_key(b);
  };
  CHECK(same("Heron", "hERON"));
  CHECK(same("Ärger", "ärger"));
  CHECK(same("\u00e4rger", "a\u0308rger"));                  // ä, composed and not
  CHECK(same("\u1ec7", "e\u0323\u0302"));                    // ệ, with its marks
  CHECK(same("e\u0302\u0323", "e\u0323\u0302"));             // in either order
  CHECK(same("\u212bngstr\u00f6m", "\u00c5NGSTRO\u0308M"));  // the sign for angstrom is the letter
  CHECK(same("\ud55c", "\u1112\u1161\u11ab"));               // a Hangul syllable and its letters
  CHECK(same("σίσυφος", "ΣΊΣΥΦΟΣ"));
  CHECK(same("Бампер", "бампер"));
  CHECK(!same("a", "b"));
  CHECK(!same("a", "ä"));
  CHECK(!same("\xe9", "\xc9"));  // no UTF-8: bytes
  CHECK(!same("\xe9", "é"));
  CHECK(same("\xe9", "\xe9"));
}
