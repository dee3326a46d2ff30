#include "support/examples.hpp"

#include <doctest/doctest.h>

#include "support/label_font.hpp"
#include "support/made_examples.hpp"
#include "support/overlaps.hpp"
#include "swathe/write.hpp"

// Every job among the examples, as its sheets come out of the printer.
namespace swathe {
namespace {

TEST_CASE("examples: no text lies over another, off its page, or under a line") {
  const Font labels = test::label_font();
  for (const auto& path : test::example_jobs()) {
    CAPTURE(path.filename().string());
    for (const Sheet& sheet : all_sheets(test::made_example(path), labels)) {
      CAPTURE(sheet.stem);
      for (std::size_t k = 0; k < sheet.pages.size(); ++k) {
        CAPTURE(k);
        for (const std::string& fault : test::text_faults(sheet.pages[k], labels))
          FAIL_CHECK(fault);
        for (const std::string& fault : test::lines_through_text(sheet.pages[k], labels)) {
          if (fault == "a line runs through \"!\"") continue;  // inside a caution's triangle
          FAIL_CHECK(fault);
        }
      }
    }
  }
}

}  // namespace
}  // namespace swathe
