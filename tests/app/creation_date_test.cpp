#include "app/creation_date.hpp"

#include <doctest/doctest.h>

using swathe::app::creation_date;

// Seconds and dates: date -u -d @N (GNU coreutils).
TEST_CASE("creation date: SOURCE_DATE_EPOCH as a date") {
  CHECK(creation_date("0") == "1970-01-01T00:00:00Z");
  CHECK(creation_date("951827696") == "2000-02-29T12:34:56Z");
  CHECK(creation_date("1767225599") == "2025-12-31T23:59:59Z");
  CHECK(creation_date("253402300799") == "9999-12-31T23:59:59Z");
}

TEST_CASE("creation date: fixed where there is none, nothing where it is no date") {
  CHECK(creation_date("") == "2000-01-01T00:00:00Z");
  for (const char* none :
       {"-1", "soon", "12.5", "1e9", " 1", "1 ", "+1", "253402300800", "99999999999999999999"})
    CHECK(!creation_date(none));
}
