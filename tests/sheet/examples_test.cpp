#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <iterator>

#include "sheet/overlaps.hpp"
#include "support/label_face.hpp"
#include "swathe/build/make.hpp"
#include "swathe/sheet/sheets.hpp"

// Every job among the examples, as its sheets come out of the printer.
namespace swathe {
namespace {

Made made_from(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  REQUIRE(in.good());
  const std::string text{std::istreambuf_iterator<char>(in), {}};
  auto made = make(text, path.filename().string(), [](const std::string& name) {
    return refuse(Why::Missing, "there is no file \"" + name + "\"");
  });
  REQUIRE_MESSAGE(made.has_value(), to_text(made.error().front()));
  return *std::move(made);
}

TEST_CASE("examples: no text lies over another, off its page, or under a line") {
  const Face labels = test::label_face();
  int jobs = 0;
  for (const auto& entry :
       std::filesystem::recursive_directory_iterator(SWATHE_SOURCE "/examples")) {
    if (entry.path().extension() != ".toml") continue;
    ++jobs;
    CAPTURE(entry.path().filename().string());
    for (const Sheet& sheet : all_sheets(made_from(entry.path()), labels)) {
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
  CHECK(jobs >= 12);
}

}  // namespace
}  // namespace swathe
